package water_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// wet is a bar along a wall, in inches. Its sink has its middle 280 from the wall's
// left end and 12.5 from the wall; the bowl hangs to 29. The stub stands out 3, so that
// 9.5 + 3 of the drain's way lead straight away from the wall.
type wet struct {
	along, height float64 // of the stub
	diameter      string
	slope         string
	more          string // further attributes of the drain
	limits        string
}

const straight = 9.5 + 3

func (w wet) text() string {
	return fmt.Sprintf(`
build "wet bar" { unit = "in" }
sheet "ply" {
  size      = [400, 400]
  thickness = 0.75
}
slab "oak" { thickness = 1.5 }
room {
  wall "north" {
    length = 320
    stub "waste" {
      at         = [%.9f, %.9f]
      diameter   = 3.5
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
  cabinet "long" { width = 260 }
  cabinet "basin" { width = 40 }
}
counter "work" {
  over     = run.back
  slab     = slab.oak
  overhang = { front = 1 }
  sink "basin" {
    in         = cabinet.basin
    cut        = { width = 15, depth = 14 }
    from_front = 5.5
  }
}
drain "waste" {
  from     = sink.basin
  to       = stub.waste
  diameter = %s
  slope    = %s
  %s
}
limits {
  %s
}
`, w.along, w.height, w.diameter, w.slope, w.more, w.limits)
}

// found lists what is found of a bar.
func (w wet) found(t rapid.TB) finding.List {
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(w.text())}})
	if findings.HasErrors() {
		t.Fatalf("%v\n%s", findings, w.text())
	}
	_, findings = compile.Check(src)
	if findings.HasErrors() {
		t.Fatalf("%v\n%s", findings, w.text())
	}
	return findings
}

func has(findings finding.List, slug string) bool {
	return slices.ContainsFunc(findings, func(f finding.Finding) bool { return f.Slug == slug })
}

// TestTrapArmsOfTheCodes holds the longest arms to the tables as they are published:
// IRC table P3105.1 in feet, UPC table 1002.2 in inches (trade-facts, section 6).
func TestTrapArmsOfTheCodes(t *testing.T) {
	for _, row := range []struct {
		size, irc, upc float64
		outside        string
	}{
		{1.25, 5 * 12, 30, "1.66"},
		{1.5, 6 * 12, 42, "1.9"},
		{2, 8 * 12, 60, "2.375"},
		{3, 12 * 12, 72, "3.5"},
	} {
		for code, longest := range map[string]float64{"irc": row.irc, "upc": row.upc} {
			for _, over := range []float64{0, 1.0 / 32} {
				x := longest + over + 3*row.size - straight
				w := wet{along: 280 - x, height: 15, diameter: row.outside, slope: "0.0208", more: fmt.Sprintf("size = %g", row.size), limits: fmt.Sprintf("plumbing = %q", code)}
				if got := has(w.found(t), "trap-arm-too-long"); got != (over > 0) {
					t.Errorf("%s, trap of %g in, an arm of %g in: found too long: %v", code, row.size, longest+over, got)
				}
			}
		}
	}
}

// TestTrapArmOfOneDiameter is the worked example 11 of trade-facts: 6 ft at 1/4 in to the
// foot fall 1.5 in, one diameter, and just pass (IRC P3105). Any steeper does not.
func TestTrapArmOfOneDiameter(t *testing.T) {
	for slope, want := range map[string]bool{"1/4/12": false, "0.2501/12": true} {
		w := wet{along: 280 - (6*12 + 4.5 - straight), height: 15, diameter: "1.9", slope: slope}
		findings := w.found(t)
		if got := has(findings, "trap-arm-falls-too-far"); got != want {
			t.Errorf("a slope of %s falls too far: %v", slope, got)
		}
		for _, slug := range []string{"drain-too-flat", "trap-arm-too-long"} {
			if has(findings, slug) {
				t.Errorf("a slope of %s: %s", slope, slug)
			}
		}
	}
}

// TestPipeIsSoldAs holds outside diameters to ASTM D1785, table 1, in inches and in
// millimetres as they are printed (trade-facts, section 6). What is no such pipe is tube
// of its own diameter.
func TestPipeIsSoldAs(t *testing.T) {
	for outside, size := range map[string]string{
		"1.660": "1 1/4 in", `"42.16mm"`: "1 1/4 in",
		"1.900": "1 1/2 in", `"48.26mm"`: "1 1/2 in",
		"2.375": "2 in", `"60.32mm"`: "2 in",
		"3.5": "3 in", "4.5": "4 in", // from memory
		"1.5": "1 1/2 in", "1.25": "1 1/4 in",
	} {
		findings := wet{along: 270, height: 18, diameter: outside, slope: "0.0208", limits: "trap_size = 5"}.found(t)
		i := slices.IndexFunc(findings, func(f finding.Finding) bool { return f.Slug == "trap-too-small" })
		if i < 0 || !strings.Contains(findings[i].Text, `is of `+size+`, but`) {
			t.Errorf("a pipe %s across is not taken for %s: %v", outside, size, findings)
		}
	}
}

// TestSlopesOfTheCode holds sizes on both sides of 2 1/2 in to IRC P3005.3.
func TestSlopesOfTheCode(t *testing.T) {
	for _, c := range []struct {
		size, slope string
		flat        bool
	}{
		{"2.5", "1/4/12", false}, {"2.5", "1/8/12", true}, {"3", "1/8/12", false}, {"3", "1/16/12", true},
	} {
		w := wet{along: 250, height: 15, diameter: "3.5", slope: c.slope, more: "size = " + c.size}
		if got := has(w.found(t), "drain-too-flat"); got != c.flat {
			t.Errorf("%s in at %s is too flat: %v", c.size, c.slope, got)
		}
	}
}

// TestWaterRunsDown walks the pipe in short steps from the stub back to its trap,
// rising with its slope, and asks at the trap whether what the rules say is so.
func TestWaterRunsDown(t *testing.T) {
	const step, near = 1.0 / 64, 1e-3
	rapid.Check(t, func(t *rapid.T) {
		across := float64(rapid.IntRange(0, 60*64).Draw(t, "across")) * step
		slope := float64(rapid.IntRange(50, 1500).Draw(t, "slope")) / 10000
		end := across + straight - 3*1.5                                // its own bend takes 4.5 of the way
		aim := rapid.SampledFrom([]float64{25, 15, 9.4}).Draw(t, "aim") // both limits of the level at the trap, and one between
		height := max(2, math.Round(32*(aim-slope*end))/32+float64(rapid.IntRange(-64, 64).Draw(t, "off"))/32)
		w := wet{along: 280 - across, height: height, diameter: "1.9", slope: fmt.Sprintf("%.4f", slope)}
		findings := w.found(t)

		level := height
		for way := 0.0; way+step <= end+near; way += step {
			level += slope * step
		}
		holds := func(slug string, lack float64) {
			if math.Abs(lack) > near && has(findings, slug) != (lack > 0) {
				t.Fatalf("%s: it lacks %.4f in\n%s", slug, lack, w.text())
			}
		}
		holds("stub-too-high", level+4-29)
		holds("stub-too-low", max(4.75-(level-0.75-2-1.9), 29-(level-0.75)-24))
		holds("trap-arm-too-long", end-72)
		if slope >= 0.0208 {
			holds("trap-arm-falls-too-far", level-height-1.5)
		}
		if got := has(findings, "drain-too-flat"); got != (slope < 0.0208) {
			t.Fatalf("a slope of %g is too flat: %v", slope, got)
		}
	})
}
