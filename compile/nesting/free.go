package nesting

import (
	"cmp"
	"math"
	"slices"

	"barwright/compile/geom"
)

// solveFree lays pieces out for a router, which cuts anywhere. What a saw can cut it can too:
// the search starts from that.
func (j *Job) solveFree(s *search, pieces []int, l *Layout) {
	s.stages = 0
	notched := j.notched(s, pieces)
	enough := false
	l.AtLeast, l.Fewest, enough = s.inner(notched).bound()
	saw := sawing(s)
	sawn := saw.construct(j.Work / 16)
	s.narrow()
	if enough {
		saw.cheapen(sawn, saw.patterns(sawn, l.AtLeast, j.Work/4), j.Work/8)
	}
	f := &solver[*bed]{search: s, fresh: func() *bed { return &bed{} }, step: 60}
	x := loosened(f, sawn)
	if enough {
		f.cheapen(x, l.AtLeast, j.Work/4*(3-index(notched != nil)))
		if notched != nil && (x.price > l.AtLeast || len(x.out) > 0) {
			x = interlock(f, x, notched, l.AtLeast, j.Work-j.Work/4)
		}
		f.clean(x, s.work+j.Work/4)
	}
	f.tell(x, l, j.Kerf, pieces)
}

// narrow finds out what no piece is narrower than, nor lower.
func (s *search) narrow() {
	s.least = Size{math.MaxInt64, math.MaxInt64}
	for i := range s.shapes {
		p := &s.shapes[i]
		w, h := p.w, p.h
		if p.turns {
			w, h = min(w, h), min(w, h)
		}
		s.least = Size{min(s.least.X, w), min(s.least.Y, h)}
		if p.solids == nil {
			continue
		}
		for _, r := range slices.Concat(p.solids[0], p.solids[1]) {
			s.least = Size{min(s.least.X, r.X.Size()), min(s.least.Y, r.Y.Size())}
		}
	}
}

// loosened is a sawn layout as a free one.
func loosened(f *solver[*bed], sawn *solution[*tree]) *solution[*bed] {
	same := make([]int, len(f.shapes))
	for i := range same {
		same[i] = i
	}
	x := &solution[*bed]{out: sawn.out, bought: make([]int, len(f.kinds))}
	for i := range sawn.sheets {
		t, b := sawn.sheets[i].on, f.take()
		b.reset(f.search, t.kind)
		for _, p := range t.tell(f.search, 0, same).Placed {
			b.lay(f.search, f.lyingAt(int32(p.Piece), p.Turned, p.At))
		}
		b.survey(f.kinds[b.kind], f.least)
		f.add(x, b)
	}
	return x
}

// tell tells what lies on a bed, from the lower left corner on.
func (b *bed) tell(s *search, kerf Length, pieces []int) Used {
	u := Used{Sheet: b.kind}
	for i := range b.lies {
		l := &b.lies[i]
		u.Placed = append(u.Placed, Placed{Piece: pieces[l.piece], At: l.corner(), Turned: l.turned})
	}
	slices.SortFunc(u.Placed, func(p, q Placed) int {
		return cmp.Or(cmp.Compare(p.At.Y, q.At.Y), cmp.Compare(p.At.X, q.At.X))
	})
	b.survey(s.kinds[b.kind], Size{kerf + 1, kerf + 1})
	if r := b.largest(); r != (geom.Rect{}) {
		r.X.Hi, r.Y.Hi = r.X.Hi-kerf, r.Y.Hi-kerf
		u.Offcut = r
	}
	return u
}
