package layout

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// The published instances lie beside the project, in shared/bench; its README
// names their origin (Berkey and Wang 1987, Martello and Vigo 1998, and
// collections of cutting and bin packing instances). No kerf, no trim.
func benchFolder(t *testing.T) string {
	t.Helper()
	root, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(root, "go.mod")); err == nil || root == filepath.Dir(root) {
			break
		}
		root = filepath.Dir(root)
	}
	dir := filepath.Join(root, "..", "shared", "bench")
	if _, err := os.Stat(dir); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("the published instances are missing:", err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: the published instances are missing:", err)
	}
	return dir
}

func rows(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil || len(all) == 0 {
		t.Fatal(path, err)
	}
	return all[1:]
}

func number(t *testing.T, s string) int64 {
	t.Helper()
	n, err := strconv.ParseInt(s, 10, 64)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// published are the least and the best known counts, by instance and variant.
type published struct{ lower, best int }

func bounds(t *testing.T, dir string) map[string]published {
	t.Helper()
	out := map[string]published{}
	for _, r := range rows(t, filepath.Join(dir, "bounds.csv")) {
		out[r[0]+" "+r[3]] = published{int(number(t, r[1])), int(number(t, r[2]))}
	}
	return out
}

// Against published figures: no lower bound above the best known count, no
// layout below the published lower bound.
func TestSheetsAgainstPublishedInstances(t *testing.T) {
	dir := benchFolder(t)
	known := bounds(t, dir)
	files, _ := filepath.Glob(filepath.Join(dir, "c*.csv"))
	for _, fixed := range []bool{true, false} {
		variant, grain := "2BP|R|", model.GrainNone
		if fixed {
			variant, grain = "2BP|O|", model.GrainX
		}
		seen, bought, least, best := 0, 0, 0, 0
		for _, file := range files {
			for name, in := range instances(t, file) {
				if len(in.parts) > 300 { // a dozen, and no bar is so large
					continue
				}
				stock := model.Stock{Sheets: []model.Sheet{{Name: "sheet", Length: in.bin[0], Width: in.bin[1], Grain: true}}}
				for i := range in.parts {
					in.parts[i].Stock, in.parts[i].Grain = "sheet", grain
				}
				l := lay(t, in.parts, stock, model.Saw{})[0]
				free, guillotine := known[name+" "+variant+"F"], known[name+" "+variant+"G"]
				if free.best > 0 && l.AtLeast > free.best {
					t.Errorf("%s %s: at least %d, but %d are known to do", name, variant, l.AtLeast, free.best)
				}
				if guillotine.best == 0 {
					continue
				}
				if l.Bought < guillotine.lower {
					t.Errorf("%s %s: %d sheets, fewer than can be", name, variant, l.Bought)
				}
				seen, bought, least, best = seen+1, bought+l.Bought, least+l.AtLeast, best+guillotine.best
			}
		}
		if seen < 300 {
			t.Errorf("%s: only %d instances", variant, seen)
		}
		t.Logf("%sG: %d instances, best known %d sheets, bought %d (%+.1f %%), bounds %d", variant, seen, best, bought,
			100*float64(bought-best)/float64(best), least)
	}
}

func TestSticksAgainstPublishedInstances(t *testing.T) {
	dir := benchFolder(t)
	known := bounds(t, dir)
	files, _ := filepath.Glob(filepath.Join(dir, "stick-*.csv"))
	seen, bought, least, best := 0, 0, 0, 0
	for _, file := range files {
		for name, in := range instances(t, file) {
			stock := model.Stock{Sticks: []model.Stick{{Name: "stick", Width: length.Millimetre, Lengths: []model.StickLength{{Length: in.bin[0]}}}}}
			for i := range in.parts {
				in.parts[i].Stock, in.parts[i].Grain = "stick", model.GrainX
			}
			l := lay(t, in.parts, stock, model.Saw{})[0]
			p, ok := known[name+" 1D"]
			if !ok {
				t.Fatalf("no bounds for %s", name)
			}
			if l.AtLeast > p.best || l.Bought < p.lower {
				t.Errorf("%s: at least %d, bought %d; known %d to %d", name, l.AtLeast, l.Bought, p.lower, p.best)
			}
			seen, bought, least, best = seen+1, bought+l.Bought, least+l.AtLeast, best+p.best
		}
	}
	if seen < 40 {
		t.Errorf("only %d instances", seen)
	}
	t.Logf("%d instances, best known %d sticks, bought %d (%+.1f %%), bounds %d", seen, best, bought,
		100*float64(bought-best)/float64(best), least)
}

type instance struct {
	bin   [2]Length
	parts []model.Part
}

// instances reads a file of instances; a unit is a millimetre, and a stick
// is one wide.
func instances(t *testing.T, file string) map[string]instance {
	t.Helper()
	sticks := strings.HasPrefix(filepath.Base(file), "stick-")
	size := func(s string) Length { return Length(number(t, s)) * length.Millimetre }
	out := map[string]instance{}
	for _, r := range rows(t, file) {
		if sticks {
			r = slices.Insert(slices.Insert(r, 2, "1"), 4, "1")
		}
		in := out[r[0]]
		in.bin = [2]Length{size(r[1]), size(r[2])}
		outline := geom.RectContour(geom.R(0, 0, size(r[3]), size(r[4])))
		for range number(t, r[5]) {
			in.parts = append(in.parts, model.Part{ID: fmt.Sprint(len(in.parts)), Outline: outline})
		}
		out[r[0]] = in
	}
	return out
}
