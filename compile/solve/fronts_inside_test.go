package solve

import (
	"os"
	"regexp"
	"strconv"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/length"
	"barwright/lang/source"
)

const millimetre = length.Millimetre

// closedBox makes the sides of one box, adds to them, and closes it.
func closedBox(t *testing.T, fronts string, add func(s *solver, b *lang.Block, run *model.Run)) *solver {
	t.Helper()
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(`
build "b" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
carcass "base" {
  height = 870
  depth  = 560
  board  = sheet.ply
  back   = { board = sheet.ply }
  door   = { board = sheet.ply, fit = "inset" }
}
room {
  wall "w" { length = 3000 }
}
run "r" {
  along   = wall.w
  carcass = carcass.base
  cabinet "cups" {
    width = 600
    ` + fronts + `
  }
}
`)}})
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	s := &solver{m: &model.Model{}}
	s.Values = values.New(src, &s.out.Findings)
	s.build()
	s.All()
	run := model.Run{Height: 870 * millimetre, Depth: 560 * millimetre}
	b := src.Top("run")[0].Inner("cabinet")[0]
	c := s.carcassOf(b)
	hull := geom.Box{U: geom.Span{Hi: 600 * millimetre}, V: geom.Span{Hi: 560 * millimetre}, Z: geom.Span{Hi: 870 * millimetre}}
	for _, side := range []struct {
		id  string
		u   geom.Span
		out geom.Dir
	}{
		{"side-left", geom.Span{Hi: 18 * millimetre}, geom.Dir{Axis: geom.U}},
		{"side-right", geom.Span{Lo: 582 * millimetre, Hi: 600 * millimetre}, geom.Dir{Axis: geom.U, Neg: true}},
	} {
		s.panel(b, c.board.sheet, run.Frame, hull.With(geom.U, side.u), piece{id: side.id, out: side.out})
	}
	add(s, b, &run)
	s.fronts(&c, &run, b, &model.Box{Kind: model.Cabinet, Name: "cups", Hull: hull, ToeHeight: 100 * millimetre}, 0)
	return s
}

// Bores for shelf pins give way to those for a hinge's plate, 5 mm both: what is
// within 7.5 mm of one goes. One hinge stands at 80 over the door's end at 121,
// its holes at 185 and 217, behind the front by 37 and the door's 18.
func TestPinsGiveWayToPlates(t *testing.T) {
	at := func(x, y length.Length) geom.Point { return geom.Point{X: x, Y: y} }
	line := 55 * millimetre
	goes := []geom.Point{at(line, 185*millimetre), at(line, 185*millimetre+7_499_999), at(line-7_499_999, 217*millimetre), at(line+5*millimetre, 222*millimetre)}
	stays := []geom.Point{at(line, 185*millimetre+7_500_000), at(line, 300*millimetre), at(line+6*millimetre, 222*millimetre), at(500*millimetre, 185*millimetre)}
	s := closedBox(t, `doors = 1`, func(s *solver, b *lang.Block, run *model.Run) {
		for _, p := range append(goes, stays...) {
			s.m.Parts[0].Bores = append(s.m.Parts[0].Bores, model.Bore{Name: "shelf pin", At: p, Diameter: 5 * millimetre, Depth: 12 * millimetre})
		}
	})
	if len(s.out.Findings) > 0 {
		t.Fatal(s.out.Findings)
	}
	var left []geom.Point
	plates := 0
	for _, b := range s.m.Parts[0].Bores {
		if b.Name == "shelf pin" {
			left = append(left, b.At)
		} else if plates++; b.At.X != line {
			t.Errorf("%s at %v", b.Name, b.At)
		}
	}
	if len(left) != len(stays) || plates != 4 {
		t.Fatalf("%d holes for plates, pins left at %v", plates, left)
	}
	for i, p := range stays {
		if left[i] != p {
			t.Errorf("the pin at %v went, one at %v stayed", p, left[i])
		}
	}
}

// TestHingeHeights: by hand. Marks of 1/2 mm; three more between 80 and 1920:
// 80 + 1840/4 = 540. Of 2001: 80 + 1841/4 = 540.25, to the mark 540.5 from
// either end, and the middle at 1000.5.
func TestHingeHeights(t *testing.T) {
	for _, test := range []struct {
		lo, hi length.Length
		n      int
		want   []length.Length
	}{
		{0, 2000 * millimetre, 5, []length.Length{80 * millimetre, 540 * millimetre, 1000 * millimetre, 1460 * millimetre, 1920 * millimetre}},
		{100 * millimetre, 2101 * millimetre, 5, []length.Length{180 * millimetre, 640_500_000, 1_100_500_000, 1_560_500_000, 2021 * millimetre}},
		{0, 500 * millimetre, 2, []length.Length{80 * millimetre, 420 * millimetre}},
	} {
		have := hingeHeights(geom.Span{Lo: test.lo, Hi: test.hi}, test.n, 80*millimetre, millimetre/2)
		for i := range test.want {
			if have[i] != test.want[i] {
				t.Errorf("%d hinges from %d to %d: %v, want %v", test.n, test.lo, test.hi, have, test.want)
				break
			}
		}
	}
}

// TestHingeTable counts the hinges of doors just within and just beyond each row
// of the table in section 6.12 of SPEC.md, by height and by weight.
func TestHingeTable(t *testing.T) {
	text, err := os.ReadFile("../../SPEC.md")
	if err != nil {
		t.Fatal(err)
	}
	rows := regexp.MustCompile("(?m)^\\| ([2-9]) \\| `(.+)` \\| ([0-9]+) kg \\|$").FindAllStringSubmatch(string(text), -1)
	if len(rows) != 4 || len(rows) != len(hingeRows) {
		t.Fatalf("%d rows", len(rows))
	}
	const wide, low = 600 * millimetre, 500 * millimetre
	for i, row := range rows {
		hinges, _ := strconv.Atoi(row[1])
		kg, _ := strconv.ParseFloat(row[3], 64)
		height, err := length.Parse(row[2], length.Millimetres)
		if err != nil || hinges != i+2 {
			t.Fatalf("%q: %v", row[0], err)
		}
		for _, try := range []struct {
			width, height length.Length
			kg            float64
			want          int
		}{
			{wide, height, 0, hinges},
			{wide, height + 1, 0, hinges + 1},
			{wide, low, kg, hinges},
			{wide, low, kg + 0.001, hinges + 1},
			{2 * wide, low, kg / 2, hinges},
			{2 * wide, low, kg/2 + 0.001, hinges + 1},
			{wide / 2, low, kg + 0.001, hinges + 1}, // a narrow one is not let off
			{wide, 5 * length.Metre, kg, 6},
			{wide, low, 100, 6},
		} {
			if have := hingeCount(try.width, try.height, try.kg); have != try.want {
				t.Errorf("a door %d x %d, %g kg: %d hinges, want %d", try.width, try.height, try.kg, have, try.want)
			}
		}
	}
}
