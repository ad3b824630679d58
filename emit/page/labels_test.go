package page

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/compile/view"
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

// TestLabelsInBrowser sets labels and the page of a plain list in a browser, at the widths of a
// desk, a phone and the narrowest phone: however long names are, neither is wider than its window.
func TestLabelsInBrowser(t *testing.T) {
	browser := find(t, "chromium", "chromium-browser")
	m := strange()
	m.Stock.Sheets = []model.Sheet{{Name: m.Parts[0].Stock, Length: 4 * length.Metre, Width: 3 * length.Metre}}
	for i := range m.Parts {
		m.Parts[i].Name = strings.Repeat("W", 40)
	}
	m.Layouts, _ = layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: model.Saw{Kerf: length.Millimetre}})
	m.Sheets = view.Sheets(m)
	var b bytes.Buffer
	b.WriteString(`<!DOCTYPE html><meta charset=utf-8><pre id="measured"></pre>`)
	for _, write := range []func(io.Writer, *model.Model) error{WriteLabels, WriteList} {
		var page bytes.Buffer
		if err := write(&page, m); err != nil {
			t.Fatal(err)
		}
		for _, width := range []int{1280, 390, 320} {
			fmt.Fprintf(&b, `<iframe style="border:0;width:%dpx;height:900px" srcdoc="%s"></iframe>`, width, html.EscapeString(page.String()))
		}
	}
	b.WriteString(`<script>onload = () => { document.getElementById("measured").textContent = [...document.querySelectorAll("iframe")]
		.map((f) => f.contentDocument.body.textContent.length > 200 && f.contentDocument.documentElement.scrollWidth <= f.clientWidth).join(" ") }</script>`)
	file := filepath.Join(t.TempDir(), "frames.html")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out := run(t, browser, "--window-size=1400,1000", "--dump-dom", "file://"+file)
	if match := result.FindSubmatch(out); match == nil || string(match[1]) != "true true true true true true" {
		t.Errorf("labels, then the list, at 1280, 390 and 320 px: are they within? %s", match[1:])
	}
}
