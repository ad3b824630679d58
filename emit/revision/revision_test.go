package revision

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

var update = flag.Bool("update", false, "write golden files anew")

const inch = length.Inch

// made is a part of a size, in inches, that stands in a run.
func made(id, label, name, owner string, kind model.PartKind, stock string, x, y length.Length) model.Part {
	p := model.Part{ID: id, Label: label, Name: name, Owner: owner, Kind: kind, Stock: stock, Thickness: 3 * inch / 4, Face: "front"}
	p.Outline = geom.RectContour(geom.R(0, 0, x*inch, y*inch))
	p.Placement = geom.Place(geom.Frame{}, geom.Box{U: geom.Span{Hi: x * inch}, V: geom.Span{Hi: p.Thickness}, Z: geom.Span{Hi: y * inch}}, geom.Dir{Axis: geom.V})
	return p
}

func studs(high length.Length) (out []model.Part) {
	for i := 1; i <= 9; i++ {
		out = append(out, made(fmt.Sprintf("knee_wall.bar/stud-%d", i), fmt.Sprintf("BAR-S%d", i), fmt.Sprintf("stud %d", i),
			"knee wall bar", model.Lumber, "stick.two_by_four", 3, high))
	}
	return out
}

func found(slug, text string, line int) *finding.Finding {
	at := source.Range{File: "bar.hcl", Start: source.Pos{Line: line, Column: 3, Byte: 40}, End: source.Pos{Line: line, Column: 9, Byte: 46}}
	return &finding.Finding{Severity: finding.Warning, Slug: slug, At: at, Text: text}
}

// every is a revision, made by hand, in which each fate and each kind of line occurs.
// Nothing in it need agree with what a comparison would find.
func every() *model.Revision {
	old := &model.Model{Build: model.Build{Name: "boat shed coffee bar", Unit: length.Inches, Marks: inch / 32, Revision: "A"}}
	now := &model.Model{Build: old.Build}
	now.Build.Revision = "B"
	sheet, door := "sheet.birch", made("cabinet.urn/door", "URN-D", "door", "cabinet urn", model.Panel, "sheet.birch", 14, 28)
	cup := func(y length.Length) []model.Bore {
		return []model.Bore{{Name: "hinge cup", At: geom.Point{X: inch, Y: y * inch}, Diameter: 35 * length.Millimetre, Depth: inch / 2}}
	}
	door.Bores = cup(4)
	old.Parts = append(studs(36),
		made("cabinet.urn/bottom", "URN-BT", "bottom", "cabinet urn", model.Panel, sheet, 28, 23),         // 9
		made("cabinet.sink/side-left", "SINK-L", "left side", "cabinet sink", model.Panel, sheet, 23, 34), // 10
		made("cabinet.sink/side-right", "SINK-R", "right side", "cabinet sink", model.Panel, sheet, 23, 34),
		made("cabinet.urn/back", "URN-BK", "back", "cabinet urn", model.Panel, "sheet.thin", 30, 30), // 12
		made("skin.work/piece-1", "WORK-1", "work skin 1", "skin work", model.Panel, "sheet.thin", 85, 4),
		door, // 14
		made("cabinet.mugs/shelf-1", "MUGS-SH1", "shelf 1", "cabinet mugs", model.Panel, sheet, 25, 22),
		made("cabinet.old/shelf-1", "OLD-SH1", "shelf 1", "cabinet old", model.Panel, sheet, 25, 22),        // 16
		made("cabinet.urn/toe-kick", "URN-TK", "toe kick", "cabinet urn", model.Panel, "sheet.pine", 28, 4), // 17
		made("cabinet.old/bottom", "OLD-BT", "bottom", "cabinet old", model.Panel, sheet, 40, 22))
	door.Bores = cup(5)
	now.Parts = append(studs(37),
		old.Parts[9],
		made("cabinet.bins/side-left", "BINS-L", "left side", "cabinet bins", model.Panel, sheet, 23, 34), // 10
		made("cabinet.bins/side-right", "BINS-R", "right side", "cabinet bins", model.Panel, sheet, 23, 34),
		made("cabinet.urn/back", "URN-BK", "back", "cabinet urn", model.Panel, "sheet.thin", 29, 30), // 12
		made("skin.work/piece-1", "WORK-1", "work skin 1", "skin work", model.Panel, "sheet.thin", 85, 5),
		door, // 14
		made("cabinet.mugs/shelf-1", "MUGS-SH1", "shelf 1", "cabinet mugs", model.Panel, sheet, 25, 22),
		made("cabinet.kegs/shelf-1", "KEGS-SH1", "shelf 1", "cabinet kegs", model.Panel, sheet, 25, 22), // 16
		made("cabinet.urn/toe-kick", "URN-TK", "toe kick", "cabinet urn", model.Panel, sheet, 28, 4),    // 17
		made("cabinet.tea/toe-kick", "TEA-TK", "toe kick", "cabinet tea", model.Panel, sheet, 20, 4))
	top := []string{"knee_wall.bar.top", "given.bar_top"}
	r := &model.Revision{Old: old, New: now}
	for i := range 9 {
		r.Fates = append(r.Fates, model.Fate{Kind: model.MakeAgain, Old: -1, New: i, Offcut: -1, Because: top})
	}
	r.Fates = append(r.Fates,
		model.Fate{Kind: model.Unchanged, Old: 9, New: 9, Offcut: -1},
		model.Fate{Kind: model.Relabel, Old: 10, New: 10, Offcut: -1, Because: []string{"cabinet.bins"}},
		model.Fate{Kind: model.Relabel, Old: 11, New: 11, Offcut: -1, Because: []string{"cabinet.bins"}},
		model.Fate{Kind: model.Rework, Old: 12, New: 12, Offcut: -1, Lay: model.Lay{Over: true, Quarters: 1, Move: geom.Point{X: 30 * inch, Y: 30 * inch}},
			Spare: []geom.Contour{geom.RectContour(geom.R(29*inch, 0, 30*inch, 30*inch))}, Off: inch / 128, Stands: "1/2 in to the left",
			Steps:   []model.Step{{Kind: model.Trim, What: "right edge", Text: "cut the right edge back by 1 in", Count: 1}, {Kind: model.CutOut, What: "outlet urn", Text: "cut the opening outlet urn, 2 3/8 x 3 7/8 in", Count: 1}},
			Because: []string{"cabinet.urn.width"}},
		model.Fate{Kind: model.Patch, Old: 13, New: 13, Offcut: -1, Because: top,
			Missing: []geom.Contour{geom.RectContour(geom.R(0, 4*inch, 85*inch, 5*inch))},
			Steps:   []model.Step{{Kind: model.Extend, What: "top edge", Text: "a strip 1 in wide is missing along the top edge; it would show on the work side", Count: 1}}},
		model.Fate{Kind: model.MakeAgain, Old: -1, New: 14, Offcut: -1, Because: []string{"a", "b", "c", "cabinet.urn.width"}},
		model.Fate{Kind: model.MakeAgain, Old: -1, New: 15, Offcut: 18},
		model.Fate{Kind: model.Relabel, Old: 15, New: 16, Offcut: -1, Lay: model.Lay{Quarters: 2, Move: geom.Point{X: 25 * inch, Y: 22 * inch}}},
		model.Fate{Kind: model.MakeAgain, Old: -1, New: 17, Offcut: -1, Because: []string{"cabinet.urn.board"}},
		model.Fate{Kind: model.NewPart, Old: -1, New: 18, Offcut: 18},
		model.Fate{Kind: model.Dropped, Old: 16, New: -1, Offcut: -1, Serves: []int{18}},
		model.Fate{Kind: model.Dropped, Old: 18, New: -1, Offcut: -1})
	r.Changes = []model.Change{
		{Name: "given.bar_top", Kind: model.Said, Old: "42", New: "43", Means: "a given"},
		{Name: "cabinet.urn.width", Kind: model.Said, Old: "30 in", New: "29 in", OldWritten: "given.wide", NewWritten: "29"},
		{Name: "cabinet.tea", Kind: model.Came, Means: "cabinet tea of run back"},
		{Name: "cabinet.bins", Kind: model.Came, Old: "cabinet.sink", New: "cabinet.bins", Text: "renamed from cabinet.sink"},
		{Name: "cabinet.old", Kind: model.Went, Means: "cabinet old of run back"},
		{Name: "knee_wall.bar.top", Kind: model.Follows, Old: "40 1/2 in", New: "41 1/2 in", Because: []string{"given.bar_top"}},
		{Name: "knee_wall.bar.height", Kind: model.Follows, Old: "40 1/2 in", New: "41 1/2 in", Because: top},
		{Name: "bar_top.oak", Kind: model.Moved, Text: "1 in higher", Because: top},
	}
	r.Findings = []model.FindingChange{
		{New: found("bar-top-high", "Bar top \"oak\" is 43 in high; people on stools of 30 in want 42 in at most: 1 in too high.", 12)},
		{Old: found("gap-narrow", "The gap beside cabinet \"old\" is 1/4 in wide.", 31)},
		{Old: found("shelf-long", "Shelf 1 would sag by 1/8 in.", 40), New: found("shelf-long", "Shelf 1 would sag by 5/32 in.", 41)},
	}
	line := func(item, text string, quantity, price float64) *model.BillLine {
		unit := map[string]string{"stick": "stick", "sheet": "sheet", "slab": "sq ft"}[strings.SplitN(item, ".", 2)[0]]
		return &model.BillLine{Section: unit + "s", Item: item, Text: text, Use: "knee wall bar", Quantity: quantity, Unit: unit, Needed: "9 pieces", Price: price, Priced: price > 0}
	}
	r.Bill = []model.BillChange{
		{Old: line("stick.two_by_four", "2x4, southern pine, dry, 10 ft 0 in", 4, 6.1), New: line("stick.two_by_four", "2x4, southern pine, dry, 10 ft 0 in", 5, 6.1)},
		{New: line("sheet.birch", "birch plywood", 1, 92)},
		{Old: line("sheet.half", "half-inch plywood", 2, 61), New: line("sheet.half", "half-inch plywood", 2, 64)},
		{Old: line("slab.oak", "white oak", 11.3, 0), New: line("slab.oak", "white oak", 12.4, 0)},
		{Old: line("sheet.pine", "pine board", 1, 20)},
	}
	r.Again = []model.BillLine{*line("stick.two_by_four", "2x4, southern pine, dry, 10 ft 0 in", 5, 6.1), *line("sheet.birch", "birch plywood", 1, 92)}
	r.Notes = []string{"sheet.birch is taken for the board of before, measured anew: 3/4 in instead of 23/32 in."}
	return r
}

// one is a revision with one cause, of which only some pieces were cut.
func one() *model.Revision {
	r := every()
	r.Cut, r.Changes, r.Findings, r.Bill, r.Notes = true, r.Changes[:1], nil, nil, nil
	r.Changes = append(r.Changes, model.Change{Name: "knee_wall.bar.top", Kind: model.Follows, Old: "40 1/2 in", New: "41 1/2 in", Because: []string{"given.bar_top"}})
	for i := range r.Fates {
		f := &r.Fates[i]
		f.Because = nil
		if f.New >= 0 && f.New < 9 {
			f.Because = []string{"knee_wall.bar.top", "given.bar_top"}
			if f.New > 2 {
				f.Kind, f.Because = model.NewPart, nil
			}
		}
	}
	return r
}

var sides = Names{"HEAD~1:examples/boatshed", "examples/boatshed"}

// forms are all that a revision is written as.
var forms = map[string]func(io.Writer, *model.Revision) error{
	"text": func(w io.Writer, r *model.Revision) error { return Text(w, r, sides, finding.Style{}) },
	"md":   func(w io.Writer, r *model.Revision) error { return Markdown(w, r, sides) },
	"json": func(w io.Writer, r *model.Revision) error { return JSON(w, r, sides) },
	"html": func(w io.Writer, r *model.Revision) error { return Page(w, r, sides) },
}

func written(t testing.TB, form string, r *model.Revision) string {
	t.Helper()
	var b bytes.Buffer
	if err := forms[form](&b, r); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	for name, r := range map[string]*model.Revision{"every": every(), "one": one()} {
		var got txtar.Archive
		for _, form := range []string{"text", "md", "json"} {
			got.Files = append(got.Files, txtar.File{Name: form, Data: []byte(written(t, form, r))})
		}
		path := filepath.Join("testdata", name+".txtar")
		if *update {
			if err := errors.Join(os.MkdirAll("testdata", 0o755), os.WriteFile(path, txtar.Format(&got), 0o644)); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(txtar.Format(&got))); diff != "" {
			t.Errorf("%s changed (-want +got); run with -update if it should:\n%s", name, diff)
		}
	}
}

// TestAgainWithoutPrices: lines of what is cut anew that carry no price are counted, and left out of the sum.
func TestAgainWithoutPrices(t *testing.T) {
	r := every()
	for _, c := range []struct {
		priced int
		want   string
	}{{0, "without prices"}, {1, "in all 30.50, without 2 lines whose price is not known"}, {2, "in all 122.50, without 1 line whose price is not known"}} {
		again := append(slices.Clone(r.Again), model.BillLine{Item: "screw.brass"})
		for i := range again {
			again[i].Priced = i < c.priced
		}
		if got := (&report{Revision: &model.Revision{Again: again}}).againSum(); got != c.want {
			t.Errorf("%d with a price: %q, want %q", c.priced, got, c.want)
		}
	}
}

func TestEmptyPrintsNothing(t *testing.T) {
	m := every().New
	r := &model.Revision{Old: m, New: m, Fates: []model.Fate{{Kind: model.Unchanged, Offcut: -1}}}
	if got := written(t, "text", r) + written(t, "md", r); got != "" {
		t.Errorf("printed %q", got)
	}
	if !strings.Contains(written(t, "html", r), "differ in nothing") || !strings.Contains(written(t, "json", r), `"differ": false`) {
		t.Error("page or JSON do not say that nothing differs")
	}
}

func TestDeterministic(t *testing.T) {
	for form := range forms {
		r := every()
		first := written(t, form, r)
		if !reflect.DeepEqual(r, every()) {
			t.Errorf("%s: the revision was written to", form)
		}
		if written(t, form, every()) != first {
			t.Errorf("%s: the same revision gives different bytes", form)
		}
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space") }

func TestWriteErrorIsReturned(t *testing.T) {
	for form, write := range forms {
		if write(fullDisk{}, every()) == nil {
			t.Errorf("%s: an error of the writer is lost", form)
		}
	}
}

func TestTextFitsAndIsPlain(t *testing.T) {
	for _, width := range []int{60, 80, 120} {
		var b bytes.Buffer
		if err := Text(&b, every(), sides, finding.Style{Width: width}); err != nil {
			t.Fatal(err)
		}
		for l := range strings.SplitSeq(b.String(), "\n") {
			if finding.Columns(l) > width {
				t.Errorf("%d columns: %q", width, l)
			}
		}
		if strings.Contains(b.String(), "\x1b") {
			t.Error("colour that nobody asked for")
		}
	}
	var b bytes.Buffer
	if err := Text(&b, every(), sides, finding.Style{Color: true}); err != nil {
		t.Fatal(err)
	}
	bare := b.String()
	for _, tint := range append(tints[:], "\x1b[0m") {
		if tint != "" {
			bare = strings.ReplaceAll(bare, tint, "")
		}
	}
	if bare == b.String() || bare != written(t, "text", every()) {
		t.Error("colour changes more than the colour of fates, or nothing")
	}
}

func TestLongListsAreCut(t *testing.T) {
	r := every()
	for i := range 500 {
		r.Changes = append(r.Changes, model.Change{Name: fmt.Sprintf("cabinet.n%d.left", i), Kind: model.Moved, Text: fmt.Sprintf("%d in to the right", i)})
	}
	text, md := written(t, "text", r), written(t, "md", r)
	if n := strings.Count(text, "to the right"); n > mostLines || !strings.Contains(text, fmt.Sprintf("and %d more; --format json", 501-n-1)) {
		t.Errorf("%d lines in\n%s", n, text)
	}
	if n := strings.Count(md, "to the right"); n > mostRows || !strings.Contains(md, "and 401 more; `--format json`") || !strings.Contains(md, "<details>") {
		t.Errorf("%d rows in\n%s", n, md)
	}
	if n := strings.Count(written(t, "json", r), "to the right"); n != 500 {
		t.Errorf("JSON has %d of 500", n)
	}
}

// Worked out by hand: labels that count on are told by their ends, owners of one kind
// together, and a cabinet under another name by how its labels begin.
func TestGathering(t *testing.T) {
	part := func(label, name, owner string) *model.Part {
		return &model.Part{Label: label, Name: name, Owner: owner}
	}
	for _, test := range []struct {
		parts          []*model.Part
		labels, called string
	}{
		{[]*model.Part{part("A-S1", "stud 1", "knee wall bar"), part("A-S2", "stud 2", "knee wall bar"), part("A-S4", "stud 4", "knee wall bar")},
			"A-S1, A-S2 and A-S4", "3 studs of knee wall bar"},
		{[]*model.Part{part("A-S9", "stud 9", "knee wall bar"), part("A-S10", "stud 10", "knee wall bar"), part("A-S11", "stud 11", "knee wall bar")},
			"A-S9 … A-S11", "studs 9 to 11 of knee wall bar"},
		{[]*model.Part{part("U-L", "left side", "cabinet u"), part("V-R", "right side", "cabinet v")}, "U-L and V-R", "2 sides of cabinets u and v"},
		{[]*model.Part{part("U-SH1", "shelf 1", "cabinet u"), part("K-SH1", "shelf 1", "bay k")}, "U-SH1 and K-SH1", "2 shelves of cabinet u and bay k"},
	} {
		if labels, called := ranges(test.parts), called(test.parts); labels != test.labels || called != test.called {
			t.Errorf("%q, %q; want %q, %q", labels, called, test.labels, test.called)
		}
	}
	r := &model.Revision{Old: &model.Model{}, New: &model.Model{}}
	for i, end := range []string{"L", "R", "BT"} {
		r.Old.Parts = append(r.Old.Parts, *part("URN-"+end, end, "cabinet urn"))
		r.New.Parts = append(r.New.Parts, *part("TEA-"+end, end, "cabinet tea"))
		r.Fates = append(r.Fates, model.Fate{Kind: model.Relabel, Old: i, New: i, Offcut: -1})
	}
	if groups := reported(r, sides).groups; len(groups) != 1 || groups[0].words[0] != "URN-… is now TEA-…" {
		t.Errorf("%+v", groups)
	}
}
