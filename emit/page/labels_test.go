package page

import (
	"bytes"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Each part has one label, those on sheets first; each says where the part lies, and what is
// ordered to size says what it is of.
func TestLabels(t *testing.T) {
	const mm = length.Millimetre
	m := bar()
	m.Parts[0].Name = `side <"left">`
	first := m.Parts[len(m.Parts)-1]
	m.Layouts = []model.Layout{{Stock: first.Stock, Kind: model.Panel, Blanks: []model.Blank{{Placed: []model.Placed{
		{Part: first.ID, At: geom.R(10*mm, 20*mm, 30*mm, 40*mm)},
	}}}}}
	var b bytes.Buffer
	if err := WriteLabels(&b, m); err != nil {
		t.Fatal(err)
	}
	labels := strings.Split(b.String(), "<article>")[1:]
	if len(labels) != len(m.Parts) {
		t.Fatalf("%d labels of %d parts", len(labels), len(m.Parts))
	}
	where := first.Stock + ", no. 1 of 1, at " + writer{m: m}.num(10*mm) + ", " + writer{m: m}.num(20*mm)
	if !strings.Contains(labels[0], "<h2>"+first.Label+"</h2>") || !strings.Contains(labels[0], where) {
		t.Errorf("the first label is not that of what lies on the sheet, at %q: %s", where, labels[0])
	}
	if !strings.Contains(labels[1], "side &lt;") || strings.Contains(labels[1], ", no. ") || !strings.Contains(labels[1], "<p>"+m.Parts[0].Stock+"</p>") {
		t.Errorf("the second label is not that of the first part: %s", labels[1])
	}
}
