package solve_test

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

// framed solves a random build with a knee wall. Where no studs will do for the
// splices of its plates, the build is refused, and another is drawn.
func framed(t *rapid.T, file source.File) solve.Solution {
	src, findings := lang.Read(source.Files{file})
	solution := solve.Solve(src)
	for _, f := range append(findings, solution.Findings...) {
		if f.Slug == "no-place-for-splice" {
			t.Skip(f.Text)
		}
	}
	if solution.Model == nil {
		solved(t, file) // tells why
	}
	return solution
}

// TestKneeWallReassembly puts plates, studs and steel together again: they fill
// the framing, touch where they should and overlap nowhere.
func TestKneeWallReassembly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawRun(t, true)
		solution := framed(t, d.file())
		m := solution.Model
		wall, run := &m.KneeWalls[0], &m.Runs[0]
		want := geom.Box{U: span{Lo: d.kneeIn, Hi: run.Length}, V: span{Lo: -d.lumberWide}, Z: span{Hi: 1060 * length.Millimetre}}
		if wall.Framing != want {
			t.Fatalf("framing %v, want %v", wall.Framing, want)
		}
		var wood, steel []*model.Part
		for _, p := range owned(m, "knee_wall.k") {
			checkBlank(t, p)
			if p.Kind == model.Steel {
				steel = append(steel, p)
			} else {
				wood = append(wood, p)
			}
		}
		if got := bounding(wood); got != wall.Framing {
			t.Fatalf("the wood reaches %v, the framing is %v", got, wall.Framing)
		}
		for i, a := range wood {
			for _, b := range wood[:i] {
				if a.Placement.Box.Overlaps(b.Placement.Box) {
					t.Fatalf("%s and %s run into one another", a.ID, b.ID)
				}
			}
		}
		checkStuds(t, &d, m, wall)
		checkPlates(t, &d, wall, wood)
		checkSteel(t, &d, m, wall, steel)
		checkPockets(t, m, wall, solution.Recesses)
		checkLines(t, m, wall)
	})
}

// half is half of the width of a recess, as far as studs keep off its middle.
func (d *drawn) half(m *model.Model) length.Length {
	fit := length.Millimetre / 5
	if m.Build.Unit.Imperial() {
		fit = length.Inch * 8 / 1000
	}
	return (d.steelWide + 2*fit) / 2
}

// checkStuds checks that studs stand on centres from the end that is said, or
// are told of, and that they keep clear of supports.
func checkStuds(t *rapid.T, d *drawn, m *model.Model, wall *model.KneeWall) {
	f, studs := wall.Framing, wall.Studs
	z := span{Lo: length.Length(d.lower) * d.lumberThick, Hi: f.Z.Hi - length.Length(d.upper)*d.lumberThick}
	told := map[string]model.Uneven{}
	for _, u := range wall.Uneven {
		told[u.What] = u
	}
	for i, c := range studs {
		name := "stud " + strconv.Itoa(i+1)
		box := partNamed(t, m, "knee_wall.k/stud-"+strconv.Itoa(i+1)).Placement.Box
		if box.U.Mid() != c || box.U.Size() != d.lumberThick || box.V != f.V || box.Z != z {
			t.Fatalf("%s is at %v, not about %d between %v", name, box, c, z)
		}
		if i > 0 && (c-studs[i-1] > d.spacing || c-studs[i-1] < d.lumberThick) {
			t.Fatalf("%s stands %d after the one before, with a spacing of %d", name, c-studs[i-1], d.spacing)
		}
		if i == 0 || i == len(studs)-1 {
			if box.U.Lo != f.U.Lo && box.U.Hi != f.U.Hi {
				t.Fatalf("%s at %v is not flush with an end of %v", name, box.U, f.U)
			}
			continue
		}
		from := c - f.U.Lo
		if d.studsRight {
			from = f.U.Hi - c - d.lumberThick%2 // the centre of an odd thickness lies left of its middle
		}
		from -= told[name].Off * map[bool]length.Length{false: 1, true: -1}[d.studsRight]
		ends := []length.Length{studs[0] + d.lumberThick, studs[len(studs)-1] - d.lumberThick}
		if from%d.spacing != 0 && !slices.Contains(ends, c-told[name].Off) {
			t.Fatalf("%s, of which %+v is told, is %d from the end, with a spacing of %d", name, told[name], from, d.spacing)
		}
		for j, s := range wall.Supports {
			if off := max(c-s.Centre, s.Centre-c); off < d.half(m)+d.lumberThick/2 {
				t.Fatalf("%s at %d is under support %d at %d", name, c, j+1, s.Centre)
			}
		}
	}
}

// checkPlates checks that each plate is made of pieces from end to end which a
// stick gives, that they meet over inner studs, clear of supports in upper ones,
// and not within 24 in of the splices of a plate on or under it.
func checkPlates(t *rapid.T, d *drawn, wall *model.KneeWall, wood []*model.Part) {
	f := wall.Framing
	var before []length.Length
	for i := range d.lower + d.upper {
		z := span{Lo: length.Length(i) * d.lumberThick}
		if z.Hi = z.Lo + d.lumberThick; i >= d.lower {
			z = span{Lo: f.Z.Hi - length.Length(d.lower+d.upper-i)*d.lumberThick}
			z.Hi = z.Lo + d.lumberThick
		}
		at := f.U.Lo
		var splices []length.Length
		for _, p := range wood {
			box := p.Placement.Box
			if box.Z != z || strings.Contains(p.ID, "/stud-") {
				continue
			}
			if box.V != f.V || box.U.Lo != at || box.U.Size() > d.longest {
				t.Fatalf("%s lies at %v, after %d, from sticks of %d", p.ID, box, at, d.longest)
			}
			if at != f.U.Lo {
				splices = append(splices, at)
			}
			at = box.U.Hi
		}
		if at != f.U.Hi || (len(splices) > 0) != (f.U.Size() > d.longest) {
			t.Fatalf("plate %d of %v ends at %d, with splices at %v, from sticks of %d", i+1, f.U, at, splices, d.longest)
		}
		if i == d.lower {
			before = nil
		}
		for _, x := range splices {
			if !slices.Contains(wall.Studs[1:len(wall.Studs)-1], x) {
				t.Fatalf("a splice at %d is on none of the studs %v", x, wall.Studs)
			}
			for _, y := range before {
				if max(x-y, y-x) < 24*length.Inch {
					t.Fatalf("splices at %d and %d of plates on one another", x, y)
				}
			}
			for _, s := range wall.Supports {
				if off := max(x-s.Centre, s.Centre-x); i >= d.lower && off < d.steelWide/2+d.lumberWide {
					t.Fatalf("a splice at %d near the support at %d", x, s.Centre)
				}
			}
		}
		before = splices
	}
}

// checkSteel checks each plate against the pocket that it lies in: as wide as
// the fit on either side, as deep as the plate and a little lower.
func checkSteel(t *rapid.T, d *drawn, m *model.Model, wall *model.KneeWall, steel []*model.Part) {
	if len(steel) != d.supports || len(wall.Supports) != d.supports {
		t.Fatalf("%d plates and %d supports for %d", len(steel), len(wall.Supports), d.supports)
	}
	for i, p := range steel {
		box, support := p.Placement.Box, wall.Supports[i]
		if box != support.Steel || p.ID != support.Part || box.U.Mid() != support.Centre {
			t.Fatalf("steel %v, support %+v", box, support)
		}
		if box.U.Size() != d.steelWide || box.Z.Size() != d.steelThick || wall.Framing.V.Lo-box.V.Lo != d.reach || box.V.Hi-wall.Framing.V.Lo != min(d.tail, d.lumberWide) {
			t.Fatalf("steel at %v on a plate at %v", box, wall.Framing.V)
		}
		upper, recess := withRecess(t, m, support.Recess)
		if upper.Placement.Box.Z.Hi != wall.Framing.Z.Hi || !upper.Placement.Box.U.Contains(box.U) {
			t.Fatalf("%s at %v is let into %s at %v", p.ID, box, upper.ID, upper.Placement.Box)
		}
		face, depth := upper.Placement.Local(box)
		pocket := recess.Shape.Bounds()
		if pocket.X != face.X.Grow(recess.Fit) || depth.Hi != recess.Depth || depth.Lo <= 0 {
			t.Fatalf("steel at %v, %v deep, in a recess at %v, %d deep, with a fit of %d", face, depth, pocket, recess.Depth, recess.Fit)
		}
		// The plate is drawn with the room's side up.
		if pocket.Y.Hi != d.lumberWide || pocket.Y.Lo != max(0, face.Y.Lo-recess.Fit) && pocket.Y.Lo != 0 {
			t.Fatalf("recess %v under steel %v", pocket, face)
		}
		checkScrewHoles(t, d, m, wall, p, upper)
	}
}

func withRecess(t *rapid.T, m *model.Model, id string) (*model.Part, *model.Recess) {
	for i := range m.Parts {
		for j := range m.Parts[i].Recesses {
			if m.Parts[i].Recesses[j].ID == id {
				return &m.Parts[i], &m.Parts[i].Recesses[j]
			}
		}
	}
	t.Fatalf("there is no recess %s", id)
	return nil, nil
}

// checkScrewHoles checks that holes lie inside the steel and clear of its edges, of
// one another and of studs; those from above over wood, those from below under
// the bar top with an inch for the driver beside the wall.
func checkScrewHoles(t *rapid.T, d *drawn, m *model.Model, wall *model.KneeWall, steel, plate *model.Part) {
	box, slab := steel.Placement.Box, m.Slabs[len(m.Slabs)-1].Box
	down, up := 0, 0
	for i, b := range steel.Bores {
		keep := float64(b.Diameter) * 1.5
		hole := geom.Rect{X: span{Lo: b.At.X, Hi: b.At.X}, Y: span{Lo: b.At.Y - b.Slot/2, Hi: b.At.Y + b.Slot/2}}
		if edge := min(hole.X.Lo, box.U.Size()-hole.X.Hi, hole.Y.Lo, box.V.Size()-hole.Y.Hi); float64(edge) < keep {
			t.Fatalf("hole %+v is %d from an edge of %s, %v", b, edge, steel.ID, box)
		}
		if q := cornerOf(steel); b.At.Y < q { // the corners at the tail are round
			x := min(b.At.X, box.U.Size()-b.At.X)
			if dist := math.Hypot(float64(q-min(x, q)), float64(q-b.At.Y)); float64(q)-dist < keep-1 {
				t.Fatalf("hole %+v is in the rounding of %d", b, q)
			}
		}
		if b.Diameter <= d.screwThick || b.Sink != 2*d.screwThick || b.Depth != 0 {
			t.Fatalf("hole %+v for a screw of %d", b, d.screwThick)
		}
		// Drawn from above, x runs along the run and y out to the room.
		u, v := box.U.Lo+b.At.X, span{Lo: box.V.Hi - hole.Y.Hi, Hi: box.V.Hi - hole.Y.Lo}
		if b.Far {
			up++
			if wall.Framing.V.Lo-v.Hi < length.Inch || !slab.V.Contains(v) || !slab.U.Contains(span{Lo: u, Hi: u}) || (b.Slot > 0) != d.solid || b.Across != d.solid {
				t.Fatalf("hole %+v at %d, %v, with the framing at %v and the top at %v", b, u, v, wall.Framing.V, slab)
			}
		} else {
			down++
			if wood := plate.Placement.Box; !wood.V.Contains(v) || !wood.U.Contains(span{Lo: u, Hi: u}) || v.Lo-wood.V.Lo < b.Diameter || b.Slot != 0 {
				t.Fatalf("hole %+v at %d, %v does not land in the wood at %v", b, u, v, wood)
			}
		}
		for _, o := range steel.Bores[:i] {
			dx, dy := float64(b.At.X-o.At.X), float64(max(b.At.Y-o.At.Y, o.At.Y-b.At.Y)-b.Slot/2-o.Slot/2)
			if math.Hypot(dx, max(dy, 0)) < 2*keep-1 {
				t.Fatalf("holes %+v and %+v are too near to one another", b, o)
			}
		}
		for _, s := range wall.Studs {
			if max(u-s, s-u) < (d.lumberThick+b.Diameter)/2 {
				t.Fatalf("hole %+v at %d is over the stud at %d", b, u, s)
			}
		}
	}
	if down != d.down || up != d.up {
		t.Fatalf("%d holes down and %d up, for %d and %d", down, up, d.down, d.up)
	}
}

// cornerOf is the radius of a plate's corners at its tail.
func cornerOf(p *model.Part) length.Length {
	for _, v := range p.Outline {
		if v.Y == 0 && v.X > 0 {
			return v.X
		}
	}
	return 0
}

// checkPockets checks that each program counts from the end of its own piece.
func checkPockets(t *rapid.T, m *model.Model, wall *model.KneeWall, recesses []solve.Recess) {
	if len(recesses) != len(wall.Supports) {
		t.Fatalf("%d programs for %d supports", len(recesses), len(wall.Supports))
	}
	for i, r := range recesses {
		part := &m.Parts[r.Part]
		shape := part.Recesses[r.Recess].Shape.Bounds()
		if part.Recesses[r.Recess].ID != wall.Supports[i].Recess || part.Placement.Box.U.Lo+r.Centre != wall.Supports[i].Centre {
			t.Fatalf("program %s is for %s of %s, at %d", r.File, part.Recesses[r.Recess].ID, part.ID, r.Centre)
		}
		if x, _ := part.Size(); shape.X.Lo < 0 || shape.X.Hi > x {
			t.Fatalf("recess %v of a piece that is %d long", shape, x)
		}
	}
}

// checkLines compares the line of each stud in each cabinet, and its mark on the
// back, with where the stud and the cabinet stand.
func checkLines(t *rapid.T, m *model.Model, wall *model.KneeWall) {
	lines := map[string]model.ScrewLine{}
	for _, l := range wall.Lines {
		lines[l.Box+strconv.Itoa(l.Stud)] = l
	}
	seen := 0
	for _, box := range m.Runs[0].Boxes {
		if box.Kind != model.Cabinet {
			continue
		}
		back := partNamed(t, m, "cabinet."+box.Name+"/back")
		marks := 0
		for i, c := range wall.Studs {
			line, ok := lines[box.Name+strconv.Itoa(i+1)]
			stud := partNamed(t, m, "knee_wall.k/stud-"+strconv.Itoa(i+1)).Placement.Box
			// An inch for the driver beside either side.
			if caught := box.Inside.U.Lo+length.Inch <= c && c <= box.Inside.U.Hi-length.Inch; caught != ok {
				t.Fatalf("stud %d at %d, cabinet %s clear over %v: %+v", i+1, c, box.Name, box.Inside.U, line)
			} else if !caught {
				continue
			}
			if box.Inside.U.Lo+line.FromLeft != c || line.Z.Size() <= 0 || !box.Inside.Z.Contains(line.Z) || !stud.Z.Contains(line.Z) {
				t.Fatalf("line %+v of stud %v in the clear inside %v", line, stud, box.Inside)
			}
			mark := back.Marks[marks]
			marks, seen = marks+1, seen+1
			at := back.Placement.Box
			if mark.Name != "stud "+strconv.Itoa(i+1) || at.U.Lo+mark.From.X != c || mark.From.X != mark.To.X || !line.Z.Contains(span{Lo: at.Z.Lo + mark.From.Y, Hi: at.Z.Lo + mark.To.Y}) || mark.From.Y >= mark.To.Y {
				t.Fatalf("mark %+v on the back at %v, for %+v", mark, at, line)
			}
		}
		if marks != len(back.Marks) {
			t.Fatalf("%d marks on %s for %d studs", len(back.Marks), back.ID, marks)
		}
	}
	if seen != len(wall.Lines) {
		t.Fatalf("%d lines, %d of them in cabinets", len(wall.Lines), seen)
	}
}
