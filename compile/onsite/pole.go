package onsite

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Pole is a stick with marks on it, all counted from one end.
type Pole struct {
	Name    string // file-safe
	Title   string
	From    string // where its end is held: "the wall's left end"
	Upright bool
	Length  Length
	Line    Length // of an upright one, the height of the line that the floor was read from; 0 without
	Marks   []PoleMark
}

// PoleMark is one mark of a pole.
type PoleMark struct {
	At   Length
	What string // "stud", "outlet kettle, centre"
	Kind Kind
}

// Kind tells what a mark is for.
type Kind int

const (
	Framing Kind = iota // studs, supports
	Edge                // sides of boxes, tops
	Device              // outlets, switches, vents
	Pipe
	Finish // battens
)

// Built reports whether a mark is for framing, or for what finishes it.
func (k Kind) Built() bool { return k == Framing || k == Finish }

func (p *Pole) mark(at Length, kind Kind, what string) {
	for i := range p.Marks {
		o := &p.Marks[i]
		if o.At != at || o.Kind != kind {
			continue
		}
		if o.What == what {
			return
		}
		if !p.Upright { // one box ends where the next begins
			o.What += ", " + what
			return
		}
	}
	p.Marks = append(p.Marks, PoleMark{at, what, kind})
}

// done sorts a pole's marks, drops those before its end and at it, and makes it as long as the last.
func (p *Pole) done() Pole {
	p.Marks = slices.DeleteFunc(p.Marks, func(m PoleMark) bool { return m.At <= 0 })
	slices.SortStableFunc(p.Marks, func(a, b PoleMark) int { return cmp.Compare(a.At, b.At) })
	for _, m := range p.Marks {
		p.Length = max(p.Length, m.At)
	}
	return *p
}

// Poles lists a pole for each wall and knee wall that has something to mark, and one for heights.
func Poles(m *model.Model) []Pole {
	var poles []Pole
	for i := range m.Room.Walls {
		if p := wallPole(m, &m.Room.Walls[i]); len(p.Marks) > 1 {
			poles = append(poles, p)
		}
	}
	for i := range m.KneeWalls {
		poles = append(poles, kneePole(m, &m.KneeWalls[i]))
	}
	if p := heights(m); len(p.Marks) > 0 {
		poles = append(poles, p)
	}
	return poles
}

func wallPole(m *model.Model, w *model.Wall) Pole {
	p := Pole{Name: "pole-wall-" + w.Name, Title: "Story pole, wall " + w.Name, From: "the left end of wall " + w.Name + ", as one faces it", Length: w.Length}
	for _, u := range w.Studs {
		p.mark(u, Framing, "stud")
	}
	for _, f := range w.Fixtures() {
		p.mark(f.Face.X.Mid(), kindOf(&f), f.Words())
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		if r.Wall != w.Name {
			continue
		}
		if !r.Along {
			for _, v := range [...]struct {
				at   Length
				what string
			}{{0, "rear"}, {r.Depth, "front"}} {
				u, _ := w.Frame.Local(r.Frame.At(0, v.at))
				p.mark(u, Edge, v.what+" of run "+r.Name)
			}
			continue
		}
		sides(&p, r, func(u Length) Length {
			at, _ := w.Frame.Local(r.Frame.At(u, 0))
			return at
		})
	}
	p.mark(w.Length, Framing, "end of the wall")
	return p.done()
}

// kindOf tells what a mark for something in a wall is for.
func kindOf(f *model.Fixture) Kind {
	if f.Kind == "stub" {
		return Pipe
	}
	return Device
}

// sides marks where the boxes of a run begin and end.
func sides(p *Pole, r *model.Run, at func(Length) Length) {
	for i := range r.Boxes {
		b := &r.Boxes[i]
		p.mark(at(b.Hull.U.Lo), Edge, b.Name+" left")
		p.mark(at(b.Hull.U.Hi), Edge, b.Name+" right")
	}
}

func kneePole(m *model.Model, k *model.KneeWall) Pole {
	left := k.Framing.U.Lo
	p := Pole{Name: "pole-knee-wall-" + k.Name, Title: "Story pole, knee wall " + k.Name, From: "the left end of the framing, as one faces run " + k.Run, Length: k.Framing.U.Size()}
	for _, u := range k.Studs {
		p.mark(u-left, Framing, "stud")
	}
	for _, s := range k.Supports {
		p.mark(s.Centre-left, Finish, "support")
	}
	for i := range k.Outlets {
		p.mark(k.Outlets[i].Box.U.Mid()-left, Device, "outlet "+k.Outlets[i].Name)
	}
	for i := range m.Parts {
		if q := &m.Parts[i]; q.Is("skin", "batten") && q.Placement.Frame == k.Frame && q.Placement.Out.Axis == geom.V {
			p.mark(q.Placement.Box.U.Mid()-left, Finish, "batten "+q.Label)
		}
	}
	for i := range m.Runs {
		if r := &m.Runs[i]; r.Name == k.Run {
			sides(&p, r, func(u Length) Length { return u - left })
		}
	}
	p.mark(k.Framing.U.Size(), Framing, "end of the framing")
	return p.done()
}

func heights(m *model.Model) Pole {
	p := Pole{Name: "pole-heights", Title: "Story pole, heights", From: m.Room.Floor.Zero(), Upright: true, Line: m.Room.Floor.Line}
	for i := range m.Runs {
		r := &m.Runs[i]
		for k := range r.Boxes {
			if b := &r.Boxes[k]; b.Kind == model.Cabinet && b.ToeHeight > 0 {
				p.mark(b.Hull.Z.Lo+b.ToeHeight, Edge, "toe kick")
			}
		}
		p.mark(r.Height, Edge, "boxes of run "+r.Name)
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		p.mark(k.Framing.Z.Hi, Framing, "framing of knee wall "+k.Name)
		for j := range k.Outlets {
			p.mark(k.Outlets[j].Box.Z.Mid(), Device, "outlet "+k.Outlets[j].Name)
		}
	}
	for i := range m.Slabs {
		p.mark(m.Slabs[i].Box.Z.Hi, Edge, "top of "+m.Slabs[i].Words())
	}
	for i := range m.Room.Walls {
		for _, f := range m.Room.Walls[i].Fixtures() {
			p.mark(f.Face.Y.Mid(), kindOf(&f), f.Words())
		}
	}
	if p.Line > 0 {
		p.mark(p.Line, Framing, "the line")
	}
	return p.done()
}
