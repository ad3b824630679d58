package reuse_test

import (
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"
)

// TestBoard pairs the stocks of two builds.
func TestBoard(t *testing.T) {
	of := func(name, asked string, t reuse.Length) *model.Part {
		return panel(10*inch, 10*inch, thick(t), func(p *model.Part) { p.Stock, p.Material = name, asked })
	}
	for _, c := range []struct {
		name     string
		old, new *model.Part
		same     bool
		notes    int
	}{
		{"one label, two names", of("sheet.a", "birch plywood", 18*mm), of("sheet.b", "birch plywood", 18*mm), true, 0},
		{"one name, two labels", of("sheet.a", "birch plywood", 18*mm), of("sheet.a", "oak plywood", 18*mm), false, 0},
		{"one name, no label", of("sheet.a", "a, 18 mm x 1220 mm x 2440 mm", 18*mm), of("sheet.a", "a, 17.6 mm x 1220 mm x 2440 mm", 17*mm+600_000), true, 1},
		{"one name, one label", of("sheet.a", "a, 18 mm x 1220 mm x 2440 mm", 18*mm), of("sheet.a", "birch plywood", 18*mm), true, 0},
		{"measured anew", of("sheet.a", "birch plywood", 23*inch/32), of("sheet.a", "birch plywood", 22*inch/32), true, 1},
		{"another thickness", of("sheet.a", "birch plywood", 23*inch/32), of("sheet.a", "birch plywood", 22*inch/32-1), false, 0},
	} {
		p := pair(c.old, c.new, 0)
		if got := p.Board(c.old) == p.Board(c.new); got != c.same || len(p.Remeasured()) != c.notes {
			t.Errorf("%s: one board: %v; %q", c.name, got, p.Remeasured())
		}
		if fit, ok := p.Serve(c.old, c.new); ok != c.same || ok && fit.Kind != model.Unchanged {
			t.Errorf("%s: %v %v", c.name, fit, ok)
		}
	}
}

// TestNearestBoard: of two old boards of one label, the nearer in thickness is the one
// that was measured anew.
func TestNearestBoard(t *testing.T) {
	of := func(t reuse.Length) model.Part { return *panel(10*inch, 10*inch, thick(t)) }
	old := &model.Model{Build: builds, Parts: []model.Part{of(18 * mm), of(17 * mm)}}
	new := &model.Model{Build: builds, Parts: []model.Part{of(17*mm + 400_000), of(16 * mm)}}
	p := reuse.Open(old, new, 0)
	if p.Board(&new.Parts[0]) != p.Board(&old.Parts[1]) || p.Board(&old.Parts[0]) == p.Board(&old.Parts[1]) {
		t.Error("17.4 mm is nearer to 17 mm")
	}
	if got := p.Board(&new.Parts[1]); got == p.Board(&old.Parts[0]) || got == p.Board(&old.Parts[1]) {
		t.Error("16 mm is a board of its own")
	}
	want := "sheet.birch, 0.685 in thick, is taken for the sheet.birch of the old build, measured anew: 0.669 in."
	if got := p.Remeasured(); len(got) != 1 || got[0] != want {
		t.Errorf("%q", got)
	}
	if got := p.Board(panel(10*inch, 10*inch, thick(5*mm))); got != -1 {
		t.Errorf("a board of neither: %d", got)
	}
}

// TestToeKickOfABase: it bears the cabinet, and takes no strip.
func TestToeKickOfABase(t *testing.T) {
	low, high := panel(24*inch, 4*inch, as("cabinet.urn/toe-kick", "front")), panel(24*inch, 9*inch/2, as("cabinet.urn/toe-kick", "front"))
	new := &model.Model{Build: builds, Parts: []model.Part{*high, *panel(24*inch, 4*inch, as("cabinet.urn/base-rear", "front"))}}
	old := &model.Model{Build: builds, Parts: []model.Part{*low}}
	if fit, ok := reuse.Open(old, new, 0).Serve(low, high); ok {
		t.Errorf("%+v", fit)
	}
}

// TestRoundCorners: a bar whose end is round serves for itself, turned, and cut shorter
// at the other end; a rounder one lacks material.
func TestRoundCorners(t *testing.T) {
	bar := func(long, r reuse.Length) *model.Part {
		c := geom.RoundedContour(geom.R(0, 0, 5*inch, long), r)
		c = append(geom.Contour{c[0], c[1], c[2], {Point: at(5*inch, long)}, {Point: at(0, long)}}, c[7])
		return panel(5*inch, long, steel, outlined(c))
	}
	for _, c := range []struct {
		old, new *model.Part
		want     string
	}{
		{bar(12*inch, inch/2), bar(12*inch, inch/2), "unchanged"},
		{bar(12*inch, inch/2), laidPart(bar(12*inch, inch/2), model.Lay{Quarters: 3, Over: true}), "unchanged"},
		{bar(12*inch, inch/2), bar(11*inch, inch/2), "rework: cut to length, 11 in: 1 in off the top end"},
		{bar(12*inch, inch/2), bar(12*inch, inch), "rework: round the lower right corner to a radius of 1 in; round the lower left corner to a radius of 1 in"},
		{bar(12*inch, inch), bar(12*inch, inch/2), ""},
	} {
		got := ""
		if fit, ok := pair(c.old, c.new, 0).Serve(c.old, c.new); ok {
			got = fit.Kind.String()
			for i, s := range fit.Steps {
				got += [...]string{": ", "; "}[min(i, 1)] + s.Text
			}
		}
		if got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}
