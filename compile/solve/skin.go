package solve

import (
	"fmt"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/length"
)

// finish covers knee walls with skins, and these with battens, caps and corners.
func (s *solver) finish() {
	for i := range s.m.KneeWalls {
		wall := &s.m.KneeWalls[i]
		knee := s.Block("knee_wall." + wall.Name)
		if !s.coversClearOfSteel(wall, knee) || !s.facesOnce(knee) {
			continue
		}
		for _, b := range knee.Inner("skin") {
			s.skin(wall, knee, b)
		}
		for _, b := range knee.Inner("corner") {
			s.corner(wall, knee, b)
		}
	}
}

// facesOnce refuses two skins on one face, and two corners on one end.
func (s *solver) facesOnce(knee *lang.Block) bool {
	ok := true
	for _, pair := range []struct{ kind, attr string }{{"skin", "face"}, {"corner", "end"}} {
		all := knee.Inner(pair.kind)
		kept := s.once("face-taken", all, pair.attr, func(b *lang.Block) string {
			return fmt.Sprintf("have %s = %q", pair.attr, s.Text(b, pair.attr))
		})
		ok = ok && len(kept) == len(all)
	}
	return ok
}

// face is a skin on a face of a knee wall, seen by somebody who stands before
// it. Along it x counts from the skin's left end as that person sees it.
type face struct {
	wall  *model.KneeWall
	knee  *lang.Block
	block *lang.Block // the skin
	word  string      // "work", "room", "left", "right"
	out   geom.Dir
	sight string   // what its parts are drawn from
	box   geom.Box // the whole skin
	steel []solid  // what leaves the wall on this face
	skin  model.Skin
}

var faces = map[string]struct {
	out   geom.Dir
	sight string
}{
	"work": {front, "work side"}, "room": {rearward, "room side"}, "left": {leftward, "outside"}, "right": {rightward, "outside"},
} // lookup only

// x is where a place along the run is on the face, and the other way round.
func (f *face) x(u length.Length) length.Length {
	if f.word == "room" {
		return f.box.U.Hi - u
	}
	return u - f.box.U.Lo
}

// u is where a place of the face is along the run.
func (f *face) u(x length.Length) length.Length {
	if f.word == "room" {
		return f.box.U.Hi - x
	}
	return f.box.U.Lo + x
}

// along is where a stretch of the face is along the run.
func (f *face) along(x geom.Span) geom.Span {
	a, b := f.u(x.Lo), f.u(x.Hi)
	return geom.Span{Lo: min(a, b), Hi: max(a, b)}
}

// across is where a stretch along the run is on the face.
func (f *face) across(u geom.Span) geom.Span {
	a, b := f.x(u.Lo), f.x(u.Hi)
	return geom.Span{Lo: min(a, b), Hi: max(a, b)}
}

// over is a layer of a thickness that lies on a box, on the side that looks out.
func over(box geom.Box, out geom.Dir, t length.Length) geom.Box {
	s := box.Along(out.Axis)
	if out.Neg {
		return box.With(out.Axis, geom.Span{Lo: s.Lo - t, Hi: s.Lo})
	}
	return box.With(out.Axis, geom.Span{Lo: s.Hi, Hi: s.Hi + t})
}

// skin covers one face of a knee wall.
func (s *solver) skin(wall *model.KneeWall, knee, b *lang.Block) {
	f := s.face(wall, knee, b)
	if !s.soundSkin(&f) {
		return
	}
	seams, ok := s.skinSeams(&f)
	if !ok {
		return
	}
	f.skin = model.Skin{Name: b.Name, Face: f.word, Box: f.box, Why: why(b)}
	for _, x := range seams {
		f.skin.Seams = append(f.skin.Seams, f.u(x))
	}
	s.skinPieces(&f, seams)
	s.dress(&f, seams)
	wall.Skins = append(wall.Skins, f.skin)
}

// face works out where a skin lies.
func (s *solver) face(wall *model.KneeWall, knee, b *lang.Block) face {
	f := face{wall: wall, knee: knee, block: b, word: s.Text(b, "face")}
	f.out, f.sight = faces[f.word].out, faces[f.word].sight
	framing := wall.Framing
	f.box = over(framing, f.out, s.Length(s.Ref(b, "board"), "thickness"))
	f.box.Z = geom.Span{Lo: s.Length(b, "above_floor"), Hi: framing.Z.Hi - s.Length(b, "below_top")}
	switch f.word {
	case "work":
		on, _ := s.onRun(knee)
		f.box.Z.Lo = on + s.Length(b, "above_counter")
		if framing.V.Hi == 0 {
			f.box.U = s.overEnds(knee, framing)
		}
	case "room":
		f.box.U = s.overEnds(knee, framing)
		for i, sup := range wall.Supports {
			around := geom.Box{U: sup.Steel.U.Grow(s.Length(b, "clearance")), V: sup.Steel.V, Z: sup.Steel.Z.Grow(s.Length(b, "clearance"))}
			around.Z.Hi = framing.Z.Hi // the steel goes in from above
			f.steel = append(f.steel, solid{"support " + strconv.Itoa(i+1), around, wall.Why})
		}
	default:
		f.box.V.Hi = 0 // over the gap, to the backs of the boxes
		if s.Flag(b, "over_run") {
			f.box.V.Hi = s.runNamed(wall.Run).Depth
		}
	}
	return f
}

// overEnds is the framing and the edges of the skins on its ends.
func (s *solver) overEnds(knee *lang.Block, framing geom.Box) geom.Span {
	return geom.Span{Lo: framing.U.Lo - s.skinThickness(knee, "left"), Hi: framing.U.Hi + s.skinThickness(knee, "right")}
}

// skinPieces cuts a skin at its seams into panels, numbered from its left.
func (s *solver) skinPieces(f *face, seams []length.Length) {
	open := slices.Clone(f.steel)
	for _, o := range f.wall.Outlets {
		if o.Face == f.word {
			open = append(open, solid{"outlet " + o.Name, o.Clear, o.Why})
		}
	}
	counter, feet := s.besideRun(f)
	for i, x := range spacing.Pieces(geom.Span{Hi: f.box.U.Size()}, seams) {
		n := strconv.Itoa(i + 1)
		box := f.box.With(geom.U, f.along(x))
		name := f.word + " skin " + n
		if f.out.Axis == geom.U {
			name = f.word + " end skin"
		}
		box = s.toScribe(f.wall.Frame, box, f.out, s.onSite(f, box))
		for j := range feet {
			feet[j].Z.Lo = box.Z.Lo
		}
		s.panel(f.block, s.Ref(f.block, "board"), f.wall.Frame, box, piece{
			id: "piece-" + n, code: n, name: name, out: f.out, face: f.sight, grain: f.grain(s), good: model.GoodDrawn, cuts: feet, filled: counter,
		})
		part := len(s.m.Parts) - 1
		for _, o := range open {
			if o.box.Overlaps(box) {
				on, _ := s.m.Parts[part].Placement.Local(o.box)
				s.open(part, &thing{name: o.name, why: o.why}, on)
			}
		}
	}
}

// onSite is how a piece of a skin is cut on site: over the floor, and on the room's side and
// the work side where it ends on the wall that the run stands out from.
func (s *solver) onSite(f *face, piece geom.Box) (cut []scribing) {
	beyond := s.Length(f.block, "scribe")
	cut = s.overFloor(f)
	run := s.runNamed(f.wall.Run)
	if f.out.Axis != geom.V || run.Along {
		return cut
	}
	at := geom.Place(f.wall.Frame, piece, f.out)
	b := s.Block("run." + run.Name)
	if piece.U.Lo == f.box.U.Lo && piece.U.Lo == 0 {
		cut = append(cut, s.toWall(run, b, model.Left, scribing{edge: edgeAt(&at, leftward), beyond: beyond})...)
	}
	if piece.U.Hi == f.box.U.Hi && piece.U.Hi == run.Length {
		cut = append(cut, s.toWall(run, b, model.Right, scribing{edge: edgeAt(&at, rightward), beyond: beyond})...)
	}
	return cut
}

// overFloor is how a skin, and what lies on it, is cut on site to keep its gap over the floor.
func (s *solver) overFloor(f *face) []scribing {
	if f.word == "work" {
		return nil
	}
	return s.toFloor(s.Length(f.block, "above_floor"), s.Length(f.block, "scribe"))
}

func (f *face) grain(s *solver) model.Grain {
	if s.Text(f.block, "grain") == "up" {
		return model.GrainY
	}
	return model.GrainX
}

// besideRun is what a skin that reaches over the end of the run lacks: what is
// above the boxes, where the counter lies, and the recess for the feet of the box at
// that end.
func (s *solver) besideRun(f *face) (counter, feet []geom.Box) {
	run := s.runNamed(f.wall.Run)
	if f.out.Axis != geom.U || !s.Flag(f.block, "over_run") || len(run.Boxes) == 0 { // none where all were refused
		return nil, nil
	}
	end := endBox(run, model.Left)
	if f.word == "right" {
		end = endBox(run, model.Right)
	}
	high, deep := end.ToeHeight, end.ToeSetback
	if end.Kind != model.Cabinet {
		high, deep = s.toeKick(s.Block("run." + run.Name))
	}
	counter = []geom.Box{f.box.With(geom.V, geom.Span{Hi: run.Depth}).With(geom.Z, geom.Span{Lo: run.Height, Hi: f.box.Z.Hi})}
	feet = []geom.Box{f.box.With(geom.V, geom.Span{Lo: run.Depth - deep, Hi: run.Depth}).With(geom.Z, geom.Span{Lo: f.box.Z.Lo, Hi: high})}
	return counter, feet
}

// endBox is the box at an end of a run that has any.
func endBox(run *model.Run, end model.End) *model.Box {
	if end == model.Right {
		return &run.Boxes[len(run.Boxes)-1]
	}
	return &run.Boxes[0]
}
