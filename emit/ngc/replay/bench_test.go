package replay_test

import (
	"fmt"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// cabinetSide is a part of 600 x 700 mm with forty bored pins, four openings that are cut
// round, and its outline.
func cabinetSide() (*model.Routing, []byte) {
	r := panel()
	r.Stock, r.Piece = geom.R(0, 0, 620*mm, 720*mm), geom.RectContour(geom.R(10*mm, 10*mm, 610*mm, 710*mm))
	works := r.Works
	r.Works = nil
	var b strings.Builder
	b.WriteString(begin)
	add := func(w model.Work, text string, d geom.Point) {
		w.Shape, w.Tabs = w.Shape.Shifted(d), append([]model.Tab{}, w.Tabs...)
		for i := range w.Tabs {
			w.Tabs[i].At = w.Tabs[i].At.Add(d)
		}
		r.Works = append(r.Works, w)
		b.WriteString(shifted(text, d))
	}
	for i := range 40 {
		add(works[0], bored, geom.Point{X: model.Length(i%2) * 550 * mm, Y: model.Length(i/2) * 32 * mm})
	}
	for i := range 4 {
		add(works[3], opening, geom.Point{X: 50*mm + model.Length(i%2)*300*mm, Y: 50*mm + model.Length(i/2)*300*mm})
	}
	add(works[4], outline, geom.Point{})
	r.Works[44].Shape = r.Piece
	// The outline's right side is 480 mm further on, its upper one 620 mm.
	text := b.String()
	at := strings.Index(text, "(outline)")
	grown := strings.NewReplacer("X130.", "X610.", "X133.", "X613.", "Y90.", "Y710.", "Y93.", "Y713.").Replace(text[at:])
	r.Works[44].Tabs[0].At.Y = 710 * mm
	return r, []byte(text[:at] + grown + end)
}

// shifted moves a section of the panel's program.
func shifted(text string, d geom.Point) string {
	var b strings.Builder
	for line := range strings.Lines(text) {
		words := strings.Fields(line)
		for i, w := range words {
			var v float64
			if n, _ := fmt.Sscanf(w[1:], "%g", &v); n == 1 && w[0] == 'X' {
				words[i] = fmt.Sprintf("X%.1f", v+d.X.MM())
			} else if n == 1 && w[0] == 'Y' {
				words[i] = fmt.Sprintf("Y%.1f", v+d.Y.MM())
			}
		}
		b.WriteString(strings.Join(words, " ") + "\n")
	}
	return strings.ReplaceAll(b.String(), ".0 ", ". ")
}

func TestCheckRoutingPassesACabinetSide(t *testing.T) {
	r, text := cabinetSide()
	if err := replay.CheckRouting(text, r); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
}

func BenchmarkCheckRouting(b *testing.B) {
	r, text := cabinetSide()
	for b.Loop() {
		if err := replay.CheckRouting(text, r); err != nil {
			b.Fatal(err)
		}
	}
}
