package revise

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/model"
	"barwright/lang/source"
)

// TestNothingDiffersFromItself compares each example with itself.
func TestNothingDiffersFromItself(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		files := example(t, name)
		a, b := mustBuild(t, files), mustBuild(t, files)
		changes, _ := changes(a, b)
		if len(changes) > 0 || len(findings(a.Findings, b.Findings)) > 0 || len(billed(a.Bill, b.Bill)) > 0 {
			t.Errorf("%s differs from itself: %v", name, told(changes))
		}
	}
}

// anyEdit changes one to three figures of an example a little, so that it builds.
func anyEdit(t *rapid.T, files source.Files, figures []model.Answer) *model.Model {
	edits := slices.Clone(rapid.SliceOfNDistinct(rapid.IntRange(0, len(figures)-1), 1, 3, rapid.ID[int]).Draw(t, "figures"))
	slices.SortFunc(edits, func(a, b int) int { return figures[b].At.Compare(figures[a].At) }) // the last first: places stay true
	for _, i := range edits {
		by := rapid.SampledFrom([]string{`"1/32in"`, `"1/8in"`, `"-1/16in"`}).Draw(t, "by")
		if figures[i].Kind == model.AsNumber {
			by = "0.03125"
		}
		files = nudged(files, &figures[i], by)
	}
	m := built(files)
	if m == nil {
		t.Skip("it does not build")
	}
	return m
}

// mirrored says of a way the other one.
var mirrored = strings.NewReplacer(
	"to the right", "to the left", "to the left", "to the right", "forward", "back", "back", "forward",
	"higher", "lower", "lower", "higher", "wider", "narrower", "narrower", "wider", "deeper", "shallower", "shallower", "deeper",
	"taller", "shorter", "longer", "shorter", "thicker", "thinner", "thinner", "thicker",
	"along x", "against x", "against x", "along x", "along y", "against y", "against y", "along y",
	" in more", " in less", " in less", " in more", // lengths; the others are counted
	" more", " fewer", " fewer", " more", "is there now", "is no longer there", "is no longer there", "is there now",
)

// mirror swaps the two sides of a change.
func mirror(c model.Change) model.Change {
	c.Old, c.New, c.OldWritten, c.NewWritten = c.New, c.Old, c.NewWritten, c.OldWritten
	switch c.Kind {
	case model.Came:
		c.Kind = model.Went
	case model.Went:
		c.Kind = model.Came
	case model.Moved:
		taller := strings.HasSuffix(c.Name, ".z")
		c.Text = mirrored.Replace(strings.ReplaceAll(c.Text, "shorter", "SHORTER"))
		word := "longer"
		if taller {
			word = "taller"
		}
		c.Text = strings.ReplaceAll(c.Text, "SHORTER", word)
		if was, is, other := strings.Cut(c.Text, " instead of "); other {
			c.Text = is + " instead of " + was
		}
	}
	c.Because, c.Means = nil, ""
	return c
}

// TestSidesSwap compares an example and any edit of it both ways round: each change is the
// other's mirror, and bills differ by as much the other way.
func TestSidesSwap(t *testing.T) {
	files := example(t, "boatshed")
	// Each way round is told in the marks of its new build, which must be the same then.
	figures := slices.DeleteFunc(written(t, files), func(a model.Answer) bool { return a.Name == "build.marks" })
	a := mustBuild(t, files)
	rapid.Check(t, func(t *rapid.T) { swapped(t, a, anyEdit(t, files, figures)) })
	// What is drawn may move little; with higher cabinets much does.
	high := slices.IndexFunc(figures, func(a model.Answer) bool { return a.Name == "carcass.base.height" })
	if moves := swapped(t, a, built(nudged(files, &figures[high], `"1/8in"`))); moves < 40 {
		t.Errorf("only %d things move with higher cabinets", moves)
	}
}

// swapped compares two builds both ways round, and counts what moves.
func swapped(t rapid.TB, a, b *model.Model) (moves int) {
	there, _ := changes(a, b)
	for _, c := range there {
		if c.Kind == model.Moved {
			moves++
		}
		if n := len(c.Because); c.Kind > model.Went && (n == 0 || !says(there, c.Because[n-1])) {
			t.Errorf("%s because of %q, and the text says no such thing", c.Name, c.Because)
		}
	}
	if diff := mirrors(a, b); diff != "" {
		t.Fatal(diff)
	}
	checkSwapped(t, a, b)
	return moves
}

// mirrors compares the changes of two builds, both ways round.
func mirrors(a, b *model.Model) string {
	there, _ := changes(a, b)
	back, _ := changes(b, a)
	var want, have []string
	for _, c := range there {
		c.Because, c.Means = nil, ""
		want = append(want, fmt.Sprint(c))
	}
	for _, c := range back {
		have = append(have, fmt.Sprint(mirror(c)))
	}
	slices.Sort(want)
	slices.Sort(have)
	return cmp.Diff(want, have)
}

// TestComingGoes takes a cabinet out, and puts it in: it went, and came.
func TestComingGoes(t *testing.T) {
	files := example(t, "boatshed")
	a := mustBuild(t, files)
	b := mustBuild(t, edited(t, files, "cabinet \"mugs\" {\n    width         = 27\n    fixed_shelves = [18]\n  }\n", ""))
	if diff := mirrors(a, b); diff != "" {
		t.Error(diff)
	}
	changes, w := changes(a, b)
	if changes[0].Name != "cabinet.mugs" || changes[0].Kind != model.Went || changes[1].Kind == model.Went {
		t.Errorf("told first are %v", told(changes)[:2])
	}
	r := &model.Revision{Old: a, New: b}
	for i := range a.Parts {
		if a.Parts[i].Block() == "cabinet.mugs" {
			r.Fates = append(r.Fates, model.Fate{Kind: model.Dropped, Old: i, New: -1})
		}
	}
	reasons(r, w)
	for _, f := range r.Fates {
		if !slices.Equal(f.Because, []string{"cabinet.mugs"}) {
			t.Errorf("%s is dropped because of %q", a.Parts[f.Old].Label, f.Because)
		}
	}
}

// says reports whether the text says a name otherwise.
func says(changes []model.Change, name string) bool {
	return slices.ContainsFunc(changes, func(c model.Change) bool { return c.Kind == model.Said && c.Name == name })
}

func checkSwapped(t rapid.TB, a, b *model.Model) {
	net := func(lines []model.BillChange) (cost, count float64) {
		for _, l := range lines {
			before, after, _ := l.Costs()
			cost += after - before
			if l.Old != nil {
				count -= l.Old.Quantity
			}
			if l.New != nil {
				count += l.New.Quantity
			}
		}
		return cost, count
	}
	cost, count := net(billed(a.Bill, b.Bill))
	costBack, countBack := net(billed(b.Bill, a.Bill))
	const cent = 0.005
	if d := cost + costBack; d > cent || d < -cent || count+countBack > 1e-6 || count+countBack < -1e-6 {
		t.Errorf("the bills differ by %.2f one way and by %.2f the other", cost, costBack)
	}
	before, _ := model.Total(a.Bill)
	after, _ := model.Total(b.Bill)
	if d := after - before - cost; d > cent || d < -cent {
		t.Errorf("the lines differ by %.2f, the bills by %.2f", cost, after-before)
	}
	came := func(list []model.FindingChange) (came, went, other int) {
		for _, f := range list {
			switch {
			case f.Old == nil:
				came++
			case f.New == nil:
				went++
			default:
				other++
			}
		}
		return came, went, other
	}
	x, y, z := came(findings(a.Findings, b.Findings))
	x2, y2, z2 := came(findings(b.Findings, a.Findings))
	if x != y2 || y != x2 || z != z2 {
		t.Errorf("%d findings came, %d went, %d have other figures; the other way %d, %d, %d", x, y, z, x2, y2, z2)
	}
}
