package setting_test

import (
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/setting"
	"barwright/lang/length"
	"github.com/google/go-cmp/cmp"
)

const inch = length.Inch

var (
	right, left = geom.Dir{Axis: geom.U}, geom.Dir{Axis: geom.U, Neg: true}
	off, back   = geom.Dir{Axis: geom.V}, geom.Dir{Axis: geom.V, Neg: true}
	up, down    = geom.Dir{Axis: geom.Z}, geom.Dir{Axis: geom.Z, Neg: true}
)

// sinkRoom has a drain that stands 3 1/2 in out of the side wall, where the sink's cabinet
// will stand, and a neighbour 24 in wide beside it with 12 in to the next wall. The drain is
// 2 in square, at 10 in from the wall behind and 14 in up.
func sinkRoom(cut geom.Box) setting.Room {
	return setting.Room{
		Fixed: []setting.Solid{
			{Name: "floor", Box: box(-6*inch, -6*inch, -inch, 80*inch, 200*inch, 0)},
			{Name: "wall", Box: box(-6*inch, -6*inch, 0, 80*inch, 0, 96*inch)},
			{Name: "side wall", Box: box(-6*inch, 0, 0, 0, 40*inch, 96*inch)},
			{Name: "end wall", Box: box(72*inch, 0, 0, 78*inch, 40*inch, 96*inch)},
			{Name: "drain", Box: box(0, 10*inch, 14*inch, 7*inch/2, 12*inch, 16*inch)},
		},
		Bodies: []setting.Body{sink("sink", 0, 36*inch, cut), {
			Name: "neighbour", Stands: true,
			Solids: []setting.Solid{{Name: "left side", Box: box(36*inch, 0, 0, 147*inch/4, 24*inch, 69*inch/2)}, {Name: "right side", Box: box(237*inch/4, 0, 0, 60*inch, 24*inch, 69*inch/2)}},
		}},
	}
}

// sink is two sides and a bottom between.
func sink(name string, from, to setting.Length, cut geom.Box) setting.Body {
	const high, board = 69 * inch / 2, 3 * inch / 4
	b := setting.Body{Name: name}
	for _, side := range less(box(from, 0, 0, from+board, 24*inch, high), []geom.Box{cut}) {
		b.Solids = append(b.Solids, setting.Solid{Name: "left side", Box: side})
	}
	return setting.Body{Name: name, Solids: append(b.Solids,
		setting.Solid{Name: "bottom", Box: box(from+board, 0, 4*inch, to-board, 24*inch, 4*inch+board)},
		setting.Solid{Name: "right side", Box: box(to-board, 0, 0, to, 24*inch, high)})}
}

// What is cut out of the sink's side for the drain: an eighth of an inch about it.
var (
	hole   = box(-inch, 79*inch/8, 111*inch/8, inch, 97*inch/8, 129*inch/8)
	rear   = box(-inch, -inch, 111*inch/8, inch, 97*inch/8, 129*inch/8)
	bottom = box(-inch, 79*inch/8, -inch, inch, 97*inch/8, 129*inch/8)
	none   = box(-inch, -inch, -inch, 0, 0, 0)
)

// TestSink is the trouble with a drain from the side, by hand: over it the sink must come from
// the right, and there stands the neighbour.
func TestSink(t *testing.T) {
	r := sinkRoom(hole)
	steps, blocked := r.Order()
	if steps != nil || blocked == nil {
		t.Fatalf("%+v", steps)
	}
	want := &setting.Blocked{Bodies: []string{"sink"}, Hits: []setting.Hit{
		{"sink", "left side", setting.Slide{Dir: off, By: inch / 8}, "drain", "drain", 3 * inch / 4},
		{"sink", "right side", setting.Slide{Dir: right}, "neighbour", "left side", 24 * inch},
		{"sink", "left side", setting.Slide{Dir: left}, "side wall", "side wall", 24 * inch},
		{"sink", "left side", setting.Slide{Dir: up, By: inch / 8}, "drain", "drain", 3 * inch / 4},
		{"sink", "left side", setting.Slide{Dir: back}, "wall", "wall", 3 * inch / 4},
		{"sink", "left side", setting.Slide{Dir: down}, "floor", "floor", 3 * inch / 4},
	}}
	// Overlaps of the left side with walls are those of the first of the boxes round its hole.
	for i := range blocked.Hits {
		if h := &blocked.Hits[i]; h.Other == "side wall" || h.Other == "floor" || h.Other == "wall" {
			h.Overlap = want.Hits[i].Overlap
		}
	}
	if diff := cmp.Diff(want, blocked); diff != "" {
		t.Error(diff)
	}

	over := []setting.Slide{{Dir: back, By: 24 * inch}, {Dir: left, By: 7 * inch / 2}}
	aside, steps, ok := r.Aside("sink", "neighbour")
	if want := (setting.Slide{Dir: right, By: 7 * inch / 2}); !ok || aside != want {
		t.Errorf("aside %+v, %v; want %+v", aside, ok, want)
	}
	wantSteps(t, "neighbour aside", steps, setting.Step{Body: "sink", Slides: over})

	r.Bodies[1].Stands = false
	steps, _ = r.Order()
	wantSteps(t, "sink first", steps, setting.Step{Body: "sink", Slides: over},
		setting.Step{Body: "neighbour", Slides: []setting.Slide{{Dir: back, By: 24 * inch}}, After: []string{"sink"}})

	steps, _ = sinkRoom(rear).Order()
	wantSteps(t, "a slot to the rear", steps, setting.Step{Body: "sink", Slides: []setting.Slide{{Dir: back, By: 24 * inch}}})
	if steps, _ = sinkRoom(bottom).Order(); steps != nil {
		t.Errorf("a slot to the bottom, with the bottom board under the drain: %+v", steps)
	}
	open := sink("sink", 0, 36*inch, bottom)
	open.Solids = slices.DeleteFunc(open.Solids, func(s setting.Solid) bool { return s.Name == "bottom" })
	steps, _ = sinkRoom(hole).With("sink", open).Order()
	wantSteps(t, "a slot to the bottom, without a bottom board", steps, setting.Step{Body: "sink", Slides: []setting.Slide{{Dir: down, By: 69 * inch / 2}}})

	steps, _ = sinkRoom(hole).With("sink", sink("left half", 0, 18*inch, hole), sink("right half", 18*inch, 36*inch, none)).Order()
	wantSteps(t, "in two", steps, setting.Step{Body: "left half", Slides: over},
		setting.Step{Body: "right half", Slides: []setting.Slide{{Dir: back, By: 24 * inch}}, After: []string{"left half"}})
}

func wantSteps(t *testing.T, name string, got []setting.Step, want ...setting.Step) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("%s: %s", name, diff)
	}
}

// TestAside: with the end wall 3 in from it the neighbour makes way off the wall; with a post
// before it not at all.
func TestAside(t *testing.T) {
	r := sinkRoom(hole)
	r.Fixed[3].Box = box(63*inch, 0, 0, 78*inch, 40*inch, 96*inch)
	want := setting.Slide{Dir: off, By: 24 * inch}
	if aside, _, ok := r.Aside("sink", "neighbour"); !ok || aside != want {
		t.Errorf("%+v, %v; want %+v", aside, ok, want)
	}
	r.Fixed = append(r.Fixed, setting.Solid{Name: "post", Box: box(36*inch, 25*inch, 0, 40*inch, 29*inch, 96*inch)})
	if aside, _, ok := r.Aside("sink", "neighbour"); ok {
		t.Errorf("past the post: %+v", aside)
	}
	if _, _, ok := r.Aside("sink", "nobody"); ok {
		t.Error("nobody made way")
	}
}

func plain(name string, b geom.Box) setting.Body {
	return setting.Body{Name: name, Solids: []setting.Solid{{Name: "all", Box: b}}}
}

// TestOrder is by hand: which order, of which bodies.
func TestOrder(t *testing.T) {
	wall := setting.Solid{Name: "wall", Box: box(-inch, -inch, 0, 100*inch, 0, 96*inch)}
	floor := setting.Solid{Name: "floor", Box: box(-inch, -inch, -inch, 100*inch, 100*inch, 0)}
	row := []setting.Body{plain("a", box(0, 0, 0, inch, inch, inch)), plain("b", box(inch, 0, 0, 2*inch, inch, inch)), plain("c", box(2*inch, 0, 0, 3*inch, inch, inch))}
	top := plain("top", box(0, 0, inch, 3*inch, inch, 2*inch))
	top.On = []string{"a", "b", "c", "nothing"}
	inside := plain("inside", box(inch, inch, inch, 2*inch, 2*inch, 2*inch))
	shell := setting.Body{Name: "shell"}
	for _, b := range less(box(0, 0, 0, 3*inch, 3*inch, 3*inch), []geom.Box{inside.Solids[0].Box}) {
		shell.Solids = append(shell.Solids, setting.Solid{Name: "side", Box: b})
	}
	a, b := plain("a", box(0, 0, 0, inch, inch, inch)), plain("b", box(0, 0, 0, inch, inch, 2*inch))
	a.On, b.On = []string{"b"}, []string{"a"}
	b.Solids[0].Box = box(inch, 0, 0, 2*inch, inch, inch)
	pair, ring := slices.Clone(row[:2]), slices.Clone(row)
	for i, name := range []string{"p", "q"} {
		pair[i].Name, pair[i].On = name, []string{[]string{"q", "p"}[i]}
	}
	for i := range ring {
		ring[i].On = []string{ring[(i+1)%3].Name}
	}
	for _, test := range []struct {
		name    string
		room    setting.Room
		want    []string
		blocked []string
	}{
		{name: "nothing"},
		{name: "as described", room: setting.Room{Bodies: row, Fixed: []setting.Solid{wall, floor}}, want: []string{"a", "b", "c"}},
		{name: "the top last, though it comes first", room: setting.Room{Bodies: append([]setting.Body{top}, row...), Fixed: []setting.Solid{wall, floor}}, want: []string{"a", "b", "c", "top"}},
		{name: "one shut in", room: setting.Room{Bodies: []setting.Body{shell, inside}}, blocked: []string{"shell", "inside"}},
		{name: "among others", room: setting.Room{Bodies: append([]setting.Body{shell, inside}, plain("clear", box(9*inch, 0, 0, 10*inch, inch, inch)))}, blocked: []string{"shell", "inside"}},
		{name: "in one another", room: setting.Room{Bodies: []setting.Body{row[0], plain("d", box(inch/2, 0, 0, 2*inch, inch, inch))}}, blocked: []string{"a", "d"}},
		{name: "a pair before three", room: setting.Room{Bodies: slices.Concat(pair, ring)}, blocked: []string{"p", "q"}},
		{name: "three where no pair does", room: setting.Room{Bodies: ring}, blocked: []string{"a", "b", "c"}},
		{name: "on one another in a circle", room: setting.Room{Bodies: []setting.Body{a, b}}, blocked: []string{"a", "b"}},
	} {
		steps, blocked := test.room.Order()
		var got []string
		for _, s := range steps {
			got = append(got, s.Body)
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: order %v, want %v", test.name, got, test.want)
		}
		if blocked == nil {
			blocked = &setting.Blocked{}
		}
		if !slices.Equal(blocked.Bodies, test.blocked) || blocked.GaveUp {
			t.Errorf("%s: blocked %+v, want %v", test.name, blocked, test.blocked)
		}
	}
}

// TestStrict: in a dead end the inner body comes first whatever is described. Where a is free to leave by one slide
// and b, described after it, by two, b leaves first all the same.
func TestStrict(t *testing.T) {
	r := setting.Room{
		Bodies: []setting.Body{plain("a", box(0, 0, 0, inch, inch, inch)), plain("b", box(2*inch, 0, 0, 3*inch, inch, inch))},
		Fixed: []setting.Solid{
			{Name: "floor", Box: box(-9*inch, -9*inch, -inch, 9*inch, 9*inch, 0)}, {Name: "ceiling", Box: box(-9*inch, -9*inch, inch, 9*inch, 9*inch, 2*inch)},
			{Name: "wall", Box: box(-9*inch, -inch, 0, 9*inch, 0, inch)}, {Name: "end", Box: box(3*inch, 0, 0, 4*inch, 9*inch, inch)},
			{Name: "opposite", Box: box(inch+inch/2, 3*inch, 0, 9*inch, 4*inch, inch)},
		},
	}
	for strict, want := range map[bool]string{false: "b a", true: "a b"} { // lookup only
		r.Strict = strict
		steps, _ := r.Order()
		if got := steps[0].Body + " " + steps[1].Body; got != want {
			t.Errorf("strict %v: %s, want %s", strict, got, want)
		}
	}
}

// TestLift: a body behind a low wall, in a corner of three, comes over it or not at all.
func TestLift(t *testing.T) {
	r := setting.Room{Bodies: []setting.Body{plain("a", box(0, 0, 0, inch, inch, inch))}, Fixed: []setting.Solid{
		{Name: "floor", Box: box(-inch, -inch, -inch, 5*inch, 5*inch, 0)},
		{Name: "wall", Box: box(-inch, -inch, 0, 2*inch, 0, 9*inch)},
		{Name: "left wall", Box: box(-inch, 0, 0, 0, 2*inch, 9*inch)},
		{Name: "right wall", Box: box(inch, 0, 0, 2*inch, 2*inch, 9*inch)},
		{Name: "low wall", Box: box(0, inch, 0, inch, 2*inch, 3*inch)},
	}}
	r.Lift = 3*inch - inch/64
	if steps, _ := r.Order(); steps != nil {
		t.Errorf("%+v", steps)
	}
	r.Lift = 3 * inch
	steps, _ := r.Order()
	wantSteps(t, "lifted", steps, setting.Step{Body: "a", Slides: []setting.Slide{{Dir: back, By: inch}, {Dir: down, By: 3 * inch}}})
}

func TestPasses(t *testing.T) {
	door := setting.Door{Span: geom.Span{Hi: 30 * inch}, Height: 80 * inch}
	for _, test := range []struct {
		size [3]setting.Length
		want []geom.Axis
	}{
		{[3]setting.Length{36 * inch, 24 * inch, 34 * inch}, []geom.Axis{geom.U, geom.Z}},
		{[3]setting.Length{30 * inch, 30 * inch, 80 * inch}, []geom.Axis{geom.U, geom.V, geom.Z}},
		{[3]setting.Length{31 * inch, 31 * inch, 31 * inch}, nil},
		{[3]setting.Length{24 * inch, 24 * inch, 96 * inch}, []geom.Axis{geom.Z}},
	} {
		f := geom.Frame{Turn: 904 * geom.Degree / 10}
		b := setting.Body{Solids: []setting.Solid{{Frame: f, Box: box(0, 0, 0, test.size[0], test.size[1], test.size[2])}}}
		if got := door.Passes(b); !slices.Equal(got, test.want) {
			t.Errorf("%v: %v, want %v", test.size, got, test.want)
		}
	}
}

func TestLess(t *testing.T) {
	panel := box(0, 0, 0, inch, 24*inch, 30*inch)
	for _, test := range []struct {
		name    string
		opening geom.Box
		boxes   int
		volume  setting.Length // in cubic inches
	}{
		{"a hole", box(-inch, 10*inch, 10*inch, 2*inch, 12*inch, 12*inch), 4, 720 - 4},
		{"a slot", box(-inch, -inch, 10*inch, 2*inch, 12*inch, 12*inch), 3, 720 - 24},
		{"a corner", box(-inch, -inch, -inch, 2*inch, 12*inch, 12*inch), 2, 720 - 144},
		{"beside", box(inch, 0, 0, 2*inch, 24*inch, 30*inch), 1, 720},
		{"all of it", panel, 0, 0},
	} {
		boxes := setting.Less(panel, test.opening)
		var volume setting.Length
		for i, b := range boxes {
			volume += (b.U.Size() / inch) * (b.V.Size() / inch) * (b.Z.Size() / inch)
			if b.Overlaps(test.opening) || slices.ContainsFunc(boxes[:i], b.Overlaps) {
				t.Errorf("%s: %v lies in something", test.name, b)
			}
		}
		if len(boxes) != test.boxes || volume != test.volume {
			t.Errorf("%s: %d boxes of %d, want %d of %d", test.name, len(boxes), volume, test.boxes, test.volume)
		}
	}
}
