package place

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/edittest"
	"barwright/compile/geom"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/rule/all"
	"barwright/compile/setting"
	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

const inch = length.Inch

func built(t testing.TB, files source.Files) *rule.Build {
	t.Helper()
	src, found := lang.Read(files)
	solution := solve.Solve(src)
	if solution.Model == nil {
		t.Fatal(found, solution.Findings)
	}
	b := rule.NewBuild(solution.Values, solution.Model, &finding.List{})
	rule.Judge(solution.Values, solution.Model, all.Rules(), b.Findings)
	return b
}

// found are the findings of the order.
func found(b *rule.Build) finding.List {
	return slices.DeleteFunc(slices.Clone(*b.Findings), func(f finding.Finding) bool {
		_, section, _ := finding.Lookup(f.Slug)
		return section.Number != "14.3"
	})
}

func told(b *rule.Build) (out []string) {
	for i := range b.Setting.Steps {
		s := &b.Setting.Steps[i]
		out = append(out, fmt.Sprintf("%s %s: %s", s.Does, s.What, s.Way(b.Show)))
	}
	return out
}

// TestBoatshed: the drain stands out 3 1/2 in of the east wall and goes through the left side of
// the sink cabinet, which begins 1 1/2 in off that wall, beside its filler: so it starts 2 in off its
// place, where cabinet "bins" is to be, and comes before that. Run "front" and its knee wall, which
// is framed first, close the front of run "back" as far as they reach: 109 1/2 in of 136 1/8 in from the
// east wall. So what comes there comes along the aisle.
func TestBoatshed(t *testing.T) {
	b := built(t, edittest.Folder(t, "../../examples/boatshed"))
	Order(b)
	for _, f := range found(b) {
		t.Errorf("%s: %s", f.Slug, f.Text)
	}
	step := sets(b, "cabinet sink")
	last := step.Slides[len(step.Slides)-1]
	if want := (model.Slide{To: "to the left", By: 2 * inch, Over: []string{"stub drain", "stub cold"}}); cmp.Diff(want, last) != "" {
		t.Errorf("the sink comes in last by %+v, want %+v", last, want)
	}
	if after := sets(b, "cabinet bins").After; !slices.Contains(after, model.Ahead{What: "cabinet sink", Why: "it would stand in the way"}) {
		t.Errorf("bins after %v", after)
	}
	if after := sets(b, "skin work").After; !slices.Contains(after, model.Ahead{What: "knee wall bar", Why: "it is fixed to it"}) {
		t.Errorf("skin work after %v", after)
	}
	steps := told(b)
	for _, want := range [][2]string{
		{"frame knee wall bar: framed where it stands", "set cabinet kettle"},
		{"set cabinet beans: in from the left, then", "set filler corner"},
		{"frame knee wall bar: framed where it stands", "set cabinet sink: in from the right"},
		{"set cabinet sink: in from the right", "set cabinet bins: in from the right"},
		{"lay anchor end: laid on the bare floor", "set cabinet kettle"},
		{"set cabinet kegs", "set counter work"},
		{"set skin room: in from the rear", "set corner end"},
		{"set skin work", "set counter work"},
		{"set counter back", "set appliance of bay cooler: in from the left, then"},
	} {
		one, other := index(steps, want[0]), index(steps, want[1])
		if one < 0 || other < 0 || one > other {
			t.Errorf("%q is step %d, %q step %d", want[0], one+1, want[1], other+1)
		}
	}
	replay(t, b)
}

func sets(b *rule.Build, what string) *model.SettingStep {
	return &b.Setting.Steps[slices.IndexFunc(b.Setting.Steps, func(s model.SettingStep) bool { return s.What == what && s.Does == model.SetInPlace })]
}

func index(steps []string, begins string) int {
	return slices.IndexFunc(steps, func(s string) bool { return strings.HasPrefix(s, begins) })
}

// replay sets one thing after another in the order told: each must have a way past what stands then.
func replay(t *testing.T, b *rule.Build) {
	t.Helper()
	r := newRoom(b)
	var stood []setting.Body
	for _, s := range b.Setting.Steps {
		room := r.finished
		own := r.byName[s.What].Body
		room.Bodies = append(slices.Clone(stood), own)
		_, blocked := room.Order()
		if blocked != nil && s.Does != model.FramedInPlace {
			t.Errorf("%s has no way in when its turn comes: %+v", s.What, blocked)
		}
		own.Stands = true
		stood = append(stood, own)
	}
	if len(stood) != len(r.bodies) {
		t.Errorf("%d of %d things are set", len(stood), len(r.bodies))
	}
}

func TestExamplesAreSet(t *testing.T) {
	for _, pattern := range []string{"../../examples/servery", "../../examples/steps/*", "../../cmd/barwright/starter/*", "../../testdata/rules/base/*"} {
		folders, err := filepath.Glob(pattern)
		if err != nil || len(folders) == 0 {
			t.Fatal(pattern, err)
		}
		for _, folder := range folders {
			if info, err := os.Stat(folder); err != nil || !info.IsDir() || len(edittest.Folder(t, folder)) == 0 {
				continue
			}
			t.Run(filepath.Base(folder), func(t *testing.T) {
				b := built(t, edittest.Folder(t, folder))
				Order(b)
				for _, f := range found(b) {
					t.Errorf("%s: %s", f.Slug, f.Text)
				}
				replay(t, b)
			})
		}
	}
}

// washhouse is a sink over a pipe out of the wall beside it, and its neighbour: of its text
// something else stands for something.
func washhouse(t *testing.T, replace ...string) *rule.Build {
	t.Helper()
	files := edittest.Folder(t, "../../testdata/rules/base/washhouse")
	replace = append(replace, `wall "north" { length = 130 }`, `wall "north" {
  length = 130
  stub "waste" {
    at         = [118, 14]
    diameter   = 2
    stands_out = 3
  }
}`)
	text := string(files[0].Text)
	from, to := strings.Index(text, `    stub "drain"`), strings.Index(text, `  wall "south"`)
	text = text[:from] + "  }\n" + text[to:]
	files[0].Text = []byte(strings.NewReplacer(replace...).Replace(text))
	return built(t, files)
}

// TestNeighbour is the trouble with the sink cabinet. The waste stands out 3 in, and the sink's
// left side stands against the wall that it comes out of: the sink slides 3 in to the left at last.
// Its neighbour stands right beside it, so that makes way by 3 in, to the right, before, and goes
// back by as much.
func TestNeighbour(t *testing.T) {
	b := washhouse(t, `cabinet "dry" { width = 24 }`, "cabinet \"dry\" {\nwidth = 24\nstands = true\n}")
	Order(b)
	want := []string{
		"move aside cabinet dry: 3 in to the right",
		"set cabinet sink: in from the front, then 3 in to the left, over stub waste",
		"move back cabinet dry: 3 in to the left",
	}
	if diff := cmp.Diff(want, told(b)); diff != "" {
		t.Error(diff)
	}
	if f := found(b); len(f) != 1 || f[0].Slug != "stands-in-the-way" || f[0].Mend != `a slot for stub waste: cut = "slot", open_to = "rear"` {
		t.Errorf("%+v", f)
	}
}

// TestThirdBesideTwo: a third cabinet is set only when the neighbour is back in its place, as
// it comes in there.
func TestThirdBesideTwo(t *testing.T) {
	b := washhouse(t, `cabinet "dry" { width = 24 }`, "cabinet \"dry\" {\nwidth = 24\nstands = true\n}\ncabinet \"last\" { width = 20 }")
	Order(b)
	want := []string{
		"move aside cabinet dry: 3 in to the right",
		"set cabinet sink: in from the front, then 3 in to the left, over stub waste",
		"move back cabinet dry: 3 in to the left",
		"set cabinet last: in from the front",
	}
	if diff := cmp.Diff(want, told(b)); diff != "" {
		t.Error(diff)
	}
}

// TestDoorway: the opening is from 60 to 92 in along the south wall, which is as far off the east wall,
// and its landing 36 in deep. Along the east wall, 100 in long, the sink ends at 36 in and the dry
// cabinet at 60 in: on the landing they end at 64 in at least, 28 in and 4 in further. The middle of
// their depth is 12 in off the east wall: before the opening 48 in to 80 in further.
func TestDoorway(t *testing.T) {
	b := washhouse(t, `wall "south" { length = 130 }`, `wall "south" { length = 130 }
doorway {
  wall   = wall.south
  from   = 60
  to     = 92
  height = 78
}`)
	Order(b)
	want := []string{
		"set cabinet sink: from the doorway 48 in to the rear, then 28 in to the left, over stub waste",
		"set cabinet dry: from the doorway 4 in to the left, then 80 in to the rear",
	}
	if diff := cmp.Diff(want, told(b)); diff != "" {
		t.Error(diff)
	}
	for _, s := range b.Setting.Steps {
		if len(s.Through) == 0 || len(s.Slides) == 0 {
			t.Errorf("%+v", s)
		}
	}
}

// TestSplit: one cabinet fills a wall between two others and would come over the waste from the
// right. Two of half its width do: the left one first, 3 in further right, where there are 18 in.
// That the one cannot go in a rule has told already.
func TestSplit(t *testing.T) {
	b := washhouse(t, `cabinet "dry" { width = 24 }`, "", "length = 100", "length = 36")
	Order(b)
	if b.Setting.Steps != nil || len(found(b)) > 0 || !slices.ContainsFunc(*b.Findings, func(f finding.Finding) bool { return f.Slug == "box-cannot-go-in" }) {
		t.Errorf("%+v", *b.Findings)
	}
	r := newRoom(b)
	_, blocked := r.order()
	if got, want := r.split(blocked), `two cabinets instead of "sink", each 18 in wide`; got != want {
		t.Errorf("%q, want %q", got, want)
	}
}

// TestTooMany: beyond the bound nothing is said of the order but that.
func TestTooMany(t *testing.T) {
	b := built(t, manybuild.Files(most, "in", 1))
	Order(b)
	if f := found(b); len(b.Setting.Steps) > 0 || len(f) != 1 || f[0].Slug != "setting-not-judged" {
		t.Errorf("%+v", f)
	}
}

func TestStrips(t *testing.T) {
	// A side with the recess for the feet, 3 in deep and 4 in high, of a box 24 in deep and 30 in high.
	side := geom.Contour{}
	for _, p := range [][2]length.Length{{0, 0}, {21, 0}, {21, 4}, {24, 4}, {24, 30}, {0, 30}} {
		side = append(side, geom.Vertex{Point: geom.Point{X: p[0] * inch, Y: p[1] * inch}})
	}
	want := []geom.Rect{geom.R(0, 0, 21*inch, 30*inch), geom.R(21*inch, 4*inch, 24*inch, 30*inch)}
	if diff := cmp.Diff(want, strips(side)); diff != "" {
		t.Error(diff)
	}
}

func TestQuoted(t *testing.T) {
	for name, want := range map[string]string{ // lookup only
		"cabinet sink": `cabinet "sink"`, "blocks of bay cool": `the blocks of bay "cool"`, "the floor": "the floor",
		"counter back, piece 2": `counter "back", piece 2`, "baseboard of wall north": `the baseboard of wall "north"`,
	} {
		if got := quoted(name); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}
