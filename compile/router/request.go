// Package router plans how a round, flat bit cuts a rectangular recess: it
// takes a Request and returns a model.Program with the path of the bit's
// centre, or a Refusal in plain words. It writes no text; emit/ngc does.
//
// The rules of the path (step-over, equal levels, ramps, climb milling, a
// finishing lap) are common practice of the trade, not a standard.
package router

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = length.Length

// Request asks for the program of one recess. All coordinates are the
// program's own: Z is 0 at the top of the wood.
type Request struct {
	Name      string // of the program's file, without extension
	Part      string // ID
	PartLabel string
	Recess    string // name
	RecessID  string
	Zero      string // where the person sets zero, in words
	Mark      Length // where X is zero, from the part's left end
	Setup     int    // of the part, from 1
	MovedOn   Length // of X's zero along the part, since the setup before

	Shape  geom.Rect    // the recess, corners square
	Open   []model.Edge // sides where it leaves the wood; they lie on the stock's edge
	Corner Length       // radius of the corners between two closed sides; 0 where square
	Stock  geom.Rect
	Thick  Length
	Depth  Length
	Tool   model.Tool

	Show func(Length) string // how a Refusal prints a length; nil prints millimetres
}

// Plan computes the path for a recess. The Program is whole if the Refusal is
// nil, and empty otherwise.
//
// At a closed side the bit's edge ends on the wall; at an open side its centre
// overruns the wood: by 0.5 mm at the ends of walls when roughing, by the bit's
// radius and 2 mm where it comes down in the air, and clear of the allowance by 1 mm
// when it finishes
// the walls, so that the mouth is as wide as the rest. A corner between closed sides keeps
// the bit's radius or, where that is larger, the radius asked for, unless it is square and
// relieved; Program.Shape has it so, and Program.Reliefs what is bored beyond it.
func Plan(r Request) (model.Program, *Refusal) {
	j, refusal := newJob(r)
	if refusal != nil {
		return model.Program{}, refusal
	}
	moves, finish := j.path()
	if refusal := r.withinTravel(moves); refusal != nil {
		return model.Program{}, refusal
	}
	if j.passes == nil && r.Tool.Passes == "parallel" {
		r.Tool.Passes = "rings"
	}
	cut, seconds := Estimate(moves, r.Tool)
	return model.Program{
		Name: r.Name, Part: r.Part, PartLabel: r.PartLabel,
		Recess: r.Recess, RecessID: r.RecessID,
		Zero: r.Zero, Mark: r.Mark, Setup: r.Setup, MovedOn: r.MovedOn,
		Stock: r.Stock, Thick: r.Thick,
		Shape: j.shape.contour(), Open: j.open.edges(),
		Depth: r.Depth, Corner: j.corner,
		Tool:  r.Tool,
		Moves: moves, CutLength: cut, Seconds: seconds,
		Levels: j.levels, Finishing: finish,
		Reliefs: j.reliefs(),
	}, nil
}

// sides tells which of the four sides are open.
type sides [4]bool

func sidesOf(edges []model.Edge) sides {
	var s sides
	for _, e := range edges {
		s[e] = true
	}
	return s
}

func (s sides) edges() []model.Edge {
	var out []model.Edge
	for e, open := range s {
		if open {
			out = append(out, model.Edge(e))
		}
	}
	return out
}

// closedCorner reports whether both sides at the corner where side i begins
// are closed.
func (s sides) closedCorner(i int) bool { return !s[i] && !s[before(i)] }
