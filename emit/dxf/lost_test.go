package dxf

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Two pins in the drawn face and one in the far one: what no file holds is told. A file for
// the far face tells of its own, and through bores are with the outline.
func TestLostOfOtherFace(t *testing.T) {
	pin := func(x geom.Length, far bool) model.Bore {
		return model.Bore{Name: "pin", At: geom.Point{X: x * mm, Y: 50 * mm}, Diameter: 5 * mm, Depth: 9 * mm, Far: far}
	}
	part := model.Part{ID: "p", Label: "CUPS-DV1", Name: "divider", Thickness: 18 * mm, Face: "left", Outline: rect(0, 0, 900, 500),
		Bores: []model.Bore{pin(50, false), pin(100, false), pin(150, true)}}
	lost := func(p model.Part, opt Options) (out []string) {
		opt.Text = true
		for _, text := range strings.Split(texts(readBack(t, written(t, &p, opt))), "\n") {
			if strings.Contains(text, "OTHER FACE") {
				out = append(out, text)
			}
		}
		return out
	}
	without := model.Written{Bores: true}
	if got := lost(part, Options{}); got != nil {
		t.Errorf("with a file of its own: %q", got)
	}
	if diff := cmp.Diff([]string{"OTHER FACE, in no file: 1 x pin: bore 5, 9 deep"}, lost(part, Options{Without: without})); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{"OTHER FACE, in no file: 2 x pin: bore 5, 9 deep"}, lost(part, Options{Without: without, Mirrored: true})); diff != "" {
		t.Error("mirrored: ", diff)
	}
	part.Bores = slices.Delete(part.Bores, 2, 3)
	if got := lost(part, Options{Without: without}); got != nil {
		t.Errorf("with nothing in the far face: %q", got)
	}
}
