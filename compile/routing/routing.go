// Package routing plans what a router cuts in panels beside recesses for steel: openings,
// the panels' outlines, hinge cups, holes for shelf pins, grooves (SPEC.md 13.8). Grooves,
// cups and small openings are cleared by compile/router as recesses are; the way round a
// contour of lines and arcs, holes and tabs are its own.
//
// How all of this is cut is common practice of the trade, not a standard.
package routing

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = length.Length

// maxMoves bounds what one work takes, so that a slip of the pen cannot fill a disk.
const maxMoves = 50_000

// Request is what a router is asked for.
type Request struct {
	Tool model.Tool
	Also model.Also
	Show func(Length) string // how texts print a length
}

// Plan plans the programs for the faces of a panel. Work that does not fit the bit or the
// machine is left out. Where the outline is cut too, that is done with the drawn face up,
// and the other face is worked afterwards.
func Plan(p *model.Part, r *Request) (all []model.Routing, left []Left) {
	first := r.drawn(p)
	if len(first.works) > 0 {
		all = append(all, first.routing())
	}
	far := r.face(p, true, false)
	far.bores()
	if len(far.works) > 0 {
		all = append(all, far.routing())
	}
	return all, append(first.left, far.left...)
}

// cut is a work and the moves that do it, which begin and end at the clearance.
type cut struct {
	moves []model.Move
	work  model.Work
}

// drawn plans what is cut with the drawn face up: blind work first, and the outline last. A
// panel whose outline cannot be cut has been cut to size by other means.
func (r *Request) drawn(p *model.Part) *face {
	f := r.face(p, false, r.Also.Outlines)
	var outline *cut
	if r.Also.Outlines {
		c, refused := f.round("outline", "outline", f.contour(p.Outline).Reversed())
		if outline = f.within(c, refused); outline == nil {
			left := f.left
			f = r.face(p, false, false)
			f.left = left
		}
	}
	if r.Also.Grooves {
		for i := range p.Recesses {
			if recess := &p.Recesses[i]; !recess.Routed {
				f.take(f.groove(recess))
			}
		}
	}
	f.bores()
	if r.Also.Openings {
		for i := range p.Openings {
			if o := &p.Openings[i]; !o.Notch {
				f.take(f.opening(o))
			}
		}
	}
	if outline != nil {
		f.append(outline)
	}
	return f
}

// face gathers the works in one face of a panel.
type face struct {
	*board
	works []model.Work
	moves []model.Move
	reach geom.Rect // of all moves, and of X0 Y0, where a program ends
	left  []Left
}

func (r *Request) face(p *model.Part, far, blank bool) *face {
	return &face{board: lay(r, p, far, blank)}
}

// bores makes the cups and holes that are asked for in the face that is up.
func (f *face) bores() {
	for i := range f.part.Bores {
		bore := &f.part.Bores[i]
		kind, asked := "pin", f.also.Pins
		switch bore.Name {
		case "hinge cup":
			kind, asked = "cup", f.also.Cups
		case "shelf pin", "hinge plate":
		default:
			continue
		}
		if asked && f.far == (bore.Far && !bore.Through()) && bore.Slot == 0 {
			f.take(f.hole(model.Work{Kind: kind, Name: bore.Name, Depth: bore.Depth}, f.point(bore.At), bore.Diameter))
		}
	}
}

func (f *face) take(c *cut, refused *Left) {
	if c = f.within(c, refused); c != nil {
		f.append(c)
	}
}

// within returns a cut that the machine reaches, and takes note of what stands against any
// other one.
func (f *face) within(c *cut, refused *Left) *cut {
	if refused == nil {
		refused = f.beyond(c)
	}
	if refused != nil {
		f.left = append(f.left, *refused)
		return nil
	}
	return c
}

// beyond refuses moves that with those before take more travel than there is.
func (f *face) beyond(c *cut) *Left {
	plan, z := (&model.Routing{Moves: c.moves}).Reach()
	plan, travel := plan.Union(f.reach), f.tool.Travel
	for _, a := range [...]struct {
		name         string
		have, travel Length
	}{{"X", plan.X.Size(), travel.X}, {"Y", plan.Y.Size(), travel.Y}, {"Z", z.Size(), travel.Z}} {
		if a.travel > 0 && a.have > a.travel {
			return f.leave(c.work, "travel", "another machine, or other means", fmt.Sprintf(
				"Its moves would go over %s in %s; the machine moves %s.", f.show(a.have), a.name, f.show(a.travel)))
		}
	}
	f.reach = plan
	return nil
}

func (f *face) append(c *cut) {
	c.work.First = len(f.moves)
	c.moves[0].Note = noteOf(&c.work, c.moves[0].Note)
	f.works, f.moves = append(f.works, c.work), append(f.moves, c.moves...)
}

// noteOf says in the program which work begins.
func noteOf(w *model.Work, note string) string {
	said := w.Name
	if w.Kind == "opening" {
		said = "opening " + said
	}
	if note != "" {
		said += "; " + note
	}
	return said
}

// nameOf is the name of a program's file, which another one may have too.
func nameOf(p *model.Part, far bool) string {
	if far {
		return p.Label + "-far"
	}
	return p.Label
}

func (f *face) routing() model.Routing {
	length, seconds := router.Estimate(f.moves, f.tool)
	return model.Routing{
		Name: nameOf(f.part, f.far), Part: f.part.ID, PartLabel: f.part.Label, Far: f.far, Zero: f.zero(),
		Stock: f.stock, Piece: f.contour(f.part.Outline), Thick: f.thick, Under: f.also.Under,
		Works: f.works, Tool: f.tool, Moves: f.moves, CutLength: length, Seconds: seconds,
	}
}

func (f *face) zero() string {
	if f.blank {
		return "X0 Y0 at the lower left corner of the blank"
	}
	return "X0 Y0 at the lower left corner of the part as it lies"
}
