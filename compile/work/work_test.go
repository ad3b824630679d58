package work_test

import (
	"math"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/source"
)

// solved is the model of a description, in which no error may be.
func solved(t testing.TB, files source.Files) *model.Model {
	t.Helper()
	src, findings := lang.Read(files)
	if src.Lost {
		t.Fatal(findings)
	}
	m, more := compile.Priced(src)
	if m == nil {
		t.Fatal(append(findings, more...))
	}
	return m
}

// builds are all descriptions that are shipped, and those that rules' cases change.
func builds(t *testing.T) map[string]*model.Model {
	t.Helper()
	out := map[string]*model.Model{}
	for _, pattern := range []string{"../../examples/*", "../../examples/steps/*", "../../cmd/barwright/starter/*", "../../testdata/rules/base/*"} {
		folders, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		for _, folder := range folders {
			if files := edittest.Folder(t, folder); len(files) > 0 {
				out[folder] = solved(t, files)
			}
		}
	}
	if len(out) < 12 {
		t.Fatalf("only %d descriptions were found", len(out))
	}
	return out
}

// TestNothingBlocksItself takes steps away that wait for nothing until none is left, whatever
// their order: where a circle is, some stay. The list itself is in such an order.
func TestNothingBlocksItself(t *testing.T) {
	for name, m := range builds(t) {
		at := map[string]int{}
		for i, task := range m.Work {
			if _, twice := at[task.Key]; twice {
				t.Errorf("%s: the key %s stands there twice", name, task.Key)
			}
			at[task.Key] = i
		}
		waits := make([]int, len(m.Work))
		next := make([][]int, len(m.Work))
		for i, task := range m.Work {
			for j, b := range task.After {
				before, ok := at[b.Key]
				if !ok || b.Why == "" {
					t.Errorf("%s: %s waits for %q because %q", name, task.Key, b.Key, b.Why)
				}
				if before >= i {
					t.Errorf("%s: %s waits for %s, which comes later", name, task.Key, b.Key)
				}
				if slices.ContainsFunc(task.After[:j], func(o model.Before) bool { return o.Key == b.Key }) {
					t.Errorf("%s: %s waits for %s twice", name, task.Key, b.Key)
				}
				waits[i]++
				next[before] = append(next[before], i)
			}
		}
		var free []int
		for i, n := range waits {
			if n == 0 {
				free = append(free, i)
			}
		}
		done := 0
		for len(free) > 0 {
			last := free[len(free)-1]
			free = free[:len(free)-1]
			done++
			for _, i := range next[last] {
				if waits[i]--; waits[i] == 0 {
					free = append(free, i)
				}
			}
		}
		if done != len(m.Work) {
			t.Errorf("%s: %d of %d steps wait for one another in a circle", name, len(m.Work)-done, len(m.Work))
		}
		last := m.Work[len(m.Work)-1]
		if !reaches(m, at, last.Key, len(m.Work)) {
			t.Errorf("%s: not every step comes before the last look", name)
		}
	}
}

// reaches reports whether a step waits, through others, for so many, itself counted.
func reaches(m *model.Model, at map[string]int, key string, n int) bool {
	seen := map[string]bool{}
	var walk func(key string)
	walk = func(key string) {
		if !seen[key] {
			seen[key] = true
			for _, b := range m.Work[at[key]].After {
				walk(b.Key)
			}
		}
	}
	walk(key)
	return len(seen) == n
}

// TestNothingIsForgotten has every screw driven in one step, every part taken in hand after it was
// cut, and every cable pulled.
func TestNothingIsForgotten(t *testing.T) {
	for name, m := range builds(t) {
		need, have := map[string]int{}, map[string]int{}
		for _, f := range m.Fastening {
			need[f.Screw+" "+f.Use] += f.Count
		}
		for i := range m.Ways {
			if w := &m.Ways[i]; w.Kind == "cable" {
				step(t, m, w.Key())
			}
		}
		cut, used := map[string]bool{}, map[string]bool{}
		for _, task := range m.Work {
			for _, s := range task.Screws {
				have[s.Screw+" "+s.Use] += s.Count
				if s.Text == "" {
					t.Errorf("%s: %s does not say what %s is", name, task.Key, s.Screw)
				}
			}
			where := used
			switch {
			case strings.HasPrefix(task.Key, "cut."):
				where = cut
			case strings.HasPrefix(task.Key, "finish") || task.Key == "bands" || task.Key == "panels" || task.Key == "recess":
				continue
			}
			for _, label := range task.Parts {
				where[label] = true
			}
		}
		if diff := cmp.Diff(need, have); diff != "" {
			t.Errorf("%s: screws (-counted +driven):\n%s", name, diff)
		}
		for i := range m.Parts {
			p := &m.Parts[i]
			if !used[p.Label] || !cut[p.Label] && p.Kind != model.SlabPiece {
				t.Errorf("%s: part %s is cut: %v, used: %v", name, p.Label, cut[p.Label], used[p.Label])
			}
		}
	}
}

// step finds a step by its key.
func step(t *testing.T, m *model.Model, key string) model.Task {
	t.Helper()
	i := slices.IndexFunc(m.Work, func(t model.Task) bool { return t.Key == key })
	if i < 0 {
		t.Fatalf("there is no step %s", key)
	}
	return m.Work[i]
}

// TestWaits holds the boat shed, whose sheets come up a stair, to what a builder knows: directly,
// and through other steps.
func TestWaits(t *testing.T) {
	m := solved(t, edittest.Edited(t, edittest.Folder(t, "../../examples/boatshed"), "+ carry { stair = [140, 40] }"))
	at := map[string]int{}
	for i := range m.Work {
		at[m.Work[i].Key] = i
	}
	var waits func(key, before string) bool
	waits = func(key, before string) bool {
		return slices.ContainsFunc(m.Work[at[key]].After, func(b model.Before) bool { return b.Key == before || waits(b.Key, before) })
	}
	for _, c := range [][2]string{
		{"rough", "order"}, {"measured", "rough"}, {"line", "site.floor"}, {"line", "site.studs"}, {"order", "site.way"}, {"order", "site.makers"},
		{"fix.anchor.end", "line"}, {"fix.anchor.end", "cut.stick.two_by_four"}, {"frame.bar", "line"}, {"frame.bar", "cut.stick.two_by_four"},
		{"steel.bar", "frame.bar"}, {"steel.bar", "cut.flat_bar.arm"}, {"recess", "cut.stick.two_by_four"}, {"panels", "cut.sheet.thin"}, {"bands", "panels"},
		{"drawers.cabinet.beans", "cut.sheet.half"}, {"box.cabinet.cups", "panels"}, {"finish", "box.cabinet.cups"}, {"finish", "drawers.cabinet.beans"},
		{"finish.slabs", "measured"}, {"set.cabinet.cups", "box.cabinet.cups"}, {"set.cabinet.beans", "set.cabinet.cups"}, {"set.cabinet.cups", "line"},
		{"hold.bar", "set.cabinet.kegs"}, {"fit.filler.wall", "set.cabinet.sink"}, {"fit.filler.wall", "finish"}, {"skin.end", "hold.bar"},
		{"skin.end", "finish"}, {"corner.end", "skin.end"}, {"corner.end", "finish"}, {"dry.counter.work", "hold.bar"}, {"dry.counter.work", "fit.filler.wall"},
		{"dry.counter.work", "finish.slabs"}, {"fix.counter.back", "fit.filler.corner"}, {"sinks.work", "fix.counter.work"}, {"water.work", "sinks.work"},
		{"fix.bar_top.oak", "corner.end"}, {"fix.bar_top.oak", "fix.counter.work"}, {"fix.bar_top.oak", "frame.bar"}, {"appliance.cooler", "set.cabinet.cups"},
		{"appliance.cooler", "blocks.cooler"}, {"blocks.cooler", "cut.stick.two_by_four"}, {"set.cabinet.bins", "set.cabinet.sink"}, {"fronts.back", "drawers.cabinet.beans"}, {"fronts.front", "finish"}, {"devices", "corner.end"},
		{"devices", "set.cabinet.cups"}, {"seal", "fix.counter.back"}, {"last", "seal"},
	} {
		if !slices.ContainsFunc(step(t, m, c[0]).After, func(b model.Before) bool { return b.Key == c[1] }) {
			t.Errorf("%s does not say that it waits for %s", c[0], c[1])
		}
	}
	for _, c := range [][2]string{
		{"skin.room", "wire.seen.bar"}, {"skin.work", "wire.seen.bar"}, {"wire.seen.bar", "wire.bar"},
		{"set.cabinet.kegs", "fix.anchor.end"}, {"set.cabinet.sink", "water"}, {"set.cabinet.sink", "frame.bar"},
		{"set.cabinet.kettle", "finish"}, {"fix.bar_top.oak", "finish.slabs"}, {"fix.bar_top.oak", "steel.bar"},
		{"fix.bar_top.oak", "skin.room"}, {"recess", "recess.test"}, {"recess.test", "cut.flat_bar.arm"},
		{"frame.bar", "recess"}, {"order", "site.floor"}, {"cut.sheet.birch", "measured"},
		{"fix.counter.work", "dry.counter.work"}, {"fix.counter.work", "skin.work"}, {"water.work", "water"},
		{"appliance.cooler", "fix.counter.back"}, {"fronts.back", "fix.counter.back"}, {"box.cabinet.beans", "bands"},
	} {
		if step(t, m, c[0]); !waits(c[0], c[1]) {
			t.Errorf("%s does not wait for %s", c[0], c[1])
		}
	}
	for _, c := range [][2]string{
		{"set.cabinet.kettle", "wire.seen.bar"}, // the back run has no knee wall behind it
		{"set.cabinet.kettle", "fix.anchor.end"}, {"box.cabinet.kettle", "wire.seen.bar"}, {"fix.anchor.end", "panels"},
	} {
		if waits(c[0], c[1]) {
			t.Errorf("%s waits for %s", c[0], c[1])
		}
	}
	if cure := step(t, m, "fix.anchor.end").Cure; cure != 24 {
		t.Errorf("the adhesive takes %g hours, not 24", cure)
	}
}

// TestOnlyWhatIsThere has the first of the steps, boxes along a wall, and nothing beside.
func TestOnlyWhatIsThere(t *testing.T) {
	m := solved(t, source.Files{{Name: "bar.hcl", Text: []byte(`
build "shelf" { unit = "mm" }
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
room {
  wall "north" { length = 3000 }
}
carcass "base" {
  height = 800
  depth  = 500
  board  = sheet.ply
  back   = { board = sheet.ply, fixed = "applied" }
}
run "back" {
  along   = wall.north
  carcass = carcass.base
  cabinet "cups" { width = 600 }
}`)}})
	var have []string
	for _, task := range m.Work {
		have = append(have, task.Key)
		if task.WeightKg != 0 {
			t.Errorf("%s weighs %g kg, and nothing says what ply weighs", task.Key, task.WeightKg)
		}
	}
	want := []string{"site.walls", "site.studs", "site.floor", "order", "measured", "cut.sheet.ply", "line",
		"box.cabinet.cups", "finish", "set.cabinet.cups", "last"}
	if diff := cmp.Diff(want, have); diff != "" {
		t.Errorf("steps (-want +got):\n%s", diff)
	}
}

// TestWeights weighs pieces of the boat shed by hand, and who carries them: 50 kg is for two.
//
// A whole sheet of 23/32 in: 96 x 48 x 0.71875 in = 3312 in3, 0.0542738 m3, at 685 kg/m3.
//
// Cabinet kettle, 30 x 34.5 x 23.25 in over a back of 7/32 in and, in front, 0.02 in of banding,
// which is not weighed: 23.01125 in deep. Two sides of 34.5 x 23.01125 less 2.98 x 4 for the feet,
// 1563.936 in2; between them 28.5625 in are the bottom, x 23.01125 = 657.259 in2, stretchers of 4
// and 3.98 in and a toe kick of 4 in, 342.179 in2: 2563.374 in2 x 0.71875 = 1842.425 in3, 20.6814
// kg. Its back is 30 x 30.5 less the outlet of 2 3/8 x 3 7/8: 905.797 in2 x 0.21875 = 198.143 in3,
// 2.17546 kg at 670.
//
// Steel: a whole bar of 5 x 1/2 x 72 in = 180 in3, 0.00294967 m3, at 7850 kg/m3.
func TestWeights(t *testing.T) {
	m := solved(t, edittest.Folder(t, "../../examples/boatshed"))
	for _, c := range []struct {
		key    string
		kg     float64
		people int
	}{
		{"cut.sheet.birch", 37.1776, 2},
		{"box.cabinet.kettle", 22.8569, 1},
		{"set.cabinet.kettle", 22.8569, 1},
		{"cut.flat_bar.arm", 23.1549, 1},
	} {
		task := step(t, m, c.key)
		if math.Abs(task.WeightKg-c.kg) > 0.001 || task.People != c.people {
			t.Errorf("%s: %g kg for %d, by hand %g kg for %d", c.key, task.WeightKg, task.People, c.kg, c.people)
		}
	}
}
