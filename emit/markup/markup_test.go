package markup

import (
	"bytes"
	"html"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/lang/length"

	"pgregory.net/rapid"
)

// A quarter round and a circle, worked out by hand: 10 mm is 100 units, the
// drawing's top is at 30 mm; counter-clockwise with y up is sweep 0.
func TestPathData(t *testing.T) {
	const mm = length.Millimetre
	s := Sheet{geom.R(0, 0, 40*mm, 30*mm)}
	tests := []struct {
		name  string
		shape geom.Contour
		open  bool
		want  string
	}{
		{"closed", geom.RectContour(geom.R(0, 0, 10*mm, 20*mm)), false, "M0 300L100 300L100 100L0 100Z"},
		{"open", geom.RectContour(geom.R(0, 0, 10*mm, 20*mm))[:2], true, "M0 300L100 300"},
		{"rounded", geom.RoundedContour(geom.R(0, 0, 20*mm, 20*mm), 5*mm), false,
			"M50 300L150 300A50.0 50.0 0 0 0 200 250L200 150A50.0 50.0 0 0 0 150 100L50 100A50.0 50.0 0 0 0 0 150L0 250A50.0 50.0 0 0 0 50 300Z"},
		{"hole", geom.CircleContour(geom.Point{X: 20 * mm, Y: 10 * mm}, 4*mm).Reversed(), false,
			"M240 200A40.0 40.0 0 0 1 160 200A40.0 40.0 0 0 1 240 200Z"},
		{"nothing", nil, true, ""},
	}
	for _, test := range tests {
		if got := s.Path(test.shape, !test.open); got != test.want {
			t.Errorf("%s: got %s, want %s", test.name, got, test.want)
		}
	}
}

// What is written as text reads back as the same text.
func TestTextReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[ -~äß×⌀木]*`).Draw(t, "text")
		var b bytes.Buffer
		m := New(&b)
		m.Text(s)
		m.Close()
		if strings.ContainsAny(b.String(), `<>"'`) || html.UnescapeString(b.String()) != s {
			t.Errorf("%q is written %q", s, b.String())
		}
	})
}
