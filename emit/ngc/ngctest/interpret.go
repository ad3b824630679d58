package ngctest

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
)

//go:embed toolpath.js
var toolpath []byte

// Interpret fails the test where a general interpreter of G-code, gcode-toolpath on
// gcode-interpreter (npm), reads another end, box of moves or length of cutting out of
// a text than the Program has. Straight pieces for arcs shorten the length. It skips
// where node or the package is missing (node finds it by NODE_PATH), and fails then
// if BARWRIGHT_OUTSIDE=required.
func Interpret(t testing.TB, text []byte, p *model.Program) {
	t.Helper()
	for _, difference := range Differences(t, text, p) {
		t.Error(difference)
	}
}

// Differences does so for who wants to know what differs.
func Differences(t testing.TB, text []byte, p *model.Program) (out []string) {
	t.Helper()
	if err := exec.Command("node", "-e", "require('gcode-toolpath')").Run(); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatalf("OUTSIDE CHECK MISSING: node with gcode-toolpath: %v", err)
		}
		t.Skipf("OUTSIDE CHECK SKIPPED: node with gcode-toolpath: %v", err)
	}
	dir := t.TempDir()
	script, program := filepath.Join(dir, "toolpath.js"), filepath.Join(dir, "program.ngc")
	write(t, script, toolpath)
	write(t, program, text)
	said, err := exec.Command("node", script, program).CombinedOutput()
	var got struct {
		End [3]float64
		Box struct{ Min, Max [3]float64 }
		Cut float64
	}
	if err == nil {
		err = json.Unmarshal(said, &got)
	}
	if err != nil {
		t.Fatalf("%s: the interpreter says %q: %v", p.Name, said, err)
	}
	near := func(what string, got, want, by float64) {
		if math.Abs(got-want) > by {
			out = append(out, fmt.Sprintf("%s: %s: the interpreter has %.4f, the program %.4f", p.Name, what, got, want))
		}
	}
	last := p.Moves[len(p.Moves)-1]
	for i, want := range [3]float64{0, 0, last.Z.MM()} {
		near(fmt.Sprintf("end, axis %d", i), got.End[i], want, 0.002)
	}
	plan, z := p.Reach()
	slack := 0.002
	if p.Tool.Dialect.Chords {
		slack += p.Tool.Dialect.Chord.MM()
	}
	for i, s := range [...]geom.Span{plan.X, plan.Y, z} {
		if i < 2 { // the last move goes to X0 Y0
			s = s.Union(geom.Span{})
		}
		near(fmt.Sprintf("box, axis %d low", i), got.Box.Min[i], s.Lo.MM(), slack)
		near(fmt.Sprintf("box, axis %d high", i), got.Box.Max[i], s.Hi.MM(), slack)
	}
	near("cut length", got.Cut, p.CutLength.MM(), float64(len(p.Moves))*slack)
	return out
}
