// Package ngctest has router programs judged from outside: by the reader and
// material-removal checker shared/tools/inspect_gcode.py, which stands beside
// the project and shares nothing with it.
package ngctest

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// Tolerances of the outside check, in mm: beside the walls, and in depth.
const (
	sideTolerance  = 0.03
	depthTolerance = 0.01
)

// Inspect fails the test where the checker finds a violation in a program's
// text, a straight plunge, or a box, length or time that the Program tells
// otherwise. It skips where Python or the checker is missing, and fails then
// if BARWRIGHT_OUTSIDE=required.
func Inspect(t testing.TB, text []byte, p *model.Program) {
	t.Helper()
	judge(t, run(t, [][]byte{text}, p)[0], text, p)
}

// Case is a program and its text.
type Case struct {
	Program *model.Program
	Text    []byte
}

// InspectAll does what Inspect does, for many programs at once.
func InspectAll(t testing.TB, cases []Case) {
	t.Helper()
	for i, r := range runAll(t, cases) {
		judge(t, r, cases[i].Text, cases[i].Program)
	}
}

func judge(t testing.TB, r result, text []byte, p *model.Program) {
	t.Helper()
	for _, v := range r.Violations {
		t.Errorf("%s: line %d: %s: %s", p.Name, v.Line, v.Code, v.Message)
	}
	for _, w := range r.Warnings {
		t.Errorf("%s: line %d: warning: %s", p.Name, w.Line, w.Message)
	}
	if r.Plunges != 0 {
		t.Errorf("%s: %d straight plunges", p.Name, r.Plunges)
	}
	if r.Expect.Gouge != 0 || r.Expect.Uncut != 0 || r.Expect.Over != 0 || r.Expect.Unreachable != 0 && len(p.Reliefs) == 0 {
		t.Errorf("%s: gouged %.3f, uncut %.3f, too deep %.3f, out of reach %.3f mm2",
			p.Name, r.Expect.Gouge, r.Expect.Uncut, r.Expect.Over, r.Expect.Unreachable)
	}
	near(t, p.Name+": depth", r.MaxDepth, p.Depth.MM(), 0.001+lastDecimal(p.Tool.Dialect))
	measures(t, r, text, p)
	plan, z := p.Reach()
	for i, s := range [...]geom.Span{plan.X, plan.Y, z} {
		if i < 2 { // the last move goes to X0 Y0
			s = s.Union(geom.Span{})
		}
		near(t, fmt.Sprintf("%s: box, axis %d low", p.Name, i), r.Box.Min[i], s.Lo.MM(), 0.002)
		near(t, fmt.Sprintf("%s: box, axis %d high", p.Name, i), r.Box.Max[i], s.Hi.MM(), 0.002)
	}
	if p.Tool.Dialect.Chords {
		return // the planner counts arcs
	}
	near(t, p.Name+": cut length", r.CutLength, p.CutLength.MM(), 0.001*float64(len(p.Moves)))
	near(t, p.Name+": seconds", r.Time.Stopping-r.Time.Dwell, p.Seconds, 0.07)
}

// lastDecimal is half a step of what a dialect writes, in mm.
func lastDecimal(d model.Dialect) float64 {
	unit := 1.0
	if d.Inch {
		unit = 25.4
	}
	return unit / math.Pow10(d.Decimals) / 2
}

// MaxBite returns the deepest bite that the checker sees, in mm, against all
// that was cut before.
func MaxBite(t testing.TB, text []byte, p *model.Program) float64 {
	t.Helper()
	return run(t, [][]byte{text}, p)[0].MaxStepdown
}

// Violations returns the code of the first violation that the checker finds in
// each text, or "", with all of them judged as the text of p.
func Violations(t testing.TB, texts [][]byte, p *model.Program) []string {
	t.Helper()
	codes := make([]string, len(texts))
	for i, r := range run(t, texts, p) {
		if len(r.Violations) > 0 {
			codes[i] = r.Violations[0].Code
		}
	}
	return codes
}

type result struct {
	Violations []struct {
		Line          int
		Code, Message string
	}
	Warnings []struct {
		Line    int
		Message string
	}
	Plunges     int                           `json:"straight_plunges"`
	MaxDepth    float64                       `json:"max_depth"`
	MaxStepdown float64                       `json:"max_stepdown"`
	CutLength   float64                       `json:"cut_length"`
	AirLength   float64                       `json:"rapid_length"`
	Removed     float64                       `json:"removed_volume"`
	Box         struct{ Min, Max [3]float64 } `json:"bbox_all"`
	Time        struct {
		Stopping float64 `json:"stop_at_every_move"`
		Dwell    float64
	} `json:"estimated_time"`
	Expect struct {
		Gouge       float64 `json:"gouge_area"`
		Over        float64 `json:"overdepth_area"`
		Uncut       float64 `json:"uncut_area"`
		Unreachable float64 `json:"unreachable_area"`
	}
}

// measures compares what is simulated with what the checker tells. Its cells are
// 0.25 mm wide: at the border of what is cut, half of one may count too much or too
// little, over the depth; one that reaches past the wood's far edges does not count.
func measures(t testing.TB, r result, text []byte, p *model.Program) {
	t.Helper()
	got, err := replay.Measure(text, p)
	if err != nil {
		t.Errorf("%s: %v", p.Name, err)
	}
	near(t, p.Name+": simulated cut length", r.CutLength, got.Cut, 0.01)
	near(t, p.Name+": simulated air length", r.AirLength, got.Air, 0.01)
	near(t, p.Name+": simulated seconds", r.Time.Stopping, got.Seconds, 0.02)
	size := p.Shape.Bounds()
	border := 2*(size.X.Size()+size.Y.Size()).MM() + float64(len(p.Reliefs))*math.Pi*p.Tool.Diameter.MM()
	near(t, p.Name+": wood removed", r.Removed, got.Removed, 0.25*border*p.Depth.MM())
}

// run has the checker judge texts, all of them as the text of p.
func run(t testing.TB, texts [][]byte, p *model.Program) []result {
	t.Helper()
	cases := make([]Case, len(texts))
	for i, text := range texts {
		cases[i] = Case{p, text}
	}
	return runAll(t, cases)
}

// driver runs the checker once for each line of its input, which holds the arguments.
const driver = `
import json, sys
sys.path.insert(0, sys.argv[1])
import inspect_gcode
for line in sys.stdin:
    inspect_gcode.main(json.loads(line))
`

// runAll has the checker judge texts, each as that of its program.
func runAll(t testing.TB, cases []Case) []result {
	t.Helper()
	python, script := tools(t)
	dir := t.TempDir()
	var calls bytes.Buffer
	for i, c := range cases {
		program, expect := filepath.Join(dir, fmt.Sprintf("%d.ngc", i)), filepath.Join(dir, fmt.Sprintf("%d.json", i))
		write(t, program, c.Text)
		write(t, expect, pockets(t, c.Program))
		if err := json.NewEncoder(&calls).Encode(arguments(c.Program, program, expect)); err != nil {
			t.Fatal(err)
		}
	}
	checker := exec.Command(python, "-c", driver, filepath.Dir(script))
	checker.Stdin = &calls
	out, failed := checker.Output()
	var results []result
	for _, line := range bytes.Split(bytes.TrimSpace(out), []byte("\n")) {
		var r result
		if err := json.Unmarshal(line, &r); err != nil {
			t.Fatalf("the checker says %q: %v, %v", out, err, failed)
		}
		results = append(results, r)
	}
	if len(results) != len(cases) || failed != nil {
		t.Fatalf("the checker judges %d of %d programs, and ends with %v", len(results), len(cases), failed)
	}
	return results
}

// arguments are those of the checker for one program.
func arguments(p *model.Program, program, expect string) []string {
	mm := func(l model.Length) string { return fmt.Sprintf("%.6f", l.MM()) }
	dialect := "strict"
	if p.Tool.Dialect.Comments == "semicolon" {
		dialect = "extended"
	}
	return []string{
		"--dialect", dialect, "--tool-diameter", mm(p.Tool.Diameter),
		"--stock=" + mm(p.Stock.X.Lo) + "," + mm(p.Stock.Y.Lo) + "," + mm(p.Stock.X.Hi) + "," + mm(p.Stock.Y.Hi) + "," + mm(p.Thick),
		"--clearance", fmt.Sprintf("%.4f", p.Tool.Clearance.MM()-0.002), // less the last decimal
		"--rapid-rate", mm(p.Tool.Rapid), "--accel", fmt.Sprint(p.Tool.Accelerate),
		"--expect", expect, program,
	}
}

// pockets writes the checker's expectation: the recess with the reliefs that are
// allowed beyond it, and at open sides so much of the air beyond the wood that the
// bit reaches all of the mouth.
func pockets(t testing.TB, p *model.Program) []byte {
	t.Helper()
	var polygon [][3]float64
	add := func(q geom.Point, bulge float64) {
		polygon = append(polygon, [3]float64{q.X.MM(), q.Y.MM(), bulge})
	}
	n := len(p.Shape)
	for i, v := range p.Shape {
		in := outward(p, p.Shape[(i+n-1)%n], v.Point)
		out := outward(p, v, p.Shape[(i+1)%n].Point)
		none := geom.Point{}
		if in != none {
			add(v.Add(in), 0)
		}
		if in != none && out != none {
			add(v.Add(in).Add(out), 0)
		} else {
			add(v.Point, v.Bulge)
		}
		if out != none {
			add(v.Add(out), 0)
		}
	}
	allow := [][][3]float64{}
	for _, c := range p.Reliefs {
		x, y, r := c.X.MM(), c.Y.MM(), p.Tool.Diameter.MM()/2
		allow = append(allow, [][3]float64{{x + r, y, 1}, {x - r, y, 1}})
	}
	text, err := json.Marshal(map[string]any{
		"tolerance": sideTolerance, "depth_tolerance": depthTolerance,
		"pockets": []any{map[string]any{"name": p.Name, "depth": p.Depth.MM(), "polygon": polygon, "allow": allow}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// outward returns how far the expectation moves an edge of the recess out: two
// bits at an open side, not at all elsewhere.
func outward(p *model.Program, a geom.Vertex, b geom.Point) geom.Point {
	bounds, far := p.Shape.Bounds(), 2*p.Tool.Diameter
	for _, e := range p.Open {
		var onIt bool
		var out geom.Point
		switch e {
		case model.Bottom:
			onIt, out = a.Y == bounds.Y.Lo && b.Y == a.Y, geom.Point{Y: -far}
		case model.RightEdge:
			onIt, out = a.X == bounds.X.Hi && b.X == a.X, geom.Point{X: far}
		case model.Top:
			onIt, out = a.Y == bounds.Y.Hi && b.Y == a.Y, geom.Point{Y: far}
		case model.LeftEdge:
			onIt, out = a.X == bounds.X.Lo && b.X == a.X, geom.Point{X: -far}
		}
		if onIt && a.Bulge == 0 {
			return out
		}
	}
	return geom.Point{}
}

func near(t testing.TB, what string, got, want, by float64) {
	t.Helper()
	if math.Abs(got-want) > by {
		t.Errorf("%s: the checker has %.4f, the program %.4f", what, got, want)
	}
}

func write(t testing.TB, path string, text []byte) {
	t.Helper()
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
}

// tools finds Python and the checker.
func tools(t testing.TB) (python, script string) {
	t.Helper()
	python, err := exec.LookPath("python3")
	if err == nil {
		script = filepath.Join(edittest.Root(t), "..", "shared", "tools", "inspect_gcode.py")
		_, err = os.Stat(script)
	}
	if err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatalf("OUTSIDE CHECK MISSING: %v", err)
		}
		t.Skipf("OUTSIDE CHECK SKIPPED: %v", err)
	}
	return python, script
}
