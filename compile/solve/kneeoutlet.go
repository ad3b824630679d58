package solve

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// kneeOutlets places the electrical boxes of a knee wall, which must be known
// before its studs and supports are.
func (s *solver) kneeOutlets(in *knee) {
	for _, o := range in.block.Inner("outlet") {
		along, ok := s.kneeOutletAlong(in.wall.Framing.U, o)
		if !ok {
			continue
		}
		k := s.kneeBox(in, o, along)
		if s.soundKneeBox(&k) && s.outletsApart(&in.wall, &k) {
			in.wall.Outlets = append(in.wall.Outlets, k.outlet)
		}
	}
}

// kneeOutletAlong is the centre of an outlet along the run: from the left or the
// right end of the framing as one looks at its face, or as far from one end as
// another outlet is from the other.
func (s *solver) kneeOutletAlong(framing geom.Span, o *lang.Block) (length.Length, bool) {
	way := s.saidOnce(o, "from_left", "from_right", "mirrors")
	switch {
	case way == nil:
		return 0, false
	case way.Spec.Name == "mirrors":
		other := s.Ref(o, "mirrors")
		if other.Parent != o.Parent || other.Attr("mirrors") != nil {
			s.Findings.Errorf("mirrored-elsewhere", way.Expr.At, "mirror an outlet of this knee wall that says from_left or from_right",
				"%s is not placed from an end of this knee wall.", finding.Capital(other.Describe())).
				Also(other.Head, "it stands here")
			return 0, false
		}
		along, ok := s.kneeOutletAlong(framing, other)
		return framing.Lo + framing.Hi - along, ok
	}
	from := s.Length(o, way.Spec.Name)
	if (way.Spec.Name == "from_left") == (s.Text(o, "face") == "work") {
		return framing.Lo + from, true
	}
	return framing.Hi - from, true
}

// saidOnce is the one of some attributes that a block states; nil, and a
// finding, where that is not one. It is asked more than once of a block that is
// mirrored, and tells it once.
func (s *solver) saidOnce(b *lang.Block, names ...string) *lang.Attr {
	var said []*lang.Attr
	for _, name := range names {
		if a := b.Attr(name); a != nil {
			said = append(said, a)
		}
	}
	last := len(names) - 1
	switch {
	case len(said) == 0 && !s.Findings.Has("attribute-missing", b.Head):
		s.Findings.Errorf("attribute-missing", b.Head, strings.Join(names[:last], " = …, ")+" = … or "+names[last]+" = outlet.NAME",
			"%s does not say where it is.", finding.Capital(b.Describe()))
	case len(said) > 1 && !s.Findings.Has("said-twice", said[1].NameAt):
		s.Findings.Errorf("said-twice", said[1].NameAt, "leave one of them out", "%s says twice where it is.", finding.Capital(b.Describe())).
			Also(said[0].NameAt, "the first one")
	}
	if len(said) != 1 {
		return nil
	}
	return said[0]
}

// kneeBox is an electrical box on its way into a knee wall.
type kneeBox struct {
	knee, block *lang.Block
	framing     geom.Box
	end         length.Length // what the stud at either end takes
	outlet      model.KneeOutlet
	box, cover  geom.Rect // from the run's left end, above the floor
	free        geom.Span // heights between the plates, or above what lies on the run on the work side
	depth       length.Length
	into        length.Length // of the depth, what lies behind the face of the framing
	clearance   length.Length
	said        bool // its height is
}

func (s *solver) kneeBox(in *knee, o *lang.Block, along length.Length) kneeBox {
	f, face := in.wall.Framing, s.Text(o, "face")
	k := kneeBox{
		knee: in.block, block: o, framing: f, end: in.thick, free: in.studSpan(),
		depth: s.FieldLength(o, "box", "depth"), clearance: s.Length(o, "clearance"), said: o.Attr("height") != nil,
	}
	if face == "work" {
		k.free.Lo, _ = s.onRun(in.block)
	}
	height := k.free.Mid()
	if k.said {
		height = s.Length(o, "height")
	}
	k.box, k.cover = s.outletSizes(o, along, height, s.Flag(o, "lying"))
	covered := s.skinThickness(in.block, face)
	k.into = k.depth - covered
	cut := k.box.Grow(k.clearance)
	k.outlet = model.KneeOutlet{
		Name: o.Name, Face: face, ByRule: !k.said, Why: why(o),
		Box:   geom.Box{U: k.box.X, V: geom.Span{Lo: f.V.Hi - k.into, Hi: f.V.Hi}, Z: k.box.Y},
		Clear: geom.Box{U: cut.X, V: geom.Span{Lo: f.V.Hi, Hi: f.V.Hi + covered}, Z: cut.Y},
		Cover: geom.Box{U: k.cover.X, V: geom.Span{Lo: f.V.Hi + covered, Hi: f.V.Hi + covered}, Z: k.cover.Y},
	}
	if face == "room" {
		k.outlet.Box.V = geom.Span{Lo: f.V.Lo, Hi: f.V.Lo + k.into}
		k.outlet.Clear.V = geom.Span{Lo: f.V.Lo - covered, Hi: f.V.Lo}
		k.outlet.Cover.V = geom.Span{Lo: f.V.Lo - covered, Hi: f.V.Lo - covered}
	}
	return k
}

// outletSizes are the box and the cover plate of an outlet about its centre.
func (s *solver) outletSizes(o *lang.Block, along, height length.Length, lying bool) (box, cover geom.Rect) {
	about := func(what string) geom.Rect {
		w, h := s.FieldLength(o, what, "width"), s.FieldLength(o, what, "height")
		if lying {
			w, h = h, w
		}
		return around(along, height, w, h)
	}
	return about("box"), about("cover")
}

// onRun is the height of what lies on the run before a knee wall: of its
// counter, or else of its boxes; and the block that says so.
func (s *solver) onRun(knee *lang.Block) (length.Length, *lang.Block) {
	run := s.Ref(knee, "behind")
	for _, c := range s.Source.Top("counter") {
		if s.Ref(c, "over") == run {
			return s.SolvedLength(c, "top"), c
		}
	}
	return s.SolvedLength(run, "height"), run
}

// skinThickness is how thick the skin on a face of a knee wall is, 0 where
// there is none.
func (s *solver) skinThickness(knee *lang.Block, face string) length.Length {
	if skin := s.SkinOn(knee, face); skin != nil {
		return s.Length(s.Ref(skin, "board"), "thickness")
	}
	return 0
}

// mirrorsAsWide is whether an outlet mirrors one whose box is at least as wide,
// and so comes as near to an end of the framing.
func (s *solver) mirrorsAsWide(o *lang.Block) bool {
	if o.Attr("mirrors") == nil {
		return false
	}
	wide := func(o *lang.Block) length.Length {
		box, _ := s.outletSizes(o, 0, 0, s.Flag(o, "lying"))
		return box.X.Size()
	}
	return wide(s.Ref(o, "mirrors")) >= wide(o)
}

func (s *solver) soundKneeBox(k *kneeBox) bool {
	o, name := k.block, finding.Capital(k.block.Describe())
	cut := k.box.Grow(k.clearance)
	ends := k.framing.U.Grow(-k.end)
	switch {
	case !k.cover.Contains(cut):
		s.Findings.Errorf("cover-too-small", o.Said("cover"), fmt.Sprintf("a cover of %s by %s at least, or a smaller clearance", s.Show(cut.X.Size()), s.Show(cut.Y.Size())),
			"The cover plate of %s is %s wide and %s high as it stands, the opening behind it %s by %s: it would show.",
			o.Describe(), s.Show(k.cover.X.Size()), s.Show(k.cover.Y.Size()), s.Show(cut.X.Size()), s.Show(cut.Y.Size()))
	case !ends.Contains(k.box.X):
		if s.mirrorsAsWide(o) {
			return false // that one says so
		}
		lo, hi := k.end+k.box.X.Size()/2, k.framing.U.Size()-k.end-k.box.X.Size()/2
		mend := ""
		if lo <= hi {
			mend = fmt.Sprintf("a centre from %s to %s from either end", s.Show(lo), s.Show(hi))
		}
		s.Findings.Errorf("box-meets-end", o.Said("from_left", "from_right", "mirrors"), mend,
			"%s runs into the stud at the end of %s by %s, or past it.", name, k.knee.Describe(), s.Show(max(ends.Lo-k.box.X.Lo, k.box.X.Hi-ends.Hi)))
	case k.box.Y.Hi > k.free.Hi:
		s.Findings.Errorf("box-meets-plate", o.Said("height"), s.heightMend(k),
			"The top of %s would stand at %s. The upper plate of %s begins at %s: the box runs into the plate by %s.",
			o.Describe(), s.Show(k.box.Y.Hi), k.knee.Describe(), s.Show(k.free.Hi), s.Show(k.box.Y.Hi-k.free.Hi)).
			Also(k.knee.Said("top"), "the plate comes from here")
	case k.outlet.Face == "room" && k.box.Y.Lo < k.free.Lo:
		s.Findings.Errorf("box-meets-plate", o.Said("height"), s.heightMend(k),
			"The bottom of %s would stand at %s. The lower plate of %s ends at %s: the box runs into the plate by %s.",
			o.Describe(), s.Show(k.box.Y.Lo), k.knee.Describe(), s.Show(k.free.Lo), s.Show(k.free.Lo-k.box.Y.Lo)).
			Also(k.knee.Head, "the knee wall")
	case k.outlet.Face == "work" && k.cover.Y.Lo < k.free.Lo:
		_, on := s.onRun(k.knee)
		s.Findings.Errorf("cover-in-the-way", o.Said("height"), s.heightMend(k),
			"The cover plate of %s would reach down to %s, but %s lies at %s: %s too low.",
			o.Describe(), s.Show(k.cover.Y.Lo), on.Describe(), s.Show(k.free.Lo), s.Show(k.free.Lo-k.cover.Y.Lo)).
			Also(on.Head, "what lies there")
	case k.cover.Y.Hi > k.framing.Z.Hi:
		s.Findings.Errorf("cover-in-the-way", o.Said("height"), s.heightMend(k),
			"The cover plate of %s would reach up to %s, but the framing ends at %s, where the bar top lies: %s too high.",
			o.Describe(), s.Show(k.cover.Y.Hi), s.Show(k.framing.Z.Hi), s.Show(k.cover.Y.Hi-k.framing.Z.Hi))
	case k.into > k.framing.V.Size() || k.into <= 0:
		s.Findings.Errorf("box-depth", o.Said("box"), fmt.Sprintf("a box over %s and at most %s deep", s.Show(k.depth-k.into), s.Show(k.depth-k.into+k.framing.V.Size())),
			"The box of %s is %s deep, of which the skin takes %s; the framing is %s thick: %s.",
			o.Describe(), s.Show(k.depth), s.Show(k.depth-k.into), s.Show(k.framing.V.Size()), s.depthMiss(k))
	default:
		return true
	}
	return false
}

// heights are those at which the centre of a box fits, whole marks inwards:
// under the upper plates, over what lies below, its cover clear of slabs.
func (k *kneeBox) heights(box, cover geom.Rect, mark length.Length) geom.Span {
	up := func(l length.Length) length.Length { return l - l/2 } // of a size, what lies above its centre
	lo := k.free.Lo + box.Y.Size()/2
	if k.outlet.Face == "work" {
		lo = k.free.Lo + cover.Y.Size()/2
	}
	hi := min(k.free.Hi-up(box.Y.Size()), k.framing.Z.Hi-up(cover.Y.Size()))
	return geom.Span{Lo: length.Up(lo, mark), Hi: length.Down(hi, mark)}
}

// heightMend tells how the height of a box can be mended: by another one, by
// leaving it to the rule, by turning the box; empty where nothing of that does.
func (s *solver) heightMend(k *kneeBox) string {
	fits := k.heights(k.box, k.cover, s.Marks)
	middle := k.free.Mid()
	left := fmt.Sprintf("it is then %s, the middle of what is free", s.Show(middle))
	within := func(heights geom.Span, h length.Length) bool { return heights.Lo <= h && h <= heights.Hi }
	if fits.Size() >= 0 {
		mend := fmt.Sprintf("height at most %s", s.Show(fits.Hi))
		switch {
		case !k.said:
			return fmt.Sprintf("a height from %s to %s", s.Show(fits.Lo), s.Show(fits.Hi))
		case k.box.Y.Mid() < fits.Lo:
			mend = fmt.Sprintf("height at least %s", s.Show(fits.Lo))
		}
		if within(fits, middle) {
			mend += "; or leave it out: " + left
		}
		return mend
	}
	lying := !s.Flag(k.block, "lying")
	centre := k.box.Y.Lo + k.box.Y.Size()/2
	turned := k.heights(quarter(k.box), quarter(k.cover), s.Marks)
	switch {
	case within(turned, centre):
		return fmt.Sprintf("lying = %t", lying)
	case within(turned, middle):
		return fmt.Sprintf("lying = %t, and no height: ", lying) + left
	case turned.Size() >= 0:
		return fmt.Sprintf("lying = %t, and a height from %s to %s", lying, s.Show(turned.Lo), s.Show(turned.Hi))
	}
	return ""
}

// quarter is a rectangle turned by a quarter, wherever it then lies.
func quarter(r geom.Rect) geom.Rect { return geom.Rect{X: r.Y, Y: r.X} }

// outletsApart refuses boxes that meet, from the same side or from behind, and
// cover plates that do.
func (s *solver) outletsApart(wall *model.KneeWall, k *kneeBox) bool {
	i := slices.IndexFunc(wall.Outlets, func(o model.KneeOutlet) bool {
		covers := o.Face == k.outlet.Face && o.Cover.U.Overlaps(k.cover.X) && o.Cover.Z.Overlaps(k.cover.Y)
		return covers || o.Box.Overlaps(k.outlet.Box)
	})
	if i < 0 {
		return true
	}
	other := wall.Outlets[i]
	miss := min(other.Cover.U.Intersect(k.cover.X).Size(), other.Cover.Z.Intersect(k.cover.Y).Size())
	mend := fmt.Sprintf("move one of them by %s along the wall, or more", s.Show(length.Up(other.Cover.U.Intersect(k.cover.X).Size(), s.Marks)))
	if other.Face == k.outlet.Face {
		s.Findings.Errorf("outlets-meet", k.block.Head, mend, "The cover plates of %s and of outlet %q overlap by %s.", k.block.Describe(), other.Name, s.Show(miss)).
			Also(other.Why.At, "the other one")
		return false
	}
	deep := other.Box.V.Intersect(k.outlet.Box.V).Size()
	s.Findings.Errorf("outlets-meet", k.block.Head, mend, "The boxes of %s and of outlet %q stand back to back in a framing of %s, and overlap by %s.",
		k.block.Describe(), other.Name, s.Show(wall.Framing.V.Size()), s.Show(deep)).
		Also(other.Why.At, "the other one")
	return false
}

// coversClearOfSteel refuses a cover plate where a support leaves the wall.
func (s *solver) coversClearOfSteel(wall *model.KneeWall, knee *lang.Block) bool {
	ok := true
	for _, o := range wall.Outlets {
		for i, sup := range wall.Supports {
			if o.Face == "room" && o.Cover.U.Overlaps(sup.Steel.U) && o.Cover.Z.Overlaps(sup.Steel.Z) {
				s.Findings.Errorf("cover-in-the-way", o.Why.At, "another height, or another place along the wall",
					"The cover plate of outlet %q would reach up to %s, but support %d leaves the wall there, from %s on: %s too high.",
					o.Name, s.Show(o.Cover.Z.Hi), i+1, s.Show(sup.Steel.Z.Lo), s.Show(o.Cover.Z.Hi-sup.Steel.Z.Lo)).
					Also(knee.Inner("supports")[0].Head, "the supports")
				ok = false
				break
			}
		}
	}
	return ok
}

// depthMiss is by how much a box is too deep for its framing, or not deep enough to
// reach into it.
func (s *solver) depthMiss(k *kneeBox) string {
	if over := k.into - k.framing.V.Size(); over > 0 {
		return s.Show(over) + " too deep"
	}
	return "it does not reach into it"
}
