// Package access judges openings for what stands in walls, and whether one gets at
// it (SPEC.md 11.3).
package access

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/source"
)

// Rules are those of the section, the graver ones first: see told.
var Rules = []rule.Rule{
	{Slug: "buried-behind-boards", Look: buriedBehindBoards},
	{Slug: "cover-meets-board", Look: coverMeetsBoard},
	{Slug: "opening-near-joint", Look: openingNearJoint},
	{Slug: "opening-near-edge", Look: openingNearEdge},
	{Slug: "opening-near-bore", Look: openingNearBore},
	{Slug: "cover-laps-little", Look: coverLapsLittle},
	{Slug: "box-gap-wide", Look: boxGapWide},
	{Slug: "box-in-stud", Look: boxInStud},
	{Slug: "plug-without-room", Look: plugWithoutRoom},
	{Slug: "out-of-reach", Look: outOfReach},
}

// fixture is what stands in a wall of the room: an outlet, a switch, a vent or a
// stub.
type fixture struct {
	kind, name string // "outlet", "outlet kettle"
	block      *lang.Block
	wall       *model.Wall
	face       geom.Rect // of itself, as one faces the wall: along, height
	cover      geom.Rect // its cover plate; that of a vent or a stub is the zero Rect
	clearance  geom.Length
	out        geom.Length // how far it stands out of the wall
	depth      geom.Length // of a box, from its front; 0 for a vent or a stub
	way        string      // how panels let it through: "hole", "slot", "notch"
	why        model.Why
}

// electrical reports whether it is a box with a cover plate.
func (f *fixture) electrical() bool { return f.depth > 0 }

// fixturesOf lists what stands in the walls.
func fixturesOf(b *rule.Build) []fixture {
	var out []fixture
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		for _, o := range w.Fixtures() {
			f := fixture{
				kind: o.Kind, name: o.Words(), block: b.Block(o.Key()), wall: w, face: o.Face,
				clearance: o.Clearance, out: o.StandsOut, way: o.Cut.Way, why: o.Why,
			}
			if o.Outlet != nil {
				f.depth, f.cover = o.Outlet.Box.Depth, o.Outlet.Plate()
			}
			out = append(out, f)
		}
	}
	return out
}

// drainsOf lists the drains, whose pipes are let through boards too. They stand in no wall.
func drainsOf(b *rule.Build) []fixture {
	out := make([]fixture, len(b.Drains))
	for i := range b.Drains {
		d := &b.Drains[i]
		out[i] = fixture{kind: "drain", name: d.Words(), block: b.Block(d.Key()), way: "hole", why: d.Why}
	}
	return out
}

// named is what stands in the walls, by the names that openings have.
func named(fixtures []fixture) map[string]*fixture {
	out := map[string]*fixture{} // lookup only
	for i := range fixtures {
		out[fixtures[i].name] = &fixtures[i]
	}
	return out
}

// let is an opening of a part for what stands in a wall.
type let struct {
	part    *model.Part
	opening *model.Opening
	of      *fixture
	boards  []*model.Part // that stand fast in the same cabinet; itself among them
}

// lets lists the openings of cabinets, end panels and fillers. What lies over the
// framing of a knee wall has wood behind it, whatever is cut out of it.
func lets(b *rule.Build, fixtures []fixture) []let {
	by := named(fixtures)
	var out []let
	for i := range b.Parts {
		p := &b.Parts[i]
		switch p.BlockKind() {
		case "cabinet", "end_panel", "filler":
			for j := range p.Openings {
				if f := by[p.Openings[j].Name]; f != nil {
					l := let{part: p, opening: &p.Openings[j], of: f}
					if p.BlockKind() == "cabinet" {
						l.boards = b.FastIn(p.Block())
					}
					out = append(out, l)
				}
			}
		}
	}
	return out
}

// opens reports whether a part has an opening of a name; whole where wood is all
// round it.
func opens(p *model.Part, name string) (whole, cut bool) {
	for i := range p.Openings {
		if p.Openings[i].Name == name {
			return !p.Openings[i].Notch, true
		}
	}
	return false, false
}

// told reports whether something graver is said already of what lies near a fixture.
func told(b *rule.Build, f *fixture, slug string) bool {
	for _, graver := range []string{"openings-meet", "opening-meets-joint"} {
		if b.Findings.Has(graver, f.why.At) {
			return true
		}
	}
	for _, graver := range []string{"buried-behind-boards", "cover-meets-board", "opening-near-joint", "opening-near-edge"} {
		if graver == slug {
			break
		}
		if b.Findings.Has(graver, f.place()) {
			return true
		}
	}
	return false
}

// place is where the text says where a fixture is, or where a drain's pipe lies.
func (f *fixture) place() source.Range { return f.block.Said("at", "from_back", "to") }
