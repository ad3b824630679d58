package solve

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/length"
)

// dress lays a cap and battens on a skin, as it says.
func (s *solver) dress(f *face, seams []length.Length) {
	top, ok := f.box.Z.Hi, true
	if f.block.Attr("cap") != nil {
		top, ok = s.capStrip(f)
	}
	if ok && f.block.Attr("battens") != nil {
		s.battens(f, seams, top)
	}
}

// battens is what the strips over one skin have in common.
type battens struct {
	face   *face
	board  *lang.Block
	width  length.Length
	top    length.Length    // where they end, but for those under steel
	covers []spacing.Closed // where cover plates of outlets leave no place for a batten's centre
	placed []batten
}

// batten is one strip by its centre, from the left end of the skin.
type batten struct {
	x    length.Length
	half length.Length // of its width; 0 for an end at which nothing stands
	made bool          // false for an end, and for a corner in a batten's place
	off  length.Length // from where the rule alone would put it
	by   string        // what moved it
}

func (s *solver) battens(f *face, seams []length.Length, top length.Length) {
	b := battens{face: f, board: s.FieldRef(f.block, "battens", "board"), width: s.FieldLength(f.block, "battens", "width"), top: top}
	b.covers = f.covers(geom.Span{Lo: f.box.Z.Lo, Hi: top})
	for i := range b.covers {
		b.covers[i].Span = b.covers[i].Span.Grow((b.width + 1) / 2)
	}
	fixed := s.fixedBattens(&b, seams)
	if !s.battensApart(&b, fixed) || !s.betweenBattens(&b, fixed) {
		return
	}
	for _, p := range fixed {
		if p.made {
			b.placed = append(b.placed, p)
		}
	}
	slices.SortFunc(b.placed, func(p, q batten) int { return cmp.Compare(p.x, q.x) })
	for i, p := range b.placed {
		s.batten(&b, strconv.Itoa(i+1), p)
	}
}

// fixedBattens are those that the rest stand between, from left to right: at
// the ends, over the seams, and mirrored to these. Where nothing stands at an
// end, that end itself is the first or last.
func (s *solver) fixedBattens(b *battens, seams []length.Length) []batten {
	long, half := b.face.box.U.Size(), b.width/2
	end := func(right bool) batten {
		switch corner := s.cornerOn(b.face, right); {
		case corner != nil:
			w := s.Length(corner, "width")
			return batten{x: w/2 - s.Length(s.Ref(corner, "board"), "thickness"), half: w / 2}
		case s.Field(b.face.block, "battens", "ends").Flag:
			return batten{x: half, half: half, made: true}
		}
		return batten{}
	}
	left, right := end(false), end(true)
	right.x = long - right.x
	fixed := []batten{left, right}
	for _, x := range seams {
		fixed = append(fixed, batten{x: x, half: half, made: true})
		if s.mirrored(b) {
			fixed = append(fixed, batten{x: long - x, half: half, made: true})
		}
	}
	slices.SortFunc(fixed, func(p, q batten) int { return cmp.Compare(p.x, q.x) })
	return slices.Compact(fixed)
}

func (s *solver) mirrored(b *battens) bool { return s.Field(b.face.block, "battens", "mirrored").Flag }

// battensApart refuses fixed battens that run into one another or over the
// cover plate of an outlet.
func (s *solver) battensApart(b *battens, fixed []batten) bool {
	at := b.face.block.Attr("battens").Expr.At
	for i, p := range fixed {
		if i > 0 {
			if q := fixed[i-1]; p.half > 0 && q.half > 0 && p.x-q.x < p.half+q.half {
				mend := "another place for the seam, or narrower battens"
				if s.mirrored(b) {
					mend += ", or mirrored = false in battens"
				}
				s.Findings.Errorf("battens-meet", at, mend, "Two battens of %s that are fixed stand %s from centre to centre: %s too close.",
					b.face.block.Describe(), s.Show(p.x-q.x), s.Show(p.half+q.half-(p.x-q.x)))
				return false
			}
		}
		if !p.made {
			continue
		}
		for _, c := range b.covers {
			if c.Span.Lo < p.x && p.x < c.Span.Hi {
				s.stripMeetsCover(b.face, "a fixed batten", c.By)
				return false
			}
		}
	}
	return true
}

// betweenBattens places those that are not fixed, stretch by stretch, alike from both
// ends where that is asked for and both ends are alike.
func (s *solver) betweenBattens(b *battens, fixed []batten) bool {
	long, last := b.face.box.U.Size(), len(fixed)-2
	for i := range fixed[1:] {
		from, to := fixed[i], fixed[i+1]
		far, near := fixed[last-i], fixed[last-i+1]
		alike := s.mirrored(b) && from.x+near.x == long && to.x+far.x == long && from.half == near.half && to.half == far.half
		if alike && i > last-i {
			continue // with the one that it mirrors
		}
		placed, ok := s.evenBattens(b, from, to, alike, i == last-i)
		if !ok {
			return false
		}
		b.placed = append(b.placed, placed...)
		if alike && i < last-i {
			for _, p := range placed {
				p.x, p.off = long-p.x, -p.off
				b.placed = append(b.placed, p)
			}
		}
	}
	return true
}

// evenBattens places the battens of one stretch between fixed ones. Where it is
// alike another one, or itself the middle, what is closed there is closed here.
func (s *solver) evenBattens(b *battens, from, to batten, alike, middle bool) ([]batten, bool) {
	at := b.face.block.Attr("battens").Expr.At
	stretch := geom.Span{Lo: from.x, Hi: to.x}
	n := s.battensIn(b, stretch.Size())
	if n > mostPieces {
		s.tooMany(at, n, "battens")
		return nil, false
	}
	if n == 0 {
		return nil, true
	}
	ask := spacing.Ask{
		Stretch: stretch, Count: n + 2, Fixed: []length.Length{from.x, to.x}, Mirrored: alike && middle, Mark: s.Marks,
		Least: max(b.width/2+max(from.half, to.half), b.width),
	}
	ask.Closed = closedIn(stretch, b.covers)
	if alike {
		long := b.face.box.U.Size()
		for _, c := range b.covers {
			image := spacing.Closed{Span: geom.Span{Lo: long - c.Span.Hi, Hi: long - c.Span.Lo}, By: c.By}
			ask.Closed = append(ask.Closed, closedIn(stretch, []spacing.Closed{image})...)
		}
	}
	answer, refusal := spacing.Place(ask)
	if refusal != nil {
		s.Findings.Errorf("battens-meet", at, "fewer of them with between = …, or narrower ones",
			"%d battens cannot stand between %s and %s from the left end of %s. %s", n, s.Show(from.x), s.Show(to.x), b.face.block.Describe(), refusal.Text(s.Show))
		return nil, false
	}
	out := make([]batten, n)
	for i := range out {
		out[i] = batten{x: answer.Centres[i+1], half: b.width / 2, made: true}
	}
	for _, moved := range answer.Forced {
		if i := moved.Index - 1; i >= 0 && i < n {
			out[i].off, out[i].by = moved.Off, moved.By
		}
	}
	return out, true
}

// closedIn is what is closed of a stretch; its ends are not.
func closedIn(stretch geom.Span, closed []spacing.Closed) []spacing.Closed {
	var out []spacing.Closed
	for _, c := range closed {
		if c.Span = c.Span.Intersect(stretch); c.Span.Size() > 0 {
			out = append(out, c)
		}
	}
	return out
}

// battensIn is how many battens stand in a stretch: as many as the skin says,
// or so many that their gaps come nearest to what it aims at; of two numbers as
// near the smaller.
func (s *solver) battensIn(b *battens, size length.Length) int {
	if n := s.Field(b.face.block, "battens", "between"); n.Num != nil {
		return int(values.NumberOf(n))
	}
	about := s.FieldLength(b.face.block, "battens", "about")
	k := max(size/about, 1) // gaps of at least about, but for a short stretch
	if k <= mostPieces && max(k*about-size, size-k*about)*(k+1) > ((k+1)*about-size)*k {
		k++
	}
	return int(k - 1)
}

// batten makes one strip, from the skin's lower edge up to the cap, to the
// skin's upper edge, or to what leaves the wall above it.
func (s *solver) batten(b *battens, n string, p batten) {
	f := b.face
	box := over(f.box, f.out, s.Length(b.board, "thickness"))
	x := geom.About(p.x, b.width)
	if p.x > f.box.U.Size()/2 { // the same from the other end
		x = x.Shift(b.width/2 - (b.width - b.width/2))
	}
	box.U = f.along(x)
	box.Z.Hi = f.under(box.U, b.top)
	box = s.toScribe(f.wall.Frame, box, f.out, s.overFloor(f))
	s.panel(f.block, b.board, f.wall.Frame, box, piece{
		id: "batten-" + n, code: "N" + n, name: f.word + " batten " + n, out: f.out, face: f.sight, grain: model.GrainY, good: model.GoodDrawn,
	})
	f.skin.Battens = append(f.skin.Battens, f.u(p.x))
	if p.by != "" {
		off := p.off
		if f.word == "room" {
			off = -off
		}
		f.wall.Uneven = append(f.wall.Uneven, model.Uneven{What: fmt.Sprintf("batten %s of skin %s", n, f.block.Name), By: p.by, Off: off})
	}
}

// under is the height of a strip's upper edge below steel that leaves the wall
// over it.
func (f *face) under(along geom.Span, top length.Length) length.Length {
	for _, o := range f.steel {
		if o.box.U.Overlaps(along) {
			top = min(top, o.box.Z.Lo)
		}
	}
	return top
}
