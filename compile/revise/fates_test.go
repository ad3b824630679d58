package revise

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/reuse"

	"pgregory.net/rapid"
)

const mm = 1_000_000

var sheets = model.Stock{Sheets: []model.Sheet{
	{Name: "sheet.birch", Text: "birch plywood 18 mm", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm},
	{Name: "sheet.thin", Text: "birch plywood 6 mm", Length: 2440 * mm, Width: 1220 * mm, Thickness: 6 * mm},
}}

// panel is a part of a skin, which may be patched; x and y in mm.
func panel(name string, x, y model.Length) model.Part {
	sheet := sheets.Sheets[0]
	return model.Part{
		ID: "skin." + name + "/piece-1", Label: name + "-P1", Name: "piece 1", Owner: "skin " + name, Kind: model.Panel,
		Stock: sheet.Name, Material: sheet.Text, Thickness: sheet.Thickness, Face: "outside",
		Outline: geom.RectContour(geom.R(0, 0, x*mm, y*mm)),
	}
}

func with(p model.Part, hole geom.Rect) model.Part {
	shape := geom.RectContour(geom.Rect{X: geom.Span{Lo: hole.X.Lo * mm, Hi: hole.X.Hi * mm}, Y: geom.Span{Lo: hole.Y.Lo * mm, Hi: hole.Y.Hi * mm}})
	p.Openings = append(p.Openings, model.Opening{Name: "outlet urn", Shape: shape.Reversed()})
	return p
}

func build(parts ...model.Part) *model.Model {
	return &model.Model{Stock: sheets, Parts: parts, Build: model.Build{Name: "hall"}, Saw: model.Saw{Kerf: 3 * mm}}
}

// told are fates in few words.
func fateLines(all []model.Fate) (out []string) {
	for _, f := range all {
		text := f.Kind.String()
		if f.New >= 0 {
			text += fmt.Sprintf(" new %d", f.New)
		}
		if f.Old >= 0 {
			text += fmt.Sprintf(" old %d", f.Old)
		}
		if f.Offcut >= 0 {
			text += fmt.Sprintf(" from the offcut of %d", f.Offcut)
		}
		if f.Serves != nil {
			text += fmt.Sprint(" for ", f.Serves)
		}
		out = append(out, text)
	}
	return out
}

func TestFates(t *testing.T) {
	moved := panel("A", 600, 700)
	moved.Owner = "skin other"
	thin := panel("A", 600, 700)
	thin.Stock, thin.Material, thin.Thickness = sheets.Sheets[1].Name, sheets.Sheets[1].Text, sheets.Sheets[1].Thickness
	shelf := panel("D", 600, 700)
	shelf.ID, shelf.Name = "cabinet.d/shelf-1", "shelf 1"
	hole := geom.R(100, 100, 160, 200)
	for _, test := range []struct {
		name     string
		old, new []model.Part
		cut      []Made
		want     []string
	}{
		{"the same", []model.Part{panel("A", 600, 700)}, []model.Part{panel("A", 600, 700)}, nil, []string{"unchanged new 0 old 0"}},
		{"elsewhere", []model.Part{panel("A", 600, 700)}, []model.Part{moved}, nil, []string{"relabel new 0 old 0"}},
		{"another board", []model.Part{panel("A", 600, 700)}, []model.Part{thin}, nil, []string{"make again new 0"}},
		{"narrower", []model.Part{panel("A", 600, 700)}, []model.Part{panel("A", 590, 700)}, nil, []string{"rework new 0 old 0"}},
		{"an opening less", []model.Part{with(panel("A", 600, 700), hole)}, []model.Part{panel("A", 600, 700)}, nil, []string{"patch new 0 old 0"}},
		{"rather another piece than a patch", []model.Part{with(panel("A", 600, 700), hole), panel("B", 600, 710)},
			[]model.Part{panel("A", 600, 700)}, nil, []string{"rework new 0 old 1", "dropped old 0"}},
		{"names are kept", []model.Part{panel("A", 620, 700), panel("B", 620, 700)},
			[]model.Part{panel("B", 600, 700), panel("A", 600, 700)}, nil, []string{"rework new 0 old 1", "rework new 1 old 0"}},
		{"an own piece is left to its part", []model.Part{panel("A", 620, 700), panel("B", 620, 700)},
			[]model.Part{panel("A", 600, 700), panel("C", 620, 700)}, nil, []string{"rework new 0 old 0", "relabel new 1 old 1"}},
		{"all parts before the least work", []model.Part{panel("A", 900, 700), panel("B", 650, 700)},
			[]model.Part{panel("C", 640, 700), panel("D", 800, 700)}, nil, []string{"rework new 0 old 1", "rework new 1 old 0"}},
		{"out of offcuts, each used once", []model.Part{panel("A", 300, 700)},
			[]model.Part{panel("B", 100, 700), panel("C", 100, 700), panel("D", 100, 700), panel("E", 900, 700)}, nil,
			[]string{"rework new 0 old 0", "new new 1 from the offcut of 0", "new new 2", "new new 3"}},
		{"out of offcuts, the largest first", []model.Part{panel("A", 300, 700)},
			[]model.Part{panel("B", 110, 700), panel("C", 50, 700), panel("D", 180, 700)}, nil,
			[]string{"new new 0 from the offcut of 0", "new new 1", "rework new 2 old 0"}},
		{"what serves as it is goes first, not two patches", []model.Part{panel("A", 600, 700), panel("B", 480, 700)},
			[]model.Part{panel("C", 600, 700), panel("D", 750, 700)}, nil, []string{"relabel new 0 old 0", "new new 1", "dropped old 1"}},
		{"a strip, where it only covers", []model.Part{panel("A", 550, 700), panel("B", 550, 700)},
			[]model.Part{panel("C", 600, 700), shelf}, nil, []string{"patch new 0 old 0", "new new 1", "dropped old 1"}},
		{"no piece is halved that can serve as its own", []model.Part{panel("A", 600, 700), panel("B", 280, 700)},
			[]model.Part{panel("A", 590, 700), panel("B", 290, 690)}, nil, []string{"rework new 0 old 0", "patch new 1 old 1"}},
		{"nor for a part that gets none then", []model.Part{with(panel("A", 600, 700), hole)},
			[]model.Part{panel("A", 600, 700), panel("B", 290, 700)}, nil, []string{"patch new 0 old 0", "new new 1"}},
		{"one a little larger than half is given away", []model.Part{with(panel("A", 600, 700), hole), panel("B", 100, 100)},
			[]model.Part{panel("A", 600, 700), panel("B", 310, 690)}, nil, []string{"make again new 0", "rework new 1 old 0", "dropped old 1"}},
		{"one whose part is served as it is may be halved", []model.Part{panel("A", 610, 700), panel("B", 600, 700)},
			[]model.Part{panel("A", 600, 700), panel("C", 290, 700)}, nil, []string{"relabel new 0 old 1", "rework new 1 old 0"}},
		{"names before work", []model.Part{panel("A", 620, 700), panel("B", 620, 710)},
			[]model.Part{panel("A", 600, 690), panel("B", 600, 700)}, nil, []string{"rework new 0 old 0", "rework new 1 old 1"}},
		{"only what was cut", []model.Part{panel("A", 600, 700), panel("B", 400, 700)},
			[]model.Part{panel("A", 600, 700), panel("B", 420, 700)}, []Made{{Label: "A-P1"}}, []string{"unchanged new 0 old 0", "new new 1"}},
		{"cut too small", []model.Part{panel("A", 600, 700)}, []model.Part{panel("A", 600, 700)},
			[]Made{{Label: "A-P1", X: 300 * mm, Y: 700 * mm}}, []string{"make again new 0"}},
		{"nothing cut yet", []model.Part{panel("A", 600, 700)}, []model.Part{panel("A", 600, 700)}, []Made{}, []string{"new new 0"}},
	} {
		got, notes := fates(reuse.Open(build(test.old...), build(test.new...), 0), Options{Cut: test.cut})
		if !slices.Equal(fateLines(got), test.want) || notes != nil {
			t.Errorf("%s: %q, want %q; notes %q", test.name, fateLines(got), test.want, notes)
		}
	}
}

// Of many pieces not every one is tried for every part, which is told; those nearest in
// size are, and of pieces that are alike each goes to one part.
func TestFatesOfMany(t *testing.T) {
	const n = 250
	var old, new []model.Part
	for i := range model.Length(n) {
		old = append(old, panel(fmt.Sprint("X", i), 1000+3*i, 700), panel(fmt.Sprint("Y", i), 400, 650))
		new = append(new, panel(fmt.Sprint("Z", n-i), 999+3*i, 700), panel(fmt.Sprint("V", i), 390, 640))
	}
	all, notes := fates(reuse.Open(build(old...), build(new...), 0), Options{})
	if count(all, model.Rework) != 2*n || len(all) != 2*n {
		t.Errorf("%d of %d parts are made of other pieces, %d fates", count(all, model.Rework), 2*n, len(all))
	}
	for i, f := range all {
		if i%2 == 0 && f.Old != i {
			t.Errorf("part %d is made of piece %d", i, f.Old)
		}
	}
	if len(notes) != 1 || !strings.HasPrefix(notes[0], "Not every piece was tried for 500 parts of birch plywood 18 mm, ") {
		t.Errorf("%q", notes)
	}
}

// drawParts draws a few parts of few sizes, so that many of them are alike or nearly.
func drawParts(t *rapid.T, name string, most int, holes bool) (parts []model.Part) {
	for _, label := range drawNames(t, name, most) {
		x, y := rapid.SampledFrom([]model.Length{120, 300, 330, 360, 600}).Draw(t, "x"), rapid.SampledFrom([]model.Length{300, 390}).Draw(t, "y")
		p := panel(label, x, y)
		if holes && rapid.Bool().Draw(t, "hole") {
			p = with(p, geom.R(40, 40, 90, rapid.SampledFrom([]model.Length{90, 100}).Draw(t, "top")))
		}
		parts = append(parts, p)
	}
	return parts
}

func drawNames(t *rapid.T, name string, most int) []string {
	return rapid.SliceOfNDistinct(rapid.SampledFrom([]string{"A", "B", "C", "D", "E", "F", "G"}), 0, most, rapid.ID).Draw(t, name)
}

// score is what a way to give pieces to parts is worth: parts that have one as it is,
// parts that have one, and what it costs, what is cut away apart.
type score struct {
	alike, served, patched, own int
	work                        int64
}

func (s score) better(o score) bool {
	return cmp.Or(s.alike-o.alike, s.served-o.served, o.patched-s.patched, s.own-o.own, cmp.Compare(o.work, s.work)) > 0
}

func (s *score) add(p *reuse.Pair, old, new *model.Part, kind model.FateKind, steps []model.Step) {
	s.served++
	if kind == model.Patch {
		s.patched++
	}
	if old.ID == new.ID {
		s.own++
	}
	for _, step := range steps {
		s.work += minutes(&step)
	}
	if p.Key(old) == p.Key(new) {
		s.alike++
	}
}

// tries are all ways to give pieces to parts.
type tries struct {
	pair  *reuse.Pair
	given []int                           // the piece of each part that is settled; -1 of others
	may   func(old, new *model.Part) bool // nil: any
	taken []bool
	free  bool // what serves as it is does not go first
}

// best is the best of all ways for the parts from one on.
func (w *tries) best(part int) score {
	if part == len(w.given) {
		return score{}
	}
	pieces, new := []int{w.given[part]}, &w.pair.New.Parts[part]
	var best score
	if w.given[part] < 0 {
		best, pieces = w.best(part+1), nil
		for i := range w.pair.Old.Parts {
			if !w.taken[i] && !slices.Contains(w.given, i) && (w.may == nil || w.may(&w.pair.Old.Parts[i], new)) {
				pieces = append(pieces, i)
			}
		}
	}
	for _, i := range pieces {
		old := &w.pair.Old.Parts[i]
		fit, ok := w.pair.Serve(old, new)
		if !ok {
			continue
		}
		w.taken[i] = true
		s := w.best(part + 1)
		w.taken[i] = false
		if s.add(w.pair, old, new, fit.Kind, fit.Steps); w.free {
			s.alike = 0
		}
		if s.better(best) {
			best = s
		}
	}
	return best
}

func scoreOf(p *reuse.Pair, all []model.Fate) (s score) {
	for _, f := range all {
		if f.Old >= 0 && f.New >= 0 {
			s.add(p, &p.Old.Parts[f.Old], &p.New.Parts[f.New], f.Kind, f.Steps)
		}
	}
	return s
}

// halved reports whether a piece that can serve as its own part would lose more than half
// its size for another one.
func halved(p *reuse.Pair, old, new *model.Part) bool {
	x, y := old.Size()
	wide, high := new.Size()
	own := slices.IndexFunc(p.New.Parts, func(n model.Part) bool { return n.ID == old.ID })
	if own < 0 || old.ID == new.ID || 2*float64(wide)*float64(high) >= float64(x)*float64(y) {
		return false
	}
	_, ok := p.Serve(old, &p.New.Parts[own])
	return ok
}

// Every way to give pieces to parts is tried: of parts that are drawn, and of a build in which a piece is to
// be spared, for that is not drawn each time.
func TestFatesAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holes := rapid.Bool().Draw(t, "holes")
		everyWay(t, drawParts(t, "old", 5, holes), drawParts(t, "new", 5, holes))
	})
	spared := everyWay(t, []model.Part{panel("A", 600, 390)}, []model.Part{panel("A", 600, 300), panel("B", 120, 300)})
	if !spared {
		t.Error("no piece was to be spared")
	}
}

// everyWay compares the fates of two builds with the best of all ways to give pieces to parts, and reports
// whether a piece was to be spared for its own part.
func everyWay(t rapid.TB, old, new []model.Part) (spared bool) {
	p := reuse.Open(build(old...), build(new...), 0)
	all, _ := fates(p, Options{})
	got := scoreOf(p, all)
	w := tries{pair: p, given: make([]int, len(p.New.Parts)), taken: make([]bool, len(p.Old.Parts))}
	served := map[string]bool{} // IDs of parts that get a piece as it is; lookup only
	for n := range w.given {
		w.given[n] = -1
		if f := all[n]; f.Old >= 0 && p.Key(&p.Old.Parts[f.Old]) == p.Key(&p.New.Parts[n]) {
			w.given[n], served[p.New.Parts[n].ID] = f.Old, true
		}
	}
	// The best is found of what is left when parts have got what serves as it is.
	w.may = func(old, new *model.Part) bool { return served[old.ID] || !halved(p, old, new) }
	if best := w.best(0); got != best {
		t.Fatalf("%+v, but %+v can be: %q", got, best, fateLines(all))
	}
	w.may = nil
	for n := range w.given {
		w.given[n] = -1
	}
	for i := range p.Old.Parts {
		if slices.ContainsFunc(p.New.Parts, func(n model.Part) bool { return halved(p, &p.Old.Parts[i], &n) }) {
			return true
		}
	}
	// Nothing is lost by giving that first; no part is, at any rate, where nothing is patched.
	if best := w.best(0); got.alike != best.alike || got.served != best.served || got.patched != best.patched {
		t.Fatalf("%+v, but %+v can be: %q", got, best, fateLines(all))
	}
	w.free = true
	if best := w.best(0); got.patched+best.patched == 0 && got.served != best.served {
		t.Fatalf("%+v, but %+v can be where nothing goes first: %q", got, best, fateLines(all))
	}
	return false
}

// What holds of any two builds.
func TestFatesHold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, new := build(drawParts(t, "old", 7, true)...), build(drawParts(t, "new", 7, true)...)
		within := rapid.SampledFrom([]model.Length{0, mm}).Draw(t, "within")
		all, _ := fates(reuse.Open(old, new, within), Options{Within: within})
		used := make([]int, len(old.Parts))
		ids, again := map[string]bool{}, map[string]bool{}
		for i := range old.Parts {
			ids[old.Parts[i].ID] = true
		}
		for n, f := range all {
			if f.Kind == model.MakeAgain {
				again[new.Parts[n].ID] = true
			}
			if f.Old >= 0 {
				used[f.Old]++
			}
			switch {
			case n < len(new.Parts) && (f.New != n || f.Kind == model.Dropped), n >= len(new.Parts) && f.Kind != model.Dropped:
				t.Fatalf("fate %d: %q", n, fateLines(all))
			case f.Kind == model.MakeAgain && !ids[new.Parts[n].ID], f.Kind == model.NewPart && ids[new.Parts[n].ID]:
				t.Fatalf("what is new is told wrong: %q", fateLines(all))
			case f.Kind < model.MakeAgain && f.Old < 0, f.Offcut >= 0 && f.Kind != model.MakeAgain && f.Kind != model.NewPart:
				t.Fatalf("fate %d: %q", n, fateLines(all))
			}
		}
		for i, n := range used {
			if n > 1 || n == 0 && !again[old.Parts[i].ID] {
				t.Fatalf("old %d has %d fates: %q", i, n, fateLines(all))
			}
		}
		offcutsHold(t, old, new, all)
		back, _ := fates(reuse.Open(new, old, within), Options{Within: within})
		if as, was := count(all, model.Unchanged, model.Relabel), count(back, model.Unchanged, model.Relabel); within == 0 && as != was {
			t.Fatalf("%d serve as they are there, %d back: %q, %q", as, was, fateLines(all), fateLines(back))
		}
		same, _ := fates(reuse.Open(old, old, within), Options{Within: within})
		if count(same, model.Unchanged) != len(old.Parts) || len(same) != len(old.Parts) {
			t.Fatalf("a build differs from itself: %q", fateLines(same))
		}
	})
}

// offcutsHold checks that no more is cut out of what is left of a piece than there is,
// and that dropped pieces tell what is cut out of them.
func offcutsHold(t *rapid.T, old, new *model.Model, all []model.Fate) {
	left := make([]float64, len(old.Parts))
	serves := make([][]int, len(old.Parts))
	for i := range old.Parts {
		left[i] = old.Parts[i].Outline.Area()
	}
	for _, f := range all {
		if f.Kind < model.MakeAgain {
			left[f.Old] -= new.Parts[f.New].Outline.Area()
		}
		if f.Offcut >= 0 {
			left[f.Offcut] -= new.Parts[f.New].Outline.Area()
			serves[f.Offcut] = append(serves[f.Offcut], f.New)
		}
	}
	for i, area := range left {
		if serves[i] != nil && area < 0 {
			t.Fatalf("more is cut out of %d than there is: %q", i, fateLines(all))
		}
	}
	for _, f := range all {
		if f.Kind == model.Dropped && !slices.Equal(f.Serves, serves[f.Old]) || f.Kind != model.Dropped && f.Serves != nil {
			t.Fatalf("old %d serves %v: %q", f.Old, serves[max(f.Old, 0)], fateLines(all))
		}
	}
}

// A piece more never costs a part, where nothing may be made up; nor does a part less.
func TestFatesOfMorePieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, new := drawParts(t, "old", 6, false), drawParts(t, "new", 6, false)
		for _, parts := range [][]model.Part{old, new} {
			for i := range parts {
				parts[i].ID = "cabinet." + parts[i].Label + "/bottom" // which is no cover
			}
		}
		lack := func(old, new []model.Part) int {
			all, _ := fates(reuse.Open(build(old...), build(new...), 0), Options{})
			return count(all, model.MakeAgain, model.NewPart)
		}
		if len(old) > 0 && lack(old[1:], new) < lack(old, new) {
			t.Fatal("a piece more costs a part")
		}
		if len(new) > 0 && lack(old, new[1:]) > lack(old, new) {
			t.Fatal("a part less costs another")
		}
	})
}

func count(all []model.Fate, kinds ...model.FateKind) (n int) {
	for _, f := range all {
		if slices.Contains(kinds, f.Kind) {
			n++
		}
	}
	return n
}
