package solve

import (
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// wetWays is wayBar with a sink in its middle box and a stub in the wall at its left end,
// 94 - 91 = 3 before the rear. The pipe is led there along u from 36, where 33 + 3 are left
// to the wall: at its bend it is 14 + 0.0208 x 36 = 14.7488 high.
var wetWays = strings.Replace(wayBar, `wall "east" { length = 150 }`, `wall "east" {
    length = 150
    stub "waste" {
      at         = [91, 14]
      diameter   = 1.9
      stands_out = 3
    }
  }`, 1) + `
slab "block" { thickness = 1.5 }
counter "work" {
  over = run.front
  slab = slab.block
  sink "prep" {
    in  = cabinet.b
    cut = { width = 14, depth = 14 }
  }
}
drain "waste" {
  from     = sink.prep
  to       = stub.waste
  diameter = 1.9
  vent     = "wall"
}
`

func solved(t *testing.T, text string) Solution {
	t.Helper()
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text)}})
	if len(findings) > 0 {
		t.Fatal(findings)
	}
	s := Solve(src)
	if s.Model == nil {
		t.Fatal(s.Findings)
	}
	return s
}

// said is the text of the first finding of a rule; empty where there is none.
func said(all finding.List, slug string) string {
	i := slices.IndexFunc(all, func(f finding.Finding) bool { return f.Slug == slug })
	if i < 0 {
		return ""
	}
	return all[i].Text
}

// TestCableOffPipe has a cable come through all boxes at a height. Before their backs it lies at
// v = 1 5/8, and the pipe takes v from 2.05: over the pipe's highest, 14.7488 + 0.95, it
// keeps 1 in and half of a hole of 3/4. That is 17.0738, or 17 3/32 in whole marks.
func TestCableOffPipe(t *testing.T) {
	at := func(height string) Solution {
		return solved(t, wetWays+`
cable "through" {
  from    = outlet.left
  to      = outlet.right
  through = [cabinet.a, cabinet.b, cabinet.c]
  height  = "`+height+`"
}`)
	}
	if said(at("17 1/16in").Findings, "cable-finds-no-way") == "" {
		t.Error("it runs too near the pipe")
	}
	free := at("17 3/32in")
	if text := said(free.Findings, "cable-finds-no-way"); text != "" {
		t.Error(text)
	}
	side := partNamed(free.Model, "cabinet.a/side-right")
	if !slices.ContainsFunc(side.Openings, func(o model.Opening) bool { return o.Name == "drain waste" }) {
		t.Errorf("the pipe does not pass %s: %v", side.ID, side.Openings)
	}
}

// wetCord is a run along a wall: a sink, an appliance beside it, and an outlet in the box of the
// sink. The pipe runs at v = 3 along to its stub, 14 high there, past the outlet.
func wetCord(outlet string) string {
	return `
build "bar" { unit = "in" }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
stick "two_by_four" {
  thickness = 1.5
  width     = 3.5
  lengths   = ["10ft"]
}
slab "block" { thickness = 1.5 }
room {
  wall "north" {
    length = 150
    outlet "ice" { at = ` + outlet + ` }
    stub "waste" {
      at         = [3, 14]
      diameter   = 1.9
      stands_out = 3
    }
  }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "a" { width = 36 }
  bay "ice" {
    appliance = { width = 24, height = 32.75, depth = 22.5 }
    gap       = "1/4in"
    top_gap   = "1/4in"
    back_gap  = "1/2in"
    blocks    = stick.two_by_four
  }
}
counter "work" {
  over = run.back
  slab = slab.block
  sink "prep" {
    in  = cabinet.a
    cut = { width = 14, depth = 14 }
  }
}
drain "waste" {
  from     = sink.prep
  to       = stub.waste
  diameter = 1.9
}
cord "ice" {
  of     = bay.ice
  to     = outlet.ice
  length = "9ft"
}
`
}

// TestCordOffPipe has an outlet behind the pipe, of which the plug keeps off less than 1, and one
// over it. The pipe is 14.3744 high at most, its upper side 15.3244; with 1 between, 16.3244.
func TestCordOffPipe(t *testing.T) {
	if text := said(solved(t, wetCord("[12, 14]")).Findings, "cord-finds-no-way"); !strings.Contains(text, "the pipe of drain waste") {
		t.Errorf("behind the pipe: %q", text)
	}
	for _, at := range []string{"[12, 19]", "[12, 9]"} {
		s := solved(t, wetCord(at))
		if text := said(s.Findings, "cord-finds-no-way"); text != "" {
			t.Errorf("%s: %s", at, text)
		}
		if a, b := legs(t, s.Model, "drain.waste"), legs(t, s.Model, "cord.ice"); meet(a, b, 95*length.Inch/100+length.Inch) {
			t.Errorf("%s: the cord comes nearer than 1 in to the pipe: %v, %v", at, a, b)
		}
	}
}

// TestPipesKeepApart has a second drain whose pipe would cross the first: from the middle box
// to a stub 6 before the rear, where that of the left box goes across on its way to 3. It
// goes round the first's trap. Two that lead to one stub join.
func TestPipesKeepApart(t *testing.T) {
	two := func(first, second string) *model.Model {
		return solved(t, strings.NewReplacer(`    stub "waste" {`, `    stub "rear" {
      at         = [88, 14]
      diameter   = 1.9
      stands_out = 3
    }
    stub "waste" {`, `  sink "prep" {`, `  sink "rinse" {
    in  = cabinet.a
    cut = { width = 14, depth = 14 }
  }
  sink "prep" {`, `drain "waste" {`, `drain "rinse" {
  from     = sink.rinse
  to       = stub.`+first+`
  diameter = 1.9
  vent     = "wall"
}
drain "waste" {`, `to       = stub.waste`, `to       = stub.`+second).Replace(wetWays)).Model
	}
	m := two("waste", "rear")
	a, b := legs(t, m, "drain.rinse"), legs(t, m, "drain.waste")
	if len(a) != 2 || len(b) != 3 || meet(a, b, 190*length.Inch/100) || len(m.Drains[1].Stops) > 0 {
		t.Errorf("the first goes %v, the second %v, stopped by %v", a, b, m.Drains[1].Stops)
	}
	if m := two("waste", "waste"); len(m.Drains[1].Stops) > 0 {
		t.Errorf("two to one stub: stopped by %v", m.Drains[1].Stops)
	}
}

// legs are the straight pieces of a way, in the frame of the first run.
func legs(t *testing.T, m *model.Model, key string) (out []geom.Box) {
	t.Helper()
	i := slices.IndexFunc(m.Ways, func(w model.Way) bool { return w.Key() == key })
	if i < 0 {
		t.Fatalf("no way of %s", key)
	}
	at := func(p model.Spot) geom.Spot {
		u, v := m.Runs[0].Frame.Local(geom.Point{X: p.X, Y: p.Y})
		return geom.Spot{U: u, V: v, Z: p.Z}
	}
	for j, p := range m.Ways[i].Points[1:] {
		a, b := at(m.Ways[i].Points[j]), at(p)
		out = append(out, geom.Box{U: geom.Between(a.U, b.U), V: geom.Between(a.V, b.V), Z: geom.Between(a.Z, b.Z)})
	}
	return out
}

// meet reports whether two ways come nearer to one another than that along every axis, but for
// rounding.
func meet(one, other []geom.Box, near length.Length) bool {
	return slices.ContainsFunc(one, func(a geom.Box) bool {
		return slices.ContainsFunc(other, func(b geom.Box) bool { return a.Grow(near - length.Millimetre/10).Overlaps(b) })
	})
}
