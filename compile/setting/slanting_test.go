package setting_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
)

// slantingRoom has walls and stubs in two frames, one turned by any angle, and up to six bodies,
// each in either, of boxes less all drawn before with some play about it. So there are slots and
// gaps that slant to what goes through them.
func slantingRoom(rng *rand.Rand) (r setting.Room, tall int) {
	const play, huge = 2 * pace, 100 * level
	tall = 2 + rng.IntN(2)
	size := 3 + rng.IntN(2)
	wide := setting.Length(size) * level
	frames := []geom.Frame{{}, {Origin: geom.Point{X: wide / 2, Y: wide / 3}, Turn: geom.Angle(5+rng.IntN(80)) * geom.Degree}}
	high := geom.Span{Hi: setting.Length(tall) * level}
	var taken []setting.Solid
	fix := func(name string, f geom.Frame, b geom.Box) {
		s := setting.Solid{Name: name, Frame: f, Box: b}
		r.Fixed = append(r.Fixed, s)
		taken = append(taken, s)
	}
	slab := func(from, to int) geom.Box {
		return geom.Box{U: geom.Span{Lo: -huge, Hi: huge}, V: geom.Span{Lo: -huge, Hi: huge}, Z: geom.Span{Lo: setting.Length(from) * level, Hi: setting.Length(to) * level}}
	}
	r.Fixed = append(r.Fixed, setting.Solid{Name: "floor", Box: slab(-9, 0)})
	alley := rng.IntN(3) == 0
	if alley || rng.IntN(4) > 0 {
		r.Fixed = append(r.Fixed, setting.Solid{Name: "ceiling", Box: slab(tall, tall+9)})
	}
	if rng.IntN(2) > 0 {
		r.Lift = setting.Length(1+rng.IntN(tall)) * level
	}
	near := -level
	if alley {
		near = -9 * level
	}
	wall := func(name string, u0, v0, u1, v1 setting.Length) {
		if alley || rng.IntN(5) > 0 {
			fix(name, frames[0], geom.Box{U: geom.Span{Lo: u0, Hi: u1}, V: geom.Span{Lo: v0, Hi: v1}, Z: high})
		}
	}
	wall("left wall", -level, near, -play, wide+level)
	wall("right wall", wide+play, near, wide+level, wide+level)
	wall("far wall", -level, wide+play, wide+level, wide+level)
	switch {
	case alley:
		f := geom.Frame{Origin: geom.Point{X: wide / 2}, Turn: geom.Angle(rng.IntN(50)-25) * geom.Degree}
		half := setting.Length(5+rng.IntN(12)) * level / 8
		for _, u := range []geom.Span{{Lo: -5 * level, Hi: -half}, {Lo: half, Hi: 5 * level}} {
			fix("alley", f, geom.Box{U: u, V: geom.Span{Lo: -5 * level, Hi: -3 * level / 2}, Z: high})
		}
	case rng.IntN(2) > 0:
		from := setting.Length(rng.IntN(size)) * level
		r.Door = &setting.Door{Span: geom.Span{Lo: from, Hi: wide}, Landing: setting.Length(1+rng.IntN(2)) * level}
		yard := geom.Span{Lo: -6 * level, Hi: 10 * level} // all that the oracle looks at
		for _, u := range []geom.Span{{Lo: -huge, Hi: yard.Lo}, {Lo: yard.Hi, Hi: huge}} {
			r.Fixed = append(r.Fixed, setting.Solid{Name: "yard", Box: geom.Box{U: u, V: geom.Span{Lo: -huge, Hi: huge}, Z: geom.Span{Hi: huge}}},
				setting.Solid{Name: "yard", Box: geom.Box{U: geom.Span{Lo: -huge, Hi: huge}, V: u, Z: geom.Span{Hi: huge}}})
		}
		fallthrough
	default:
		fix("near wall", frames[0], geom.Box{U: geom.Span{Lo: -level, Hi: wide + level}, V: geom.Span{Lo: -level, Hi: -play}, Z: high})
	}
	drawn := func(thin bool) (setting.Solid, bool) {
		f := frames[rng.IntN(2)]
		var lo, hi cube
		for k := range lo {
			most := []int{size, size, tall}[k]
			lo[k] = rng.IntN(most)
			hi[k] = lo[k] + 1 + rng.IntN(min(2, most-lo[k]))
		}
		b := geom.Box{U: levels(lo[0], hi[0]), V: levels(lo[1], hi[1]), Z: levels(lo[2], hi[2])}
		if f.Turn != 0 {
			b.U, b.V = b.U.Shift(-wide/2), b.V.Shift(-wide/2)
		}
		if thin {
			b.V.Hi = b.V.Lo + 2*pace
		}
		s := setting.Solid{Frame: f, Box: b}
		in := inFrame(geom.Frame{}, s)
		return s, in.U.Lo >= 0 && in.V.Lo >= 0 && in.U.Hi <= wide && in.V.Hi <= wide
	}
	for i := range 1 + rng.IntN(4) {
		if s, in := drawn(true); in {
			fix(fmt.Sprint("stub ", i+1), s.Frame, s.Box)
		}
	}
	for i := range 2 + rng.IntN(5) {
		b := setting.Body{Name: fmt.Sprint("body ", i+1)}
		others := slices.Clone(taken)
		for range 2 + rng.IntN(3) {
			s, in := drawn(false)
			if !in {
				continue
			}
			var cuts []geom.Box
			for _, o := range others {
				cut := inFrame(s.Frame, o)
				cut.U, cut.V = cut.U.Grow(play), cut.V.Grow(play)
				cuts = append(cuts, cut)
			}
			for _, box := range less(s.Box, cuts) {
				if min(box.U.Size(), box.V.Size()) >= pace {
					b.Solids = append(b.Solids, setting.Solid{Name: fmt.Sprint("part ", len(b.Solids)+1), Frame: s.Frame, Box: box})
				}
			}
		}
		if len(b.Solids) > 0 {
			r.Bodies = append(r.Bodies, b)
			taken = append(taken, b.Solids...)
		}
	}
	return r, tall
}

func levels(lo, hi int) geom.Span {
	return geom.Span{Lo: setting.Length(lo) * level, Hi: setting.Length(hi) * level}
}

// inFrame is the least box of a frame about a solid.
func inFrame(f geom.Frame, s setting.Solid) geom.Box {
	out := s.Box
	for i, c := range s.Frame.Corners(s.Box.U, s.Box.V) {
		u, v := f.Local(c)
		at := geom.Box{U: geom.Span{Lo: u, Hi: u}, V: geom.Span{Lo: v, Hi: v}, Z: s.Box.Z}
		if i == 0 {
			out = at
		}
		out = out.Union(at)
	}
	return out
}

// TestSlanting draws rooms with what stands askew in them and compares with the oracle, both ways,
// wherever that decides. Orders are audited.
func TestSlanting(t *testing.T) {
	const rooms = 400
	rng := rand.New(rand.NewPCG(8, 3))
	var orders, blocks, undecided, slanting, turns, doors int
	for i := range rooms {
		r, tall := slantingRoom(rng)
		full := uint8(1<<len(r.Bodies) - 1)
		steps, blocked := r.Order()
		if err := audit(r, steps); err != nil {
			t.Fatalf("room %d: %v\n%+v\n%+v", i, err, steps, r)
		}
		can := newMesh(r, tall, 0.5).apart(full)
		might := can || newMesh(r, tall, -math.Sqrt2/2).apart(full)
		if can && blocked != nil || !might && blocked == nil {
			t.Fatalf("room %d: comes apart: %v, might: %v, blocked: %+v\n%+v\n%+v", i, can, might, blocked, steps, r)
		}
		if can != might {
			undecided++
			continue
		}
		if blocked != nil {
			blocks++
			continue
		}
		orders++
		if r.Door != nil {
			doors++
		}
		if slices.ContainsFunc(steps, func(s setting.Step) bool { return len(s.Slides) > 1 }) {
			turns++
		}
		if slices.ContainsFunc(steps, func(s setting.Step) bool { return aslant(r, s) }) {
			slanting++
		}
	}
	t.Logf("%d orders, %d of them with more than one slide, %d with one that is slanting, %d by a door; %d blocked; %d undecided", orders, turns, slanting, doors, blocks, undecided)
	if 3*(turns+blocks) < rooms || min(slanting, doors) < rooms/40 || undecided > rooms/10 {
		t.Errorf("too few of a kind")
	}
}

// TestAlley: a cube of 40 in stands in an alley that is closed at one end and runs at 30 degrees to it. Across
// the alley it is 40 (cos 30 + sin 30) = 54.64 in wide. Where the alley is wider it leaves along that, however
// little it can go along its own axes; otherwise not at all.
func TestAlley(t *testing.T) {
	alley := geom.Frame{Turn: 30 * geom.Degree}
	for _, test := range []struct {
		wide setting.Length
		open bool
	}{{56 * inch, true}, {55 * inch, true}, {54 * inch, false}} {
		r := setting.Room{
			Fixed: []setting.Solid{
				{Name: "floor", Box: box(-900*inch, -900*inch, -inch, 900*inch, 900*inch, 0)},
				{Name: "ceiling", Box: box(-900*inch, -900*inch, 40*inch, 900*inch, 900*inch, 41*inch)},
				{Name: "left", Frame: alley, Box: box(-60*inch, test.wide/2, 0, 400*inch, test.wide/2+inch, 40*inch)},
				{Name: "right", Frame: alley, Box: box(-60*inch, -test.wide/2-inch, 0, 400*inch, -test.wide/2, 40*inch)},
				{Name: "end", Frame: alley, Box: box(-60*inch, -test.wide/2, 0, -59*inch, test.wide/2, 40*inch)},
			},
			Bodies: []setting.Body{plain("cube", box(-20*inch, -20*inch, 0, 20*inch, 20*inch, 40*inch))},
		}
		steps, blocked := r.Order()
		if (blocked == nil) != test.open {
			t.Errorf("%v wide: %+v, blocked %+v", test.wide, steps, blocked)
		}
		if err := audit(r, steps); err != nil {
			t.Error(err)
		}
		for _, s := range steps {
			if last := s.Slides[0]; last.Turn != alley.Turn || last.Dir != left {
				t.Errorf("in by %+v", last)
			}
		}
	}
}

// aslant reports whether a step has a slide that is along no axis of what slides.
func aslant(r setting.Room, s setting.Step) bool {
	b := r.Bodies[slices.IndexFunc(r.Bodies, func(b setting.Body) bool { return b.Name == s.Body })]
	return slices.ContainsFunc(s.Slides, func(slide setting.Slide) bool {
		return slide.Dir.Axis != geom.Z && !slices.ContainsFunc(b.Solids, func(solid setting.Solid) bool {
			return (slide.Turn-solid.Frame.Turn)%(90*geom.Degree) == 0
		})
	})
}

// TestBay: the cube stands in a bay above the side of an alley 56 in wide, which it fits by 1.36 in: it comes down into
// the alley, and along it only from there. So it is where the alley is of one piece.
func TestBay(t *testing.T) {
	for _, whole := range []bool{false, true} {
		steps, blocked := bay(56*inch, whole).Order()
		if blocked != nil {
			t.Fatalf("%+v", blocked)
		}
		if err := audit(bay(56*inch, whole), steps); err != nil {
			t.Error(err)
		}
		if s := steps[0].Slides; len(s) != 2 || s[0].Turn != 30*geom.Degree || s[0].Dir != left || s[1].Dir != off {
			t.Errorf("%+v", s)
		}
		if steps, _ := bay(54*inch, whole).Order(); steps != nil {
			t.Errorf("in an alley 54 in wide: %+v", steps)
		}
	}
}

// bay is the room of TestBay; the walls of the alley are a body that stands where it is of one piece.
func bay(wide setting.Length, whole bool) setting.Room {
	alley := geom.Frame{Turn: 30 * geom.Degree}
	wall := func(f geom.Frame, u0, v0, u1, v1 setting.Length) setting.Solid {
		return setting.Solid{Name: "wall", Frame: f, Box: box(u0, v0, 0, u1, v1, 40*inch)}
	}
	r := setting.Room{
		Fixed: []setting.Solid{
			{Name: "floor", Box: box(-900*inch, -900*inch, -inch, 900*inch, 900*inch, 0)},
			{Name: "ceiling", Box: box(-900*inch, -900*inch, 40*inch, 900*inch, 900*inch, 41*inch)},
			wall(geom.Frame{}, -22*inch, 21*inch, -21*inch, 201*inch), wall(geom.Frame{}, 21*inch, 45*inch, 22*inch, 201*inch),
			wall(geom.Frame{}, -22*inch, 200*inch, 22*inch, 201*inch),
		},
		Bodies: []setting.Body{plain("cube", box(-20*inch, 100*inch, 0, 20*inch, 140*inch, 40*inch))},
	}
	const near = 28 * inch
	sides := []setting.Solid{
		wall(alley, -60*inch, near-wide-inch, 400*inch, near-wide), wall(alley, -61*inch, near-wide-inch, -60*inch, near+inch),
		wall(alley, -60*inch, near, -9*inch, near+inch), wall(alley, 41*inch, near, 400*inch, near+inch),
	}
	if whole {
		r.Bodies = append(r.Bodies, setting.Body{Name: "alley", Solids: sides, Stands: true})
	} else {
		r.Fixed = append(r.Fixed, sides...)
	}
	return r
}
