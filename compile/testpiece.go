package compile

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang/filename"
	"barwright/lang/length"
)

// recessForm is what makes one test piece do for several recesses.
type recessForm struct {
	router                     string
	width, thick, depth, round model.Length
	open                       string
}

// testPieces plans a recess in scrap for each form of recess that there is, as wide,
// deep and open as the real one. Along the steel it is short, where it does not
// reach from edge to edge.
func testPieces(m *model.Model, names *filename.Names) []model.Program {
	var out []model.Program
	seen := map[recessForm]bool{} // for lookup only
	for i := range m.Programs {
		p := &m.Programs[i]
		form := recessForm{p.Tool.Router, p.Shape.Bounds().X.Size(), p.Thick, p.Depth, p.Corner, fmt.Sprint(p.Open)}
		if seen[form] {
			continue
		}
		seen[form] = true
		test, refusal := router.Plan(testPiece(m, p, shortLength(m, p)))
		if refusal != nil { // too short for the bit to come down
			test, refusal = router.Plan(testPiece(m, p, p.Shape.Bounds().Y.Size()))
		}
		if refusal != nil {
			continue
		}
		test.Test, test.Name = true, names.Of("test-piece")
		out = append(out, test)
	}
	return out
}

// besideTest is how much wood a test piece has on either side of its recess, and
// how long this is.
func besideTest(m *model.Model) model.Length {
	if m.Build.Unit.Imperial() {
		return 2 * length.Inch
	}
	return 50 * length.Millimetre
}

func shortLength(m *model.Model, p *model.Program) model.Length {
	return min(p.Shape.Bounds().Y.Size(), max(besideTest(m), 2*p.Corner+2*p.Tool.Diameter))
}

// testPiece asks for a recess like that of a program, of another length. X is zero at a
// stop at the scrap's left end where the program's datum is one and the machine reaches
// the recess from there, otherwise at a mark in the middle.
func testPiece(m *model.Model, p *model.Program, long model.Length) router.Request {
	shape, y := p.Shape.Bounds(), p.Stock.Y
	half := shape.X.Size()/2 + besideTest(m)
	zero, mark := "X0 on a mark across the scrap", half
	if travel := p.Tool.Travel.X; p.Tool.Datum != "mark" && (travel == 0 || half+shape.X.Size()/2 <= travel) {
		zero, mark = "X0 at a stop at the left end of the scrap", 0
	}
	middle := half - mark
	shape.X = geom.About(middle, shape.X.Size())
	switch through := shape.Y == y; {
	case through:
	case shape.Y.Hi == y.Hi:
		shape.Y.Lo = shape.Y.Hi - long
	default:
		shape.Y.Hi = shape.Y.Lo + long
	}
	return router.Request{
		Part: p.Part, PartLabel: p.PartLabel, Recess: p.Recess, RecessID: p.RecessID,
		Zero: zero + ", Y0 on one edge of it, with the scrap on the side where Y is above 0", Mark: mark,
		Shape: shape, Open: p.Open, Corner: p.Corner,
		Stock: geom.Rect{X: geom.About(middle, 2*half), Y: y}, Thick: p.Thick,
		Depth: p.Depth, Tool: p.Tool, Show: m.Build.Plain,
	}
}
