package solve_test

import (
	"bytes"
	"fmt"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// solved reads and solves a description that must have no errors.
func solved(t interface {
	Helper()
	Fatalf(string, ...any)
}, files ...source.File) (*model.Model, finding.List) {
	t.Helper()
	src, findings := lang.Read(files)
	if !findings.HasErrors() {
		solution := solve.Solve(src)
		findings = append(findings, solution.Findings...)
		if !findings.HasErrors() {
			return solution.Model, findings
		}
	}
	findings.Sort()
	var out bytes.Buffer
	if err := finding.Render(&out, findings, src.Files, finding.Style{}); err != nil {
		t.Fatalf("%v", err)
	}
	t.Fatalf("the description has errors:\n%s", out.String())
	return nil, nil
}

// hole is an opening by its measures: of a rectangle or a slot its edges, of a
// round hole its centre. radius is 0 where there is nothing round.
type hole struct {
	part, kind, name string
	at               [4]length.Length // x, x, y, y; of a round hole x, x, y, y of its centre
	radius           length.Length
	corner           length.Length // radius of its corners
	bores            string        // "6mm at 3mm 3mm, …"
}

func (h hole) String() string {
	mm := func(l length.Length) string { return l.Decimal(length.Millimetres, 6) + "mm" }
	return fmt.Sprintf("%s: %s for %s, x %s to %s, y %s to %s, radius %s, corners %s, bores %s", h.part, h.kind, h.name,
		mm(h.at[0]), mm(h.at[1]), mm(h.at[2]), mm(h.at[3]), mm(h.radius), mm(h.corner), h.bores)
}

func holesOf(m *model.Model) []hole {
	var out []hole
	for _, p := range m.Parts {
		for _, o := range p.Openings {
			b := o.Shape.Bounds()
			h := hole{part: p.ID, kind: "hole", name: o.Name, at: [4]length.Length{b.X.Lo, b.X.Hi, b.Y.Lo, b.Y.Hi}}
			if o.Notch {
				h.kind = "notch"
			}
			if centre, radius, ok := o.Shape.Circle(); ok {
				h.kind, h.at, h.radius = "round hole", [4]length.Length{centre.X, centre.X, centre.Y, centre.Y}, radius
			}
			for i, v := range o.Shape {
				radius := length.Length(0)
				if v.Bulge != 0 {
					radius = length.Length(math.Round(geom.ArcOf(v, o.Shape[(i+1)%len(o.Shape)].Point).R))
				}
				switch {
				case h.kind == "notch" && v.Bulge == 1:
					h.kind, h.radius = "slot", radius
				case v.Bulge != 0 && math.Abs(v.Bulge) != 1:
					h.corner = radius
				}
			}
			h.bores = boresOf(o.Bit, o.Corners)
			out = append(out, h)
		}
	}
	return out
}

func boresOf(bit length.Length, centres []geom.Point) string {
	if len(centres) == 0 {
		return ""
	}
	at := make([]string, len(centres))
	for i, c := range centres {
		at[i] = fmt.Sprint(int64(c.X), " ", int64(c.Y))
	}
	return fmt.Sprint(int64(bit), " at ", strings.Join(at, ", "))
}

var (
	edges  = regexp.MustCompile(`^(\S+): (hole|notch|slot) for (.+), x (.+) to (.+), y (.+) to (.+?)(?:, radius (.+?))?(?:, corners (.+?))?(?:, bores (.+?) at (.+))?$`)
	centre = regexp.MustCompile(`^(\S+): (round hole) for (.+), centre x (.+), y (.+), radius (.+)$`)
)

// TestOpenings compares openings with positions that were worked out by hand.
// The working stands above each description.
func TestOpenings(t *testing.T) {
	paths, err := filepath.Glob("../../testdata/openings/*.txtar")
	if err != nil || len(paths) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, path := range paths {
		t.Run(strings.TrimSuffix(filepath.Base(path), ".txtar"), func(t *testing.T) {
			a, err := txtar.ParseFile(path)
			if err != nil {
				t.Fatal(err)
			}
			if len(a.Comment) < 100 || len(a.Files) != 2 || a.Files[0].Name != "bar.hcl" || a.Files[1].Name != "want" {
				t.Fatal("a case has its working, then bar.hcl and want")
			}
			m, _ := solved(t, source.File{Name: "bar.hcl", Text: a.Files[0].Data})
			want, within := wantedHoles(t, string(a.Files[1].Data))
			got := holesOf(m)
			for _, h := range want {
				i := slices.IndexFunc(got, func(g hole) bool { return g.near(h, within) })
				if i < 0 {
					t.Errorf("missing %v", h)
					continue
				}
				got = slices.Delete(got, i, i+1)
			}
			for _, h := range got {
				t.Errorf("not wanted: %v", h)
			}
		})
	}
}

func (h hole) near(o hole, within length.Length) bool {
	for i := range h.at {
		if d := h.at[i] - o.at[i]; d > within || d < -within {
			return false
		}
	}
	return h.part == o.part && h.kind == o.kind && h.name == o.name && h.radius == o.radius && h.corner == o.corner && h.bores == o.bores
}

func wantedHoles(t *testing.T, text string) (want []hole, within length.Length) {
	t.Helper()
	read := func(text string) length.Length {
		l, err := length.Parse(text, length.Millimetres)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		return l
	}
	for line := range strings.SplitSeq(strings.TrimSpace(text), "\n") {
		if rest, ok := strings.CutPrefix(line, "within "); ok {
			within = read(rest)
		} else if f := edges.FindStringSubmatch(line); f != nil {
			h := hole{part: f[1], kind: f[2], name: f[3], at: [4]length.Length{read(f[4]), read(f[5]), read(f[6]), read(f[7])}}
			for i, r := range []*length.Length{&h.radius, &h.corner} {
				if f[8+i] != "" {
					*r = read(f[8+i])
				}
			}
			var centres []geom.Point
			for at := range strings.SplitSeq(f[11], "mm, ") {
				if x, y, ok := strings.Cut(strings.TrimSuffix(at, "mm"), "mm "); ok {
					centres = append(centres, geom.Point{X: read(x + "mm"), Y: read(y + "mm")})
				}
			}
			if f[10] != "" {
				h.bores = boresOf(read(f[10]), centres)
			}
			want = append(want, h)
		} else if f := centre.FindStringSubmatch(line); f != nil {
			x, y := read(f[4]), read(f[5])
			want = append(want, hole{part: f[1], kind: f[2], name: f[3], at: [4]length.Length{x, x, y, y}, radius: read(f[6])})
		} else if line != "none" {
			t.Fatalf("cannot read %q", line)
		}
	}
	return want, within
}
