package onsite

import (
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Inside is the rear of a cabinet, as one looks into it, with the lines on which its screws find
// a stud. Lengths count from the inner face of its left side and from the top of its bottom.
type Inside struct {
	Run, Box  string // names
	Into      string // "wall north", "knee wall bar"
	Wide      Length
	High      Length
	Lines     []Line
	Stretcher Length // middle of the rear stretcher, through which they go; 0 where none is behind it
}

// Line is one of them.
type Line struct {
	FromLeft Length
	What     string // "stud 3", "wall"
}

// Insides lists the cabinets that have such lines, in the order of the runs.
func Insides(m *model.Model) []Inside {
	var out []Inside
	parts := m.PartsByID()
	for i := range m.Runs {
		r := &m.Runs[i]
		for k := range r.Boxes {
			if b := &r.Boxes[k]; b.Kind == model.Cabinet {
				if in := inside(m, parts, r, b); len(in.Lines) > 0 && in.Wide > 0 && in.High > 0 {
					out = append(out, in)
				}
			}
		}
	}
	return out
}

func inside(m *model.Model, parts map[string]*model.Part, r *model.Run, b *model.Box) Inside {
	in := Inside{Run: r.Name, Box: b.Name, Wide: b.Inside.U.Size(), High: b.Inside.Z.Size()}
	if p := parts[b.Key()+"/stretcher-rear"]; p != nil {
		in.Stretcher = p.Placement.Box.Z.Mid() - b.Inside.Z.Lo
	}
	for i := range m.Room.Walls {
		w := &m.Room.Walls[i]
		if !r.Along || r.Wall != w.Name {
			continue
		}
		in.Into = "wall " + w.Name
		what := "wall"
		if w.Backing == "studs" && len(w.Studs) > 0 {
			what = "stud"
		}
		for _, along := range r.WallLines(b, w) {
			u, _ := r.Frame.Local(w.Frame.At(along, 0))
			in.Lines = append(in.Lines, Line{u - b.Inside.U.Lo, what})
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		if k.Run != r.Name {
			continue
		}
		in.Into = "knee wall " + k.Name
		for _, l := range k.Lines {
			if l.Box == b.Name {
				in.Lines = append(in.Lines, Line{l.FromLeft, "stud " + strconv.Itoa(l.Stud)})
			}
		}
	}
	return in
}

// Drill is a hole in a stud or a plate of a knee wall.
type Drill struct {
	Way      string // "cable scale"
	Part     string // label
	Diameter Length
	Height   Length // of its centre, above the datum
	FromEnd  Length // from the lower end of a piece that stands, from the left end of one that lies
	End      string // which end that is
	Plates   int    // of steel, that keep nails and screws off
}

// Drills lists the holes that ways need in lumber, in the order of the ways.
func Drills(m *model.Model) []Drill {
	var out []Drill
	parts := m.PartsByID()
	for i := range m.Ways {
		w := &m.Ways[i]
		for _, h := range w.Holes {
			p := parts[h.Part]
			if p == nil || p.Kind != model.Lumber {
				continue
			}
			d := Drill{Way: w.Words(), Part: p.Label, Diameter: h.Wide, Height: h.At.Z, Plates: h.Plates}
			if b := p.Placement.Box; b.Z.Size() > b.U.Size() {
				d.FromEnd, d.End = h.At.Z-b.Z.Lo, "lower end"
			} else {
				u, _ := p.Placement.Frame.Local(geom.Point{X: h.At.X, Y: h.At.Y})
				d.FromEnd, d.End = u-b.U.Lo, "left end"
			}
			out = append(out, d)
		}
	}
	return out
}
