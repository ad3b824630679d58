package solve

import (
	"fmt"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// covers are the cover plates of outlets on a face that reach into some heights,
// from the skin's left end.
func (f *face) covers(z geom.Span) []spacing.Closed {
	var out []spacing.Closed
	for _, o := range f.wall.Outlets {
		if o.Face == f.word && o.Cover.Z.Overlaps(z) {
			out = append(out, spacing.Closed{Span: f.across(o.Cover.U), By: "outlet " + o.Name})
		}
	}
	return out
}

// coverFree refuses a strip that would lie over the cover plate of an outlet.
func (s *solver) coverFree(f *face, what string, x, z geom.Span) bool {
	for _, c := range f.covers(z) {
		if c.Span.Overlaps(x) {
			s.stripMeetsCover(f, what, c.By)
			return false
		}
	}
	return true
}

func (s *solver) stripMeetsCover(f *face, what, outlet string) {
	o := s.Block("outlet." + outlet[len("outlet "):])
	s.Findings.Errorf("strip-meets-cover", o.Head, "move the outlet, or leave the strip out", "The cover plate of %s lies where %s of %s does.",
		o.Describe(), what, f.block.Describe()).
		Also(f.block.Head, "the skin")
}

// capStrip lays a strip along the upper edge of a skin, or under the steel that
// leaves the wall there, between the corners, and returns the height of its
// lower edge.
func (s *solver) capStrip(f *face) (length.Length, bool) {
	attr := f.block.Attr("cap")
	board, width := s.FieldRef(f.block, "cap", "board"), s.FieldLength(f.block, "cap", "width")
	box := over(f.box, f.out, s.Length(board, "thickness"))
	hi := f.under(f.box.U, f.box.Z.Hi)
	box.Z = geom.Span{Lo: hi - width, Hi: hi}
	if box.Z.Lo <= f.box.Z.Lo {
		s.Findings.Errorf("cap-too-wide", attr.Expr.At, fmt.Sprintf("a cap under %s wide", s.Show(hi-f.box.Z.Lo)),
			"The cap is %s wide, but there are %s of %s for it.", s.Show(width), s.Show(max(hi-f.box.Z.Lo, 0)), f.block.Describe())
		return 0, false
	}
	x := geom.Span{Hi: f.box.U.Size()}
	if corner := s.cornerOn(f, false); corner != nil {
		x.Lo = s.Length(corner, "width") - s.Length(s.Ref(corner, "board"), "thickness")
	}
	if corner := s.cornerOn(f, true); corner != nil {
		x.Hi -= s.Length(corner, "width") - s.Length(s.Ref(corner, "board"), "thickness")
	}
	reach := s.Lengths(board, "size")[0] - 2*s.m.SheetEdge()
	if x.Size() <= 0 || x.Size()/max(reach, 1) > mostPieces {
		return box.Z.Lo, x.Size() <= 0
	}
	joints, ok := spacing.SplitFromLeft(x, reach, f.studs())
	if !ok {
		s.Findings.Errorf("no-stud-for-seam", attr.Expr.At, "studs closer together, or a larger sheet",
			"The cap of %s is %s long and a sheet gives %s: the next piece would have no stud to end on.", f.block.Describe(), s.Show(x.Size()), s.Show(reach)).
			Also(f.knee.Head, "the knee wall")
		return 0, false
	}
	for i, part := range spacing.Pieces(x, joints) {
		n := strconv.Itoa(i + 1)
		box.U = f.along(part)
		s.panel(f.block, board, f.wall.Frame, box, piece{
			id: "cap-" + n, code: "CP" + n, name: f.word + " cap " + n, out: f.out, face: f.sight, grain: model.GrainX, good: model.GoodDrawn,
		})
	}
	return box.Z.Lo, s.coverFree(f, "the cap", x, box.Z)
}

// cornerOn is the corner at an end of the room's face as one looks at it; nil
// where there is none.
func (s *solver) cornerOn(f *face, right bool) *lang.Block {
	if f.word != "room" {
		return nil
	}
	end := "right"
	if right {
		end = "left"
	}
	return s.InnerWith(f.knee, "corner", "end", end)
}

// corner covers the edge where the skin on the room's side meets that on an end
// with two strips, that on the room's side over the edge of the other.
func (s *solver) corner(wall *model.KneeWall, knee, b *lang.Block) {
	word := s.Text(b, "end")
	for _, on := range []string{"room", word} {
		if s.SkinOn(knee, on) == nil {
			s.Findings.Errorf("corner-without-skin", b.Head, fmt.Sprintf("a skin with face = %q, or no corner", on),
				"%s covers where two skins meet, but there is none on face %q.", finding.Capital(b.Describe()), on)
			return
		}
	}
	skinned := func(on string) int {
		return slices.IndexFunc(wall.Skins, func(k model.Skin) bool { return k.Face == on })
	}
	if skinned("room") < 0 || skinned(word) < 0 {
		return // said before
	}
	f := s.face(wall, knee, s.SkinOn(knee, "room"))
	end := wall.Skins[skinned(word)].Box
	board, width := s.Ref(b, "board"), s.Length(b, "width")
	t := s.Length(board, "thickness")
	room := over(f.box, f.out, t)
	side := over(end, faces[word].out, t)
	side.V = geom.Span{Lo: f.box.V.Lo, Hi: f.box.V.Lo + width - t}
	room.U = geom.Span{Lo: side.U.Lo, Hi: side.U.Lo + width}
	if word == "right" {
		room.U = geom.Span{Lo: side.U.Hi - width, Hi: side.U.Hi}
	}
	if width <= t || side.V.Hi > end.V.Hi || room.U.Size()-t > f.box.U.Size() {
		s.Findings.Errorf("corner-width", b.Attr("width").Expr.At, fmt.Sprintf("a width over %s and at most %s", s.Show(t), s.Show(t+min(end.V.Hi-f.box.V.Lo, f.box.U.Size()))),
			"The strips of %s are %s wide and %s thick; the end that they cover is %s wide.", b.Describe(), s.Show(width), s.Show(t), s.Show(end.V.Hi-f.box.V.Lo))
		return
	}
	room.Z.Hi = f.under(room.U, room.Z.Hi)
	if !s.coverFree(&f, "corner "+strconv.Quote(b.Name), f.across(room.U), room.Z) {
		return
	}
	room = s.toScribe(wall.Frame, room, f.out, s.overFloor(&f))
	s.panel(b, board, wall.Frame, room, piece{id: "strip-room", code: "CR", name: "room corner strip", out: f.out, face: f.sight, grain: model.GrainY, good: model.GoodDrawn})
	side = s.toScribe(wall.Frame, side, faces[word].out, s.overFloor(&f))
	s.panel(b, board, wall.Frame, side, piece{id: "strip-end", code: "CE", name: word + " end corner strip", out: faces[word].out, face: "outside", grain: model.GrainY, good: model.GoodDrawn})
}
