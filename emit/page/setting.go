package page

import (
	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

func (p writer) setting() {
	p.section("setting")
	p.shims()
	p.gaps()
	p.scribes()
	p.End()
}

var shimColumns = []markup.Column{markup.Words("under"), markup.Words("point"), markup.Figures("x"), markup.Figures("y"),
	markup.Figures("floor below the datum"), markup.Figures("shim"), markup.Figures("height")}

// shims says where the datum is, and lists what stands under each point that bears.
func (p writer) shims() {
	s, f := &p.m.Setting, &p.m.Room.Floor
	if len(s.Shims) == 0 {
		p.none("The floor is not read: all is drawn on a level one.")
		return
	}
	b, gaps := p.m.Build, s.Range()
	p.El("p", "Everything stands level on the datum, the highest point of the floor that anything bears on: under "+f.Bears+", "+
		b.Near(f.Datum.X)+" along the first wall and "+b.Near(f.Datum.Y)+" out from it. The line that the floor was read from lies "+
		b.Near(f.Line)+" above it. Under the other points the floor is up to "+b.Near(gaps.Hi)+" lower.")
	p.El("p", "The tops of all boxes lie in one plane, within "+b.Plain(s.Left()+2*f.ReadTo)+": the rounding of shims to "+b.Show(s.Step)+
		" leaves "+b.Plain(s.Left())+", and the readings may be "+b.Plain(f.ReadTo)+" off, up or down. What is wound out needs no shim; its height is from the floor up; legs count from the left, the rear row first. "+
		"Blocks go on their shims: their height is all of it together.")
	p.fold("setting", "Shims", finding.Counted(len(s.Shims), "point"), func(p writer) {
		p.Table("What goes under each point that bears", shimColumns)
		for i := range s.Shims {
			p.Row(shimColumns, p.shim(&s.Shims[i])...)
		}
		p.EndTable()
	})
}

func (p writer) shim(s *model.Shim) []string {
	thick, height := p.num(s.Thick), ""
	if s.Winds {
		thick = "wound out"
	}
	if s.Height > 0 {
		height = p.near(s.Height)
	}
	return []string{s.Words(), s.Under, p.near(s.At.X), p.near(s.At.Y), p.num(s.Gap), thick, height}
}
