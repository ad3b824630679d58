package dxftest

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"barwright/compile/edittest"
)

// python is the interpreter that has the ezdxf library (Debian python3-ezdxf).
const python = "/usr/bin/python3"

// Result is what the inspector says of one file.
type Result struct {
	File        string      `json:"file"`
	OK          bool        `json:"ok"` // neither problems nor warnings
	Version     string      `json:"version"`
	Units       string      `json:"units"`
	LineEnding  string      `json:"line_ending"`
	AuditErrors *int        `json:"audit_errors"` // nil where the file did not load
	AuditFixes  *int        `json:"audit_fixes"`
	Problems    []string    `json:"problems"`
	Warnings    []string    `json:"warnings"`
	Contours    []Inspected `json:"contours"` // closed ones, in the order of the file
	BoxCut      []float64   `json:"bbox_cut"` // mm: least x, least y, greatest x, greatest y
	Texts       []struct {
		Layer, Text string
	} `json:"texts"`
}

// Inspected is a closed contour as the inspector computes it, arcs exact.
type Inspected struct {
	Layer       string    `json:"layer"`
	Area        float64   `json:"area"`        // mm², never negative
	Orientation string    `json:"orientation"` // "ccw", "cw"
	Segments    int       `json:"segments"`
	Arcs        int       `json:"arcs"`
	Box         []float64 `json:"bbox"`
}

// Inspect runs shared/tools/inspect_dxf.py over files: a scan of the raw tags
// against the published reference, python3-ezdxf's strict loader and auditor,
// and the checks of contours for a cutting table. Layers NOTE, MARK and SHEET are not
// cut; the unit must be mm; warnings count. It skips the test, aloud, where
// the program is missing, and fails it where BARWRIGHT_OUTSIDE is "required".
func Inspect(t testing.TB, files []string) []Result {
	t.Helper()
	return InspectIn(t, "mm", files)
}

// InspectIn does so for files in a unit, "mm" or "inch", in which areas and boxes are.
func InspectIn(t testing.TB, unit string, files []string) []Result {
	t.Helper()
	return inspect(t, files, "--annotation-layers", "NOTE,MARK,SHEET,SCRIBE", "--units", unit, "--strict")
}

func inspect(t testing.TB, files []string, options ...string) []Result {
	t.Helper()
	args := slices.Concat([]string{inspector(t)}, options, []string{"--"}, files)
	cmd := exec.Command(python, args...)
	var stdout, stderr bytes.Buffer
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	runErr := cmd.Run()

	var results []Result
	ok := true
	for in := json.NewDecoder(&stdout); in.More(); {
		var r Result
		if err := in.Decode(&r); err != nil {
			t.Fatalf("inspector's answer: %v\n%s", err, stderr.Bytes())
		}
		results = append(results, r)
		ok = ok && len(r.Problems) == 0 && (r.OK || !slices.Contains(options, "--strict"))
	}
	if len(results) != len(files) || ok != (runErr == nil) {
		t.Fatalf("inspector: %d answers for %d files, %v\n%s", len(results), len(files), runErr, stderr.Bytes())
	}
	return results
}

func inspector(t testing.TB) string {
	t.Helper()
	script := filepath.Join(edittest.Root(t), "..", "shared", "tools", "inspect_dxf.py")
	if _, err := os.Stat(script); err != nil {
		missing(t, "shared/tools/inspect_dxf.py is not beside the project")
	}
	Python(t)
	return script
}

// Python returns the interpreter that has the ezdxf library. Where it is missing the
// test is skipped, or fails, as in Inspect.
func Python(t testing.TB) string {
	t.Helper()
	if err := exec.Command(python, "-c", "import ezdxf").Run(); err != nil {
		missing(t, python+" with the ezdxf library is not installed")
	}
	return python
}

func missing(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal("outside check required, but", what)
	}
	t.Skip("OUTSIDE CHECK SKIPPED:", what)
}
