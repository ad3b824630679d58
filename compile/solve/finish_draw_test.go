package solve_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// drawnFinish is a random knee wall with all that covers it.
type drawnFinish struct {
	unit                   length.Unit
	sheet, trim            length.Length // how long a sheet is, and what the saw trims
	gap                    length.Length
	mirrored, corner, over bool
	text                   string
}

func drawFinish(t *rapid.T) drawnFinish {
	d := drawnFinish{unit: rapid.SampledFrom([]length.Unit{length.Inches, length.Millimetres}).Draw(t, "unit")}
	fine := func(name string, low, high int) length.Length { return drawFine(t, d.unit, name, low, high) }
	mm := func(l length.Length) string { return `"` + l.Decimal(length.Millimetres, 6) + `mm"` }
	yes := func(name string) bool { return rapid.Bool().Draw(t, name) }
	var out strings.Builder
	p := func(format string, args ...any) { fmt.Fprintf(&out, format+"\n", args...) }
	d.sheet, d.trim = fine("sheet", 1100, 2440), fine("trim", 0, 10)
	if yes("gap") {
		d.gap = fine("how wide", 1, 30)
	}
	p("build \"drawn\" {\n  unit = %q\n}\nsaw {\n  trim = %s\n}", d.unit.String(), mm(d.trim))
	p("sheet \"skin\" {\n  size = [%s, \"1220mm\"]\n  thickness = %s\n}", mm(d.sheet), mm(fine("skin", 3, 20)))
	p("sheet \"end\" {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = %s\n}", mm(fine("end skin", 3, 20)))
	p("sheet \"strip\" {\n  size = [%s, \"1220mm\"]\n  thickness = %s\n}", mm(fine("strip sheet", 1100, 2440)), mm(fine("strip", 3, 20)))
	p("sheet \"board\" {\n  size = [\"2440mm\", \"1220mm\"]\n  thickness = \"18mm\"\n}")
	p("stick \"stud\" {\n  thickness = \"38mm\"\n  width = \"89mm\"\n  lengths = [\"6m\"]\n}")
	p("flat_bar \"arm\" {\n  thickness = \"10mm\"\n  width = %s\n  lengths = [\"3m\"]\n}", mm(fine("steel", 20, 60)))
	p("router \"bench\" {\n  bit = \"6mm\"\n  feed = \"2m\"\n}\nslab \"oak\" {\n  thickness = \"40mm\"\n}")
	p("carcass \"base\" {\n  height = \"860mm\"\n  depth = \"560mm\"\n  board = sheet.board\n  back = { board = sheet.board }\n}")
	p("room {\n  wall \"w\" {\n    length = \"4m\"\n  }\n}")
	free, facing := "right", "left"
	if yes("faces right") {
		free, facing = facing, free
	}
	p("run \"r\" {\n  out_from = wall.w\n  at = \"2m\"\n  faces = %q\n  carcass = carcass.base", facing)
	for i := range rapid.IntRange(1, 6).Draw(t, "boxes") {
		p("  cabinet \"b%d\" { width = %s }", i, mm(fine("width", 400, 900)))
	}
	p("}\nknee_wall \"k\" {\n  behind = run.r\n  lumber = stick.stud\n  spacing = %s\n  gap = %s", mm(fine("spacing", 250, 600)), mm(d.gap))
	if yes("supports") {
		p("  router = router.bench\n  supports {\n    count = %d\n    plate = flat_bar.arm\n    reach = \"200mm\"\n    tail = \"60mm\"\n  }", rapid.IntRange(1, 3).Draw(t, "supports"))
	}
	d.outlets(t, p, mm, fine)
	d.mirrored, d.over, d.corner = yes("mirrored"), yes("over run"), yes("corner")
	d.skins(t, p, mm, fine, free)
	p("}\nbar_top \"t\" {\n  over = knee_wall.k\n  slab = slab.oak\n  height = \"1120mm\"\n  overhang = { room = \"300mm\" }\n}")
	if yes("counter") {
		p("counter \"c\" {\n  over = run.r\n  slab = slab.oak\n}")
	}
	d.text = out.String()
	return d
}

// outlets writes up to one on each face.
func (d *drawnFinish) outlets(t *rapid.T, p func(string, ...any), mm func(length.Length) string, fine func(string, int, int) length.Length) {
	for _, face := range []string{"work", "room"} {
		if rapid.Bool().Draw(t, "outlet, "+face) {
			end := rapid.SampledFrom([]string{"from_left", "from_right"}).Draw(t, "end")
			p("  outlet %q {\n    face = %q\n    %s = %s\n    box = { width = \"70mm\", height = \"50mm\", depth = \"40mm\" }\n    cover = { width = \"86mm\", height = \"70mm\" }\n  }", face, face, end, mm(fine("along", 90, 300)))
		}
	}
}

func (d *drawnFinish) skins(t *rapid.T, p func(string, ...any), mm func(length.Length) string, fine func(string, int, int) length.Length, free string) {
	end := rapid.Bool().Draw(t, "end skin")
	d.corner = d.corner && end
	for _, face := range []string{"work", "room"} {
		p("  skin %q {\n    face = %q\n    board = sheet.skin", face, face)
		if rapid.Bool().Draw(t, "cap") {
			p("    cap = { board = sheet.strip, width = %s }", mm(fine("cap", 10, 60)))
		}
		if rapid.Bool().Draw(t, "battens") {
			p("    battens = { board = sheet.strip, width = %s, mirrored = %t, ends = %t, about = %s }", mm(fine("batten", 20, 60)), d.mirrored, rapid.Bool().Draw(t, "ends"), mm(fine("about", 150, 600)))
		}
		p("  }")
	}
	if end {
		p("  skin \"end\" {\n    face = %q\n    board = sheet.end\n    over_run = %t\n  }", free, d.over)
	}
	if d.corner {
		p("  corner \"c\" {\n    end = %q\n    board = sheet.strip\n    width = %s\n  }", free, mm(fine("corner", 30, 80)))
	}
}

// solveFinish returns the model, or nil where something random stands in the
// way of something else that is fixed.
func solveFinish(t *rapid.T, d *drawnFinish) *model.Model {
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(d.text)}})
	if findings.HasErrors() {
		t.Fatalf("%v", findings)
	}
	s := solve.Solve(src)
	inTheWay := []string{"strip-meets-cover", "battens-meet", "no-place-for-stud", "no-place-for-supports"}
	for _, f := range s.Findings {
		if f.Severity == finding.Error && !slices.Contains(inTheWay, f.Slug) {
			t.Fatalf("%s: %s\n%s", f.Slug, f.Text, d.text)
		}
	}
	return s.Model
}

// TestFinishReassembly puts what covers random knee walls together again.
func TestFinishReassembly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawFinish(t)
		m := solveFinish(t, &d)
		if m == nil {
			t.Skip("something random is in the way")
		}
		wall := &m.KneeWalls[0]
		for i := range wall.Skins {
			checkSkin(t, &d, m, wall, &wall.Skins[i])
		}
		checkClear(t, m, wall)
	})
}

// checkSkin checks that the pieces of a skin fill it, meet on studs, and are as
// few as can be; that a batten lies over each seam and none over a cover plate,
// and that they are mirrored where that is asked for.
func checkSkin(t *rapid.T, d *drawnFinish, m *model.Model, wall *model.KneeWall, skin *model.Skin) {
	pieces := withPrefix(m, "skin."+skin.Name+"/piece-")
	if bounding(pieces) != skin.Box || len(pieces) != len(skin.Seams)+1 {
		t.Fatalf("%d pieces of %s, with %d seams, fill %v of %v", len(pieces), skin.Name, len(skin.Seams), bounding(pieces), skin.Box)
	}
	filled := length.Length(0)
	for _, p := range pieces {
		checkBlank(t, p)
		box := p.Placement.Box
		filled += box.U.Size()
		if box.V != skin.Box.V || box.Z != skin.Box.Z {
			t.Fatalf("%s is at %v in a skin at %v", p.ID, box, skin.Box)
		}
		if skin.Name != "end" && box.U.Size() > d.sheet-2*d.trim {
			t.Fatalf("%s is %d long, from a sheet of %d", p.ID, box.U.Size(), d.sheet)
		}
	}
	if filled != skin.Box.U.Size() {
		t.Fatalf("pieces of %d in all on a skin of %d", filled, skin.Box.U.Size())
	}
	studs := map[length.Length]bool{}
	for _, c := range wall.Studs[1 : len(wall.Studs)-1] {
		studs[c] = true
	}
	for _, c := range skin.Seams {
		if !studs[c] {
			t.Fatalf("a seam at %d is on no stud of %v", c, wall.Studs)
		}
	}
	if skin.Name != "end" {
		if n := fewest(wall.Studs[1:len(wall.Studs)-1], skin.Box.U, d.sheet-2*d.trim); n != len(pieces) {
			t.Fatalf("%d pieces where %d would do", len(pieces), n)
		}
	}
	checkBattens(t, d, m, wall, skin)
}

// fewest counts the pieces that a stretch needs, trying every way.
func fewest(studs []length.Length, stretch geom.Span, reach length.Length) int {
	marks := append(append([]length.Length{stretch.Lo}, studs...), stretch.Hi)
	need := make([]int, len(marks)) // to get to each mark
	for i := 1; i < len(marks); i++ {
		need[i] = len(marks)
		for j := range i {
			if marks[i]-marks[j] <= reach {
				need[i] = min(need[i], need[j]+1)
			}
		}
	}
	return need[len(marks)-1]
}

func checkBattens(t *rapid.T, d *drawnFinish, m *model.Model, wall *model.KneeWall, skin *model.Skin) {
	battens := withPrefix(m, "skin."+skin.Name+"/batten-")
	if len(battens) != len(skin.Battens) {
		t.Fatalf("%d parts for %d battens", len(battens), len(skin.Battens))
	}
	if len(battens) == 0 {
		return
	}
	at := map[length.Length]bool{}
	for i, c := range skin.Battens {
		at[c] = true
		box := battens[i].Placement.Box
		if off := box.U.Mid() - c; off < -1 || off > 1 || !skin.Box.U.Contains(box.U) || box.Z.Lo != skin.Box.Z.Lo || box.Z.Hi > skin.Box.Z.Hi {
			t.Fatalf("batten %d stands at %v, its centre is said to be %d, its skin at %v", i+1, box, c, skin.Box)
		}
		for _, o := range wall.Outlets {
			if o.Face == skin.Face && box.U.Overlaps(o.Cover.U) && box.Z.Overlaps(o.Cover.Z) {
				t.Fatalf("batten %d at %v lies over the cover plate at %v", i+1, box, o.Cover)
			}
		}
	}
	for _, seam := range skin.Seams {
		if !at[seam] {
			t.Fatalf("no batten of %v lies over the seam at %d", skin.Battens, seam)
		}
		if mirror := skin.Box.U.Lo + skin.Box.U.Hi - seam; d.mirrored && !at[mirror] {
			t.Fatalf("no batten of %v mirrors the seam at %d", skin.Battens, seam)
		}
	}
	if d.mirrored && !(d.corner && skin.Face == "room") {
		for _, c := range skin.Battens {
			mirror := skin.Box.U.Lo + skin.Box.U.Hi - c
			if inMiddle := mirror-c >= -1 && mirror-c <= 1; !at[mirror] && !inMiddle { // to the nanometre
				t.Fatalf("nothing mirrors %d in %v on %v", c, skin.Battens, skin.Box.U)
			}
		}
	}
}

// checkClear checks that nothing that covers a knee wall is in anything else:
// in one another, in lumber, steel, slabs or boxes, in the floor. Skins keep
// clear of steel by their notches, and of the run by the shape of their outline.
func checkClear(t *rapid.T, m *model.Model, wall *model.KneeWall) {
	var covers []*model.Part
	for _, prefix := range []string{"skin.", "corner."} {
		covers = append(covers, withPrefix(m, prefix)...)
	}
	for i, p := range covers {
		box := p.Placement.Box
		if box.Z.Lo < 0 {
			t.Fatalf("%s reaches under the floor", p.ID)
		}
		for _, o := range covers[:i] {
			if overlap(p, o.Placement.Box) && overlap(o, box) {
				t.Fatalf("%s at %v and %s at %v run into one another", p.ID, box, o.ID, o.Placement.Box)
			}
		}
		for _, slab := range m.Slabs {
			if overlap(p, slab.Box) {
				t.Fatalf("%s at %v is in %s at %v", p.ID, box, slab.Name, slab.Box)
			}
		}
		for j := range m.Parts {
			o := &m.Parts[j]
			if o.Kind == model.Panel && !strings.HasPrefix(o.ID, "cabinet.") || !overlap(p, o.Placement.Box) {
				continue
			}
			if o.Kind != model.Steel || !strings.Contains(p.ID, "/piece-") || !letsThrough(p, o.Placement.Box) {
				t.Fatalf("%s at %v runs into %s at %v", p.ID, box, o.ID, o.Placement.Box)
			}
		}
	}
	if len(withPrefix(m, "corner.")) > 0 && len(withPrefix(m, "corner.")) != 2 {
		t.Fatal("a corner is two strips")
	}
}

// overlap reports whether a part and a box share more than a face. Of a skin
// that reaches over the run there is only what is beside the boxes, 860 mm high,
// and what is behind them (TestSkinOverRun).
func overlap(p *model.Part, box geom.Box) bool {
	at := p.Placement.Box
	if at.V.Lo >= 0 || at.V.Hi <= 100*length.Millimetre {
		return at.Overlaps(box)
	}
	return at.With(geom.V, span{Lo: at.V.Lo}).Overlaps(box) || at.With(geom.V, span{Hi: at.V.Hi}).With(geom.Z, span{Lo: at.Z.Lo, Hi: 860 * length.Millimetre}).Overlaps(box)
}

// letsThrough reports whether a part is cut away wherever a box passes it.
func letsThrough(p *model.Part, box geom.Box) bool {
	face, _ := p.Placement.Local(box)
	face = face.Intersect(p.Placement.Blank())
	for _, o := range p.Openings {
		if o.Shape.Bounds().Contains(face) {
			return p.Outline.Area() < geom.RectContour(p.Placement.Blank()).Area()
		}
	}
	return false
}

// withPrefix lists the parts whose IDs begin alike.
func withPrefix(m *model.Model, prefix string) []*model.Part {
	var out []*model.Part
	for i := range m.Parts {
		if strings.HasPrefix(m.Parts[i].ID, prefix) {
			out = append(out, &m.Parts[i])
		}
	}
	return out
}
