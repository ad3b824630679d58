package bill

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

func TestShims(t *testing.T) {
	m := &model.Model{Build: inches,
		Runs: []model.Run{
			{Boxes: []model.Box{{Kind: model.Cabinet}, {Kind: model.Bay}, {Kind: model.Filler}}},
			{Boxes: []model.Box{{Kind: model.Cabinet}}},
		},
		Fastening: []model.Fastening{{Screw: "s", Count: 8, Backing: "studs"}, {Screw: "s", Count: 100}},
	}
	// Two cabinets have 8 corners; with 8 wall screws 16 pairs are 32 shims: 3 packs of 12.
	want := []model.BillLine{{Section: "consumables", Item: "shims", Text: "wooden wedge shims", Use: "cabinet feet, behind wall screws",
		Quantity: 3, Unit: "pack of 12", Needed: "32 shims: a pair at 8 corners and 8 wall screws"}}
	same(t, want, consumables(lines(t, m)))
}

func TestWallPlugs(t *testing.T) {
	m := &model.Model{Build: inches, Fastening: []model.Fastening{
		{Screw: "screw.wall", Count: 12, Backing: "masonry"}, {Screw: "screw.long", Count: 3, Backing: "masonry"},
		{Screw: "screw.wall", Count: 8, Backing: "planks"}, {Screw: "screw.box", Count: 50},
	}}
	// 12 + 3 screws and a tenth of 15 begun, 2, are 17; planks need no plug.
	want := model.BillLine{Section: "consumables", Item: "wall plugs",
		Text: "wall plugs for screw.wall, screw.long, and the masonry drill bit that their maker names",
		Use:  "screws into masonry", Quantity: 17, Unit: "plug", Needed: "15 screws into masonry"}
	for _, l := range lines(t, m) {
		if l.Item == "wall plugs" {
			same(t, []model.BillLine{want}, []model.BillLine{l})
			return
		}
	}
	t.Error("no wall plugs")
}

func consumables(all []model.BillLine) (out []model.BillLine) {
	for _, l := range all {
		if l.Section == "consumables" {
			out = append(out, l)
		}
	}
	return out
}

// A bead 1/4 in thick takes π/4 · 6.35² = 31.67 mm², so 300 ml reach for
// 9473 mm (makers commonly print 31 ft for 10 fl oz, from memory: 9449 mm).
func TestAdhesive(t *testing.T) {
	cases := []struct {
		name   string
		length length.Length
		width  length.Length
		tubes  float64
		needed string
	}{
		{"two beads, one tube", 4736 * mm, 89 * mm, 1, "a bead 1/4 in (6 mm) thick, 9472 mm long, under 1 piece"},
		{"two beads, just over", 4737 * mm, 89 * mm, 2, "a bead 1/4 in (6 mm) thick, 9474 mm long, under 1 piece"},
		{"200 mm wide has two", 1000 * mm, 200 * mm, 1, "a bead 1/4 in (6 mm) thick, 2000 mm long, under 1 piece"},
		{"a little wider three", 1000 * mm, 201 * mm, 1, "a bead 1/4 in (6 mm) thick, 3000 mm long, under 1 piece"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			loose := part("cabinet a/side", "s", model.Panel, 700*mm, 500*mm, 18*mm)
			block := part("anchor end/block", "s", model.Lumber, c.width, c.length, 38*mm)
			block.Glued = true
			m := &model.Model{Build: model.Build{Unit: length.Millimetres}, Parts: []model.Part{loose, block}}
			want := []model.BillLine{{Section: "consumables", Item: "adhesive", Text: "construction adhesive, tube of 300 ml",
				Use: "anchor end", Quantity: c.tubes, Unit: "tube", Needed: c.needed}}
			same(t, want, Lines(m))
		})
	}
}

func TestNailPlatesAreNotCounted(t *testing.T) {
	for unit, rule := range map[length.Unit]string{length.Inches: "NEC 300.4(A)(1)", length.Millimetres: "local wiring rules"} {
		m := &model.Model{
			Build: model.Build{Unit: unit}, KneeWalls: []model.KneeWall{{}},
			Parts: []model.Part{{ID: "knee_wall.bar/stud-1", Kind: model.Lumber}},
			Ways:  []model.Way{{Kind: "drain", Holes: []model.WayHole{{Part: "knee_wall.bar/stud-1"}}}},
		}
		got := consumables(Lines(m))
		if len(got) != 1 || got[0].Quantity != 0 || got[0].Priced || !strings.Contains(got[0].Needed, rule) {
			t.Errorf("%+v: want a line without a quantity that names %s", got, rule)
		}
	}
}

func TestRouterBits(t *testing.T) {
	quarter := model.Tool{Diameter: inch / 4, Flutes: 2}
	m := &model.Model{Build: inches, Programs: []model.Program{
		{Tool: quarter, CutLength: 40 * inch, Depth: inch / 4},
		{Tool: model.Tool{Diameter: inch / 2, Flutes: 1}, CutLength: inch, Depth: inch},
		{Tool: quarter, CutLength: 50*inch + 1, Depth: 3*inch/8 - 1},
	}}
	want := []model.BillLine{
		{Section: "consumables", Item: "router bit", Text: "router bit, 1/4 in, 2 flutes, cutting 3/8 in or deeper", Use: "router programs",
			Quantity: 1, Unit: "bit", Needed: "2 programs, 7 ft 7 in of path"},
		{Section: "consumables", Item: "router bit", Text: "router bit, 1/2 in, 1 flute, cutting 1 in or deeper", Use: "router programs",
			Quantity: 1, Unit: "bit", Needed: "1 program, 1 in of path"},
	}
	same(t, want, Lines(m))
}

// The sizes are those of a shop chart of pilot holes: #6 softwood 1/16,
// clearance 9/64; #8 5/64, 7/64 in hardwood, 11/64; #10 3/32, 1/8, 3/16 in.
func TestDrillBits(t *testing.T) {
	screw := func(name string, d length.Length) model.Screw { return model.Screw{Name: name, Diameter: d} }
	m := &model.Model{Build: inches,
		Stock: model.Stock{Screws: []model.Screw{
			screw("screw.six", 138*inch/1000), screw("screw.eight", 164*inch/1000), screw("screw.wall", 190*inch/1000),
			screw("screw.long", 164*inch/1000), screw("screw.lag", inch/4), screw("screw.unused", inch), screw("screw.metric", 4200*length.Micrometre),
		}},
	}
	for _, s := range m.Stock.Screws {
		if s.Name != "screw.unused" {
			m.Fastening = append(m.Fastening, model.Fastening{Screw: s.Name, Count: 1})
		}
	}
	rule := " screws: pilot as thick as their core in hardwood, about 15 % thinner in softwood; clearance about as thick as their shank"
	want := []struct {
		text, use string
		bits      float64
	}{
		{"drill bits for #6 screws: pilot 1/16 in (softwood); clearance 9/64 in", "screw.six", 2},
		{"drill bits for #8 screws: pilot 5/64 in (softwood), 7/64 in (hardwood); clearance 11/64 in", "screw.eight, screw.long, screw.metric", 3},
		{"drill bits for #10 screws: pilot 3/32 in (softwood), 1/8 in (hardwood); clearance 3/16 in", "screw.wall", 3},
		{"drill bits for 1/4 in" + rule, "screw.lag", 3},
	}
	got := consumables(Lines(m))
	if len(got) != len(want) {
		t.Fatalf("%d lines, want %d", len(got), len(want))
	}
	for i, w := range want {
		if got[i].Text != w.text || got[i].Use != "holes for "+w.use || got[i].Quantity != w.bits {
			t.Errorf("%+v\nwant %+v", got[i], w)
		}
	}
	m.Build.Unit = length.Millimetres
	if got := consumables(Lines(m))[0].Text; got != "drill bits for 3.51 mm"+rule {
		t.Error(got)
	}
}

// Where a screw passes through steel, the wood behind takes its pilot only, and
// the steel a hole that clears the thread: from memory, ASME B18.2.8 has 0.206
// in close and 0.221 in normal for #10, and ISO 273 has 5.5 mm medium for 5 mm.
func TestDrillsForSteel(t *testing.T) {
	m := &model.Model{Build: inches,
		Stock: model.Stock{Screws: []model.Screw{
			{Name: "screw.plate", Diameter: 190 * inch / 1000}, {Name: "screw.thin", Diameter: 4 * mm},
			{Name: "screw.wall", Diameter: 190 * inch / 1000},
		}},
		Fastening: []model.Fastening{
			{Screw: "screw.plate", Count: 16, Steel: true}, {Screw: "screw.plate", Count: 4, Steel: true},
			{Screw: "screw.thin", Count: 8, Steel: true},
		},
	}
	texts := func() (out []string) {
		for _, l := range consumables(Lines(m)) {
			out = append(out, l.Text+" | "+l.Use+" | "+strings.Split(l.Needed, ",")[0])
		}
		return out
	}
	want := []string{
		"drill bits for #10 screws: pilot 3/32 in (softwood), 1/8 in (hardwood) | holes for screw.plate | try them in scrap first",
		"drill bits for 0.157 in screws: pilot as thick as their core in hardwood, about 15 % thinner in softwood | holes for screw.thin | try them in scrap first",
		"twist drill for metal, 7/32 in | holes in steel for screw.plate | 20 holes",
		"twist drill for metal, 3/16 in | holes in steel for screw.thin | 8 holes", // 0.157 and 0.016 are 0.173
		"countersink for metal, to the angle of the heads | heads flush with the steel, screw.plate, screw.thin | for flat heads only: commonly 82 degrees on inch screws",
		"cutting oil, a small can | drilling steel | some on each of 28 holes",
	}
	if diff := cmp.Diff(want, texts()); diff != "" {
		t.Error(diff)
	}

	// Another screw of the size goes through wood; the clearance is for that.
	m.Fastening = append(m.Fastening, model.Fastening{Screw: "screw.wall", Count: 2})
	want[0] = "drill bits for #10 screws: pilot 3/32 in (softwood), 1/8 in (hardwood); clearance 3/16 in (in wood only) | holes for screw.plate, screw.wall | try them in scrap first"
	if diff := cmp.Diff(want, texts()); diff != "" {
		t.Error(diff)
	}

	m.Build.Unit = length.Millimetres
	m.Stock.Screws[0].Diameter = 5 * mm
	got := texts()
	for _, want := range []string{
		"twist drill for metal, 5.5 mm | holes in steel for screw.plate | 20 holes",
		"twist drill for metal, 4.5 mm | holes in steel for screw.thin | 8 holes",
	} {
		if !slices.Contains(got, want) {
			t.Errorf("no %q in %q", want, got)
		}
	}
}
