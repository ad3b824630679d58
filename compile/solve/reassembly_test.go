package solve_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

type span = geom.Span

// TestReassembly puts the parts of random boxes of every construction together
// again by their placements, and compares them with what the description says
// of the box.
func TestReassembly(t *testing.T) {
	for _, how := range constructions() {
		t.Run(how.fixed+" "+how.top+" "+how.stands, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) { reassemble(t, drawRunOf(t, false, how)) })
		})
	}
}

func reassemble(t *rapid.T, d drawn) {
	m, _ := solved(t, d.file())
	run := &m.Runs[0]
	checkRun(t, &d, run)
	for i := range run.Boxes {
		box := &run.Boxes[i]
		parts := owned(m, box.Kind.String()+"."+box.Name)
		switch box.Kind {
		case model.Cabinet:
			checkTogether(t, &d, &d.boxes[i], box.Hull, parts)
			checkPlaces(t, &d, m, box)
			checkRecesses(t, &d, m, box)
			checkInterior(t, &d, &d.boxes[i], m, box)
			checkLegs(t, &d, m, box, parts)
			top, _ := d.clearHeights()
			if want := (geom.Box{U: box.Hull.U.Grow(-d.board), V: span{Lo: d.backFace(), Hi: d.depth}, Z: span{Lo: d.toeHeight + d.board, Hi: top}}); box.Inside != want {
				t.Fatalf("clear inside of %s: %v, want %v", box.Name, box.Inside, want)
			}
		case model.Bay:
			checkBay(t, &d, d.boxes[i], box, parts)
		}
		for _, p := range parts {
			checkBlank(t, p)
		}
	}
}

// backFace is how far the back's front face is from the rear edges.
func (d *drawn) backFace() length.Length {
	if d.captured {
		return d.inset + d.back
	}
	return d.back
}

// checkRun checks that the boxes fill the run without gaps, as wide as written,
// and that those which take the rest are alike to the nanometre.
func checkRun(t *rapid.T, d *drawn, run *model.Run) {
	at := length.Length(0)
	var rests []length.Length
	for i, box := range run.Boxes {
		if box.Hull.U.Lo != at {
			t.Fatalf("box %d begins at %d, the one before ends at %d", i, box.Hull.U.Lo, at)
		}
		at = box.Hull.U.Hi
		if w := d.boxes[i].width + 2*d.boxes[i].gap; w == 0 {
			rests = append(rests, box.Hull.U.Size())
		} else if box.Hull.U.Size() != w {
			t.Fatalf("box %d is %d wide, not %d", i, box.Hull.U.Size(), w)
		}
		if box.Hull.V != (span{Hi: d.depth}) || box.Hull.Z != (span{Hi: d.height}) {
			t.Fatalf("box %d has the hull %v", i, box.Hull)
		}
	}
	if at != run.Length || d.long > 0 && at != d.long {
		t.Fatalf("the boxes end at %d, the run is %d long; written is %d", at, run.Length, d.long)
	}
	for i, w := range rests {
		if w != rests[0] && w != rests[0]-1 || i > 0 && w > rests[i-1] {
			t.Fatalf("the rest is shared as %v", rests)
		}
	}
	if len(rests) > 0 && d.long == 0 && run.Length != d.wall-d.start {
		t.Fatalf("the run is %d long, its wall has %d for it", run.Length, d.wall-d.start)
	}
}

// checkBlank checks that what is cut is as large as the place that it fills.
func checkBlank(t *rapid.T, p *model.Part) {
	box, out := p.Placement.Box, p.Placement.Out.Axis
	x, y := p.Size()
	if x != box.Along(p.Placement.X.Axis).Size() || y != box.Along(p.Placement.Y.Axis).Size() || p.Thickness != box.Along(out).Size() {
		t.Fatalf("%s is cut %d x %d x %d for the place %v", p.ID, x, y, p.Thickness, box)
	}
	if b := p.Outline.Bounds(); b.X.Lo != 0 || b.Y.Lo != 0 || p.Outline.Area() <= 0 {
		t.Fatalf("%s has the outline %v", p.ID, p.Outline)
	}
}

// checkBay checks the appliance's place and that the blocks under it are
// stacked up from the floor, below it.
func checkBay(t *rapid.T, d *drawn, b drawnBox, box *model.Box, parts []*model.Part) {
	a := box.Appliance
	if a.U != box.Hull.U.Grow(-b.gap) || a.U.Size() != b.width || a.Z.Hi != d.height || a.Z.Size() != 400*length.Millimetre {
		t.Fatalf("the appliance stands at %v in the bay %v", a, box.Hull)
	}
	stacked := length.Length(0)
	for _, p := range parts {
		place := p.Placement.Box
		if !a.U.Contains(place.U) || !a.V.Contains(place.V) || place.Z.Hi > a.Z.Lo {
			t.Fatalf("%s at %v is not under the appliance at %v", p.ID, place, a)
		}
		stacked = max(stacked, place.Z.Hi)
		for _, o := range parts {
			if p != o && place.Overlaps(o.Placement.Box) {
				t.Fatalf("%s and %s run into one another", p.ID, o.ID)
			}
		}
	}
	if left := a.Z.Lo - stacked; left < 0 || left >= 19*length.Millimetre || box.BlockHeight != a.Z.Lo {
		t.Fatalf("blocks up to %d under an appliance at %d", stacked, a.Z.Lo)
	}
}

// TestSolvedValuesAreTheParts prints every solved value through givens, and
// compares each with the parts and places of the model.
func TestSolvedValuesAreTheParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawRun(t, true)
		file := d.file()
		names := []string{"run.r.length", "run.r.height", "run.r.depth", "knee_wall.k.top", "knee_wall.k.height", "knee_wall.k.left", "knee_wall.k.right",
			"knee_wall.k.thickness", "counter.c.top", "counter.c.thickness", "bar_top.t.height", "bar_top.t.thickness"}
		for _, b := range d.boxes {
			names = append(names, b.kind+"."+b.name+".width", b.kind+"."+b.name+".left", b.kind+"."+b.name+".right")
		}
		text := "given {\n"
		for _, name := range names {
			text += "  " + strings.ReplaceAll(name, ".", "_") + " = " + name + "\n"
		}
		file.Text = append(file.Text, text+"}\n"...)
		m := framed(t, file).Model
		want := map[string]string{}
		say := func(name string, l length.Length) { want[strings.ReplaceAll(name, ".", "_")] = m.Build.Show(l) }
		run, framing := bounds(t, m, "cabinet", "bay", "filler"), bounds(t, m, "knee_wall")
		say("run.r.length", run.U.Hi)
		say("run.r.height", run.Z.Hi)
		say("run.r.depth", run.V.Hi)
		say("knee_wall.k.top", framing.Z.Hi)
		say("knee_wall.k.height", framing.Z.Hi)
		say("knee_wall.k.left", framing.U.Lo)
		say("knee_wall.k.right", framing.U.Hi)
		say("knee_wall.k.thickness", framing.V.Size())
		counter, bar := m.Slabs[0].Box, m.Slabs[1].Box
		say("counter.c.top", counter.Z.Hi)
		say("counter.c.thickness", counter.Z.Size())
		say("bar_top.t.height", bar.Z.Hi)
		say("bar_top.t.thickness", bar.Z.Size())
		for _, b := range m.Runs[0].Boxes {
			say(b.Kind.String()+"."+b.Name+".width", b.Hull.U.Size())
			say(b.Kind.String()+"."+b.Name+".left", b.Hull.U.Lo)
			say(b.Kind.String()+"."+b.Name+".right", b.Hull.U.Hi)
		}
		got := map[string]string{}
		for _, g := range m.Givens {
			got[g.Name] = g.Value
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Fatalf("printed values (-parts +printed):\n%s", diff)
		}
	})
}

// bounds is the box round the hulls of a run's boxes, or round the wood of a
// knee wall.
func bounds(t *rapid.T, m *model.Model, kinds ...string) geom.Box {
	var b geom.Box
	first := true
	add := func(o geom.Box) {
		if first {
			b, first = o, false
		}
		b = b.Union(o)
	}
	if kinds[0] == "knee_wall" {
		for _, p := range owned(m, "knee_wall.k") {
			if p.Kind == model.Lumber {
				add(p.Placement.Box)
			}
		}
		return b
	}
	for _, box := range m.Runs[0].Boxes {
		add(box.Hull)
	}
	return b
}
