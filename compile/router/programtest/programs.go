// Package programtest draws programs of recesses for tests, also such as come out of whole
// descriptions.
package programtest

import (
	"fmt"
	"math/rand/v2"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang"
	"barwright/lang/source"
)

// Drawn is how many programs Programs returns.
const Drawn = 300

// Programs returns programs of recesses as shops cut them, always the same ones.
// Every third is open at both ends, relieved, narrower than 1.2 bits, or indexed, in
// turn. An indexed one comes out of a description: the plate of a knee wall, longer
// than the machine's travel, in its second setup or a later one.
func Programs(t testing.TB) []*model.Program {
	t.Helper()
	out := make([]*model.Program, Drawn)
	for i := range out {
		if kindOf(i) == indexed {
			out[i] = movedOn(t, i)
			continue
		}
		p, refusal := router.Plan(work(i))
		if refusal != nil {
			t.Fatalf("%d: %+v", i, refusal)
		}
		out[i] = &p
	}
	return out
}

// Special reports whether a program is one of the hard third.
func Special(p *model.Program) bool {
	size := p.Shape.Bounds()
	x, y := size.X.Size(), size.Y.Size()
	for _, e := range p.Open {
		if across := e == model.LeftEdge || e == model.RightEdge; across == (x > y) {
			return true
		}
	}
	return len(p.Reliefs) > 0 || p.Setup > 1 || 5*min(x, y) < 6*p.Tool.Diameter
}

// Example returns the programs of a description in the folder examples.
func Example(t testing.TB, name string) []model.Program {
	t.Helper()
	return compiled(t, read(t, name))
}

var bench = regexp.MustCompile(`(?s)router "bench" \{.*?\n\}`)

// movedOn draws a router for an example whose plate is 54 in long.
func movedOn(t testing.TB, number int) *model.Program {
	t.Helper()
	d := drawer{rand.New(rand.NewPCG(uint64(number), 7))}
	files := read(t, "steps/5")
	for i, f := range files {
		files[i].Text = bench.ReplaceAll(f.Text, []byte(d.router()))
	}
	var later []model.Program
	for _, p := range compiled(t, files) {
		if p.Setup > 1 {
			later = append(later, p)
		}
	}
	if len(later) == 0 {
		t.Fatalf("%d: no recess in a later setup", number)
	}
	return &later[d.IntN(len(later))]
}

func (d drawer) router() string {
	var b strings.Builder
	tool := d.tool()
	fmt.Fprintf(&b, "router \"bench\" {\n")
	set := func(name string, value any) { fmt.Fprintf(&b, "  %s = %v\n", name, value) }
	mm := func(name string, l router.Length) { set(name, fmt.Sprintf(`"%.4fmm"`, l.MM())) }
	mm("bit", pick[router.Length](d, 4, 6, 8, 10, 12)*inch/16)
	mm("feed", tool.Feed)
	mm("floor", tool.Floor)
	mm("clearance", tool.Clearance)
	mm("chord", tool.Dialect.Chord)
	set("ramp", tool.RampDegrees)
	set("entry", fmt.Sprintf("%q", tool.Entry))
	set("passes", fmt.Sprintf("%q", tool.Passes))
	set("relief", pick(d, `"none"`, `"diagonal"`))
	set("datum", pick(d, `"end"`, `"last"`))
	set("travel", `{ x = "24in" }`)
	set("unit", pick(d, `"mm"`, `"in"`))
	set("decimals", 4+d.IntN(3))
	set("arcs", pick(d, `"centre"`, `"chords"`))
	set("comments", fmt.Sprintf("%q", tool.Dialect.Comments))
	set("line_numbers", tool.Dialect.Numbers)
	set("percent", tool.Dialect.Percent)
	set("change", tool.Dialect.Change)
	b.WriteString("}")
	return b.String()
}

func read(t testing.TB, example string) source.Files {
	t.Helper()
	files := edittest.Folder(t, filepath.Join(edittest.Root(t), "examples", filepath.FromSlash(example)))
	if len(files) == 0 {
		t.Fatalf("no example %s", example)
	}
	return files
}

func compiled(t testing.TB, files []source.File) []model.Program {
	t.Helper()
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		t.Fatalf("%v", findings)
	}
	m, findings := compile.Check(src)
	if m == nil {
		t.Fatalf("%v", findings)
	}
	return m.Programs
}
