package solve_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
	"barwright/lang/source"
)

const millimetre = length.Millimetre

// read writes readings: of a wall along, height, off; of the floor x, y, below.
func read(kind string, points ...[3]float64) string {
	var out strings.Builder
	for _, p := range points {
		if kind == "floor" {
			fmt.Fprintf(&out, "    reading { point = [%v, %v, %v] }\n", p[0], p[1], p[2])
		} else {
			fmt.Fprintf(&out, "    reading {\n      at  = [%v, %v]\n      off = %v\n    }\n", p[0], p[1], p[2])
		}
	}
	return out.String()
}

// surveyedRoom is in millimetres, every wall and the floor read as told: a run of two boxes
// of 600 and a strip of 100 along the north wall, whose other end has an end panel, and a run
// of two boxes that stands out from the east wall, with a knee wall that has skins and a corner.
func surveyedRoom(corner float64, north, east, floor string) source.File {
	return source.File{Name: "bar.hcl", Text: []byte(fmt.Sprintf(`
build "bar" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
stick "stud" {
  thickness = 38
  width     = 89
  lengths   = [4800]
}
screw "wall" {
  diameter = 5
  length   = 80
  per_box  = 100
}
carcass "base" {
  height   = 870
  depth    = 560
  board    = sheet.ply
  back     = { board = sheet.ply }
  toe_kick = { height = 100, setback = 50 }
}
room {
  wall "north" {
    length = 1600
    corner = %v
    studs  = { first = 100, spacing = 400 }
%s  }
  wall "east" {
    length = 3200
%s  }
  floor {
%s  }
}
run "back" {
  along       = wall.north
  from        = "right"
  carcass     = carcass.base
  wall_screws = screw.wall
  cabinet "a" { width = 600 }
  cabinet "b" { width = 600 }
  filler "end" {
    width  = 100
    scribe = 10
  }
  end_panel "gable" {
    end    = "left"
    board  = sheet.ply
    scribe = 8
  }
}
run "front" {
  out_from = wall.east
  at       = 1800
  carcass  = carcass.base
  cabinet "c" { width = 600 }
  cabinet "d" { width = 600 }
}
knee_wall "bar" {
  behind = run.front
  lumber = stick.stud
  top    = 1050
  skin "room" {
    face   = "room"
    board  = sheet.ply
    scribe = 7
  }
  skin "end" {
    face  = "right"
    board = sheet.ply
  }
  corner "end" {
    end   = "right"
    board = sheet.ply
    width = 60
  }
}
`, corner, north, east, floor))}
}

// onFace is where a point of a part's drawn face is: in the room's plan, and up.
func onFace(p *model.Part, x, y length.Length) (geom.Point, length.Length) {
	at := p.Placement
	pick := func(s geom.Span, high bool) length.Length {
		if high {
			return s.Hi
		}
		return s.Lo
	}
	place := [2]length.Length{}
	side := at.Box.Along(at.X.Axis)
	place[at.X.Axis] = side.Lo + x
	if at.X.Neg {
		place[at.X.Axis] = side.Hi - x
	}
	place[at.Out.Axis] = pick(at.Box.Along(at.Out.Axis), !at.Out.Neg)
	return at.Frame.At(place[geom.U], place[geom.V]), at.Box.Z.Lo + y
}

// checkScribes holds every point of every line, at its bends and between them, to the floor
// or the wall that it is drawn for, and to the blank. It returns how many edges there are.
func checkScribes(t *rapid.T, m *model.Model, off func(wall *model.Wall, along, height length.Length) float64, floor func(at geom.Point) float64) int {
	edges := 0
	for i := range m.Parts {
		p := &m.Parts[i]
		blank := p.Outline.Bounds()
		for _, s := range p.Scribes {
			edges++
			over := 0.0
			if p.BlockKind() == "skin" || p.BlockKind() == "corner" {
				over = 6e6 // above_floor
			}
			for n, to := range s.Line[1:] {
				from := s.Line[n]
				for k := range 8 {
					x := from.X + (to.X-from.X)*length.Length(k)/7
					y := from.Y + (to.Y-from.Y)*length.Length(k)/7
					if !blank.X.Holds(x) || !blank.Y.Holds(y) {
						t.Fatalf("%s, %s edge: the line at %d, %d is outside the blank %v", p.ID, s.Edge, x, y, blank)
					}
					at, z := onFace(p, x, y)
					miss := float64(z) - over
					if s.To == model.ToFloor {
						miss -= floor(at)
					} else {
						wall := wallNamed(m, s.To)
						along, out := wall.Frame.Local(at)
						miss = float64(out) - off(wall, along, z)
					}
					if math.Abs(miss) > float64(length.Micrometre) {
						t.Fatalf("%s, %s edge: the line is %.0f nm off %s at %d, %d", p.ID, s.Edge, miss, s.To, x, y)
					}
				}
			}
			for _, at := range s.Stations {
				if at.Cut < 0 || at.Keep <= 0 {
					t.Fatalf("%s, %s edge: station %+v", p.ID, s.Edge, at)
				}
			}
		}
	}
	return edges
}

func wallNamed(m *model.Model, key string) *model.Wall {
	for i := range m.Room.Walls {
		if "wall."+m.Room.Walls[i].Name == key {
			return &m.Room.Walls[i]
		}
	}
	panic("no " + key)
}

// drawCorners draws tenths of a millimetre for readings at the corners of a stretch.
func drawCorners(t *rapid.T, name string, x, y float64, plane bool) (points [][3]float64) {
	tenth := func(what string, most int) float64 {
		return float64(rapid.IntRange(-most, most).Draw(t, name+what)) / 10
	}
	a, b, c := tenth(" at 0", 60), tenth(" along", 60), tenth(" up", 60)
	for _, at := range [][2]float64{{0, 0}, {1, 0}, {0, 1}, {1, 1}, {0.5, 0.5}, {0.25, 0.5}} {
		value := a + b*at[0] + c*at[1]
		if !plane {
			value = tenth(fmt.Sprint(at), 80)
		}
		points = append(points, [3]float64{x * at[0], y * at[1], math.Round(value*1000) / 1000})
	}
	return points
}

// Every point of a line lies on the floor or the wall within a micrometre, wherever the
// readings are, and corners that are not square.
func TestScribesLieOnWhatWasRead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		corner := float64(rapid.IntRange(870, 940).Draw(t, "corner")) / 10
		floor := drawCorners(t, "floor", 1800, 3200, false)
		for i := range floor {
			floor[i][2] += 1000
		}
		m, _ := solved(t, surveyedRoom(corner, read("wall", drawCorners(t, "north", 1600, 900, false)...),
			read("wall", drawCorners(t, "east", 3200, 1100, false)...), read("floor", floor...)))
		edges := checkScribes(t, m, func(wall *model.Wall, along, height length.Length) float64 {
			off, _ := wall.Face().At(geom.Point{X: along, Y: height})
			return float64(off)
		}, func(at geom.Point) float64 {
			z, _ := m.Room.Floor.Surface().At(at)
			return float64(z)
		})
		if edges < 8 { // filler; end panel twice; skins: two lower edges and one on the wall; two strips of the corner
			t.Fatalf("%d scribed edges", edges)
		}
		checkGaps(t, m)
	})
}

// checkGaps looks at the faces behind the boxes of each run on a grid: the boxes are clear of
// it, and touch it where they are said to.
func checkGaps(t *rapid.T, m *model.Model) {
	for _, r := range m.Setting.Rears {
		for i := range m.Runs {
			run, wall := &m.Runs[i], wallNamed(m, "wall."+r.Wall)
			if run.Name != r.Run || !run.Along {
				continue
			}
			face := wall.Face()
			if touches, _ := face.At(r.At); touches != r.Off {
				t.Fatalf("run %s stands at %d, but the wall at %v", run.Name, r.Off, touches)
			}
			for k := range 400 {
				at := run.Frame.At(run.Length*length.Length(k%20)/19, 0)
				along, out := wall.Frame.Local(at)
				if off, _ := face.At(geom.Point{X: along, Y: run.Height * length.Length(k/20) / 19}); off > out+2 {
					t.Fatalf("run %s: the wall at %d stands %d into the boxes", run.Name, along, off-out)
				}
			}
		}
	}
	for _, g := range m.Setting.Gaps {
		if g.Behind < -2 || g.Gap < g.Behind || g.Shim < 0 {
			t.Fatalf("gap %+v", g)
		}
	}
	if len(m.Setting.Gaps) == 0 {
		t.Fatal("no gaps")
	}
}

// On planes lines are straight, and where they lie is plain arithmetic.
func TestScribesOfPlanes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tenths := func(name string) float64 { return float64(rapid.IntRange(-60, 60).Draw(t, name)) / 10 }
		a, b, c := tenths("a"), tenths("b"), tenths("c") // of the wall: at its left foot, over its length, over 1200 up
		d, e := tenths("d"), tenths("e")                 // of the floor: over 1600 along the first wall, over 3200 out
		wall := func(length float64) string {
			return read("wall", [3]float64{-0, 0, a}, [3]float64{length, 0, a + b}, [3]float64{0, 1200, a + c}, [3]float64{length, 1200, a + b + c})
		}
		m, _ := solved(t, surveyedRoom(90, wall(1600), wall(3200),
			read("floor", [3]float64{-2000, -200, 1000 - 1.25*d - e/16}, [3]float64{2000, -200, 1000 + 1.25*d - e/16}, [3]float64{-2000, 3200, 1000 - 1.25*d + e}, [3]float64{2000, 3200, 1000 + 1.25*d + e})))
		mm := func(l length.Length) float64 { return float64(l) / float64(millimetre) }
		line := mm(m.Room.Floor.Line)
		checkScribes(t, m, func(w *model.Wall, along, height length.Length) float64 {
			x := min(max(mm(along), 0), mm(w.Length))
			y := min(max(mm(height), 0), 1200)
			return (a + b*x/mm(w.Length) + c*y/1200) * float64(millimetre)
		}, func(at geom.Point) float64 {
			return (line - (1000 + d*mm(at.X)/1600 + e*mm(at.Y)/3200)) * float64(millimetre)
		})
		for i := range m.Parts {
			for _, s := range m.Parts[i].Scribes {
				if s.To == model.ToFloor && len(s.Line) != 2 {
					t.Fatalf("%s: a straight floor bends the line: %v", m.Parts[i].ID, s.Line)
				}
			}
		}
	})
}

// A baseboard 12 mm thick stands on a floor that is 8 mm under the datum at its wall: of the end panel, whose blank goes
// 8 mm beyond the wall and the floor, nothing is left under it to be cut out on site.
func TestBaseboardStandsOnTheFloor(t *testing.T) {
	m, _ := solved(t, surveyedRoom(90, "    baseboard = {\n      height    = 80\n      thickness = 12\n      to        = 295\n    }\n", "",
		read("floor", [3]float64{0, 0, 1008}, [3]float64{1600, 0, 1008}, [3]float64{0, 510, 1000}, [3]float64{1600, 510, 1000}, [3]float64{0, 3200, 1000}, [3]float64{1600, 3200, 1000})))
	i := slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.BlockKind() == "end_panel" })
	p := &m.Parts[i]
	low := p.Placement.Blank().X.Hi
	for _, v := range p.Outline {
		if v.Y == 0 {
			low = min(low, v.X)
		}
	}
	if want := (12 + 8) * millimetre; low < want {
		t.Errorf("the panel's lower edge begins %v from its rear: %v", low, p.Outline)
	}
}
