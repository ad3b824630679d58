package table

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"flag"
	"io"
	"math"
	"os"
	"path/filepath"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const inch = length.Inch

func small() *model.Model {
	return &model.Model{
		Build: model.Build{Name: "shed & bar", Unit: length.Inches, Marks: inch / 32, Revision: "B"},
		Cuts: []model.Cut{
			{Parts: []string{"URN-L", "URN-R"}, Name: "left side, right side", Stock: "sheet.birch", Count: 2, Kind: model.Panel,
				Length: 30 * inch, Width: 23*inch + inch/4, Thickness: 23 * inch / 32, Grain: model.GrainY, Where: []string{"cabinet urn"}},
			{Parts: []string{"-1"}, Name: `block "A"`, Stock: "stick.two_by_four", Count: 1, Kind: model.Lumber,
				Length: 12 * inch, Width: 3*inch + inch/2 + 1, Thickness: 38 * length.Millimetre, Where: []string{"=cmd", "knee wall"},
				Banded: "front edge", Good: model.GoodBoth},
		},
		Bill: []model.BillLine{
			{Section: "sheets", Item: "sheet.birch", Text: `birch, 23/32 in, "B/BB"`, Use: "cabinet urn", Quantity: 2, Unit: "sheet",
				Needed: "14 pieces", WeightKg: 71.236, Price: 79.9, Priced: true},
			{Section: "slabs", Item: "slab.maple", Text: "+maple", Quantity: 1.58, Unit: "m2", Price: 200.05, Priced: true},
			{Section: "screws", Item: "screw.free", Text: "left from last time", Quantity: 12, Unit: "piece", Priced: true},
			{Section: "screws", Item: "screw.odd", Text: "single", Quantity: 3, Unit: "piece", Price: 0.035, Priced: true},
			{Section: "consumables", Item: "nail plates", Text: "nail plates", Unit: "piece", Needed: "not known"},
		},
	}
}

func output(t *testing.T, write func(io.Writer, *model.Model) error, m *model.Model) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

var writers = map[string]func(io.Writer, *model.Model) error{
	"bill.csv": BillCSV, "bill.json": BillJSON, "cutlist.csv": CutList,
}

func TestGolden(t *testing.T) {
	for name, write := range writers {
		got := output(t, write, small())
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(got)); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func records(t *testing.T, data []byte) [][]string {
	t.Helper()
	all, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// 2 x 79.90 = 159.80; 1.58 x 200.05 = 316.079, 316.08; 0; 3 x 0.035 = 0.105,
// 0.11 (halves up); together 475.99. The nail plates have no price.
func TestBillNumbers(t *testing.T) {
	want := [][]string{
		{"quantity", "weight_kg", "price", "cost"},
		{"2", "71.24", "79.90", "159.80"},
		{"1.58", "", "200.05", "316.08"},
		{"12", "", "0.00", "0.00"},
		{"3", "", "0.035", "0.11"},
		{"", "", "", ""}, // not known; "0" would read as none
		{"", "", "", "475.99"},
	}
	var got [][]string
	all := records(t, output(t, BillCSV, small()))
	for _, r := range all {
		got = append(got, []string{r[4], r[7], r[8], r[9]})
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
	if last := all[len(all)-1]; last[0] != "total" || last[2] != "1 line carries no price and is not in it" {
		t.Errorf("%q", last)
	}

	var bill struct {
		Lines []map[string]any
		Total struct {
			Cost     float64
			Unpriced int `json:"unpriced_lines"`
		}
	}
	if err := json.Unmarshal(output(t, BillJSON, small()), &bill); err != nil {
		t.Fatal(err)
	}
	if bill.Total.Cost != 475.99 || bill.Total.Unpriced != 1 {
		t.Errorf("total %+v", bill.Total)
	}
	if l := bill.Lines[4]; l["quantity"] != nil || l["weight_kg"] != nil || l["price"] != nil || l["cost"] != nil {
		t.Errorf("what is not known is there: %v", l)
	}
	if l := bill.Lines[2]; l["price"] != 0.0 || l["quantity"] != 12.0 || bill.Lines[1]["text"] != "+maple" {
		t.Errorf("%v, %v", l, bill.Lines[1])
	}
}

// What people read is rounded where no tape shows it; the decimal column is exact
// to the nanometre: 3 1/2 in and 1 nm are 88.900001 mm.
func TestCutListLengths(t *testing.T) {
	got := records(t, output(t, CutList, small()))
	want := []string{"12 in", "3 1/2 in", "1.496 in", "304.8", "88.900001", "38", "none", "'=cmd; knee wall", "front edge", "both", ""}
	if diff := cmp.Diff(want, got[2][5:]); diff != "" {
		t.Error(diff)
	}
	m := small()
	m.Build.Unit = length.Millimetres
	if got := records(t, output(t, CutList, m))[1][5:9]; !cmp.Equal(got, []string{"762 mm", "590.55 mm", "18.26 mm", "762"}) {
		t.Error(got)
	}
}

// No text becomes a formula, and every text can be told from what is read back.
func TestPlain(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "URN-L": "URN-L", "=1+1": "'=1+1", "+1": "'+1", "-1": "'-1", "@x": "'@x", "\tx": "'\tx", "\rx": "'\rx", "\n=x": "'\n=x", "a=b": "a=b",
	} {
		if got := plain(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		m := &model.Model{Cuts: []model.Cut{{Name: text, Parts: []string{text}, Stock: text, Where: []string{text}}}}
		var b bytes.Buffer
		if err := CutList(&b, m); err != nil {
			t.Fatal(err)
		}
		all, err := csv.NewReader(&b).ReadAll()
		if err != nil || len(all) != 2 {
			t.Fatalf("%v: %q", err, all)
		}
		for _, i := range []int{1, 2, 4, 12} {
			if cell := all[1][i]; cell != "" && bytes.ContainsRune([]byte("=+-@\t\r"), rune(cell[0])) {
				t.Fatalf("cell %q begins a formula", cell)
			}
		}
	})
}

func TestNoLines(t *testing.T) {
	m := &model.Model{}
	if all := records(t, output(t, BillCSV, m)); len(all) != 2 || all[1][9] != "0.00" || all[1][2] != "every line carries a price" {
		t.Errorf("%q", all)
	}
	if got := output(t, BillJSON, m); !bytes.Contains(got, []byte(`"lines": []`)) {
		t.Errorf("%s", got)
	}
}

func TestNumbers(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{decimal(1200, 3), "1200"}, {decimal(0.0004, 3), "0"}, {decimal(-0.0004, 3), "0"}, {decimal(1.5, 3), "1.5"}, {decimal(100, 0), "100"},
		{known(0, 2), ""}, {known(0.001, 2), "0"}, {money(0), "0.00"}, {money(7), "7.00"}, {money(0.5), "0.50"}, {money(0.0351), "0.0351"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("full") }

func TestAWriterThatFails(t *testing.T) {
	for name, write := range writers {
		if write(full{}, small()) == nil {
			t.Errorf("%s: no error", name)
		}
	}
	if BillJSON(io.Discard, &model.Model{Bill: []model.BillLine{{Quantity: math.NaN()}}}) == nil {
		t.Error("NaN was written")
	}
}

// The column is there where the table asks for it: 300 x 199 mm is less than a square of
// 245 mm, 60 025 mm², and 300 x 201 is more.
func TestSmallPieces(t *testing.T) {
	m := small()
	for label, high := range map[string]length.Length{"URN-L": 201, "URN-R": 201, "-1": 199} {
		m.Parts = append(m.Parts, model.Part{Label: label, Stock: "sheet.birch", Outline: geom.RectContour(geom.R(0, 0, 300*length.Millimetre, high*length.Millimetre))})
	}
	if got := records(t, output(t, CutList, m))[0]; len(got) != 16 {
		t.Errorf("columns %q", got)
	}
	m.Table.Small = 245 * length.Millimetre
	listed := func() (got []string) {
		for _, r := range records(t, output(t, CutList, m)) {
			got = append(got, r[15])
		}
		return got
	}
	if got, want := listed(), []string{"small", "", "yes"}; !cmp.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	m.Parts[len(m.Parts)-1].Stock, m.Parts[len(m.Parts)-2].Stock, m.Parts[len(m.Parts)-3].Stock = "steel.flat", "steel.flat", "steel.flat"
	if got, want := listed(), []string{"small", "", ""}; !cmp.Equal(got, want) {
		t.Errorf("of steel %q, want %q", got, want)
	}
}

// Two sheets: of the line of both sides, one lies on each; a stick has no height.
func TestWherePiecesLie(t *testing.T) {
	m := laidOut()
	got := records(t, output(t, CutList, m))
	last := func(r []string) string { return r[len(r)-1] }
	if a, b := last(got[1]), last(got[2]); a != "URN-L: 1 at 1/4 in, 12 in; URN-R: 2 at 0 in, 0 in" || b != "'-1: 1 at 30 in" && b != "-1: 1 at 30 in" {
		t.Errorf("%q, %q", a, b)
	}
	sheets := records(t, output(t, Sheets, m))
	want := []string{"sheet.birch", "1", "2", "URN-L", "left side", "1/4 in", "12 in", "30 in", "23 1/4 in", "yes", "6.35", "304.8", "762", "590.55"}
	if len(sheets) != 3 || !cmp.Equal(sheets[1], want) {
		t.Error(cmp.Diff(want, sheets[1]))
	}
	cuts := records(t, output(t, SawCuts, m))
	// The cut is at 40 1/4 in of the sheet, and what it parts begins at 1/4 in.
	want = []string{"sheet.birch", "1", "1", "across", "40 in", "1/4 in", "1/4 in", "95 1/2 in", "47 1/2 in", "", "1016", "6.35", "6.35", "2425.7", "1206.5"}
	if len(cuts) != 2 || !cmp.Equal(cuts[1], want) {
		t.Error(cmp.Diff(want, cuts[1]))
	}
	// Cut to its length, and then across, the side is as it is to be.
	b, side := &m.Layouts[0].Blanks[0], m.Layouts[0].Blanks[0].Placed[0].At
	strip := geom.Rect{X: side.X, Y: geom.Span{Lo: side.Y.Lo, Hi: 48 * length.Inch}}
	b.Cuts = append(b.Cuts, model.SawCut{Along: true, At: side.Y.Hi, Of: strip})
	if cuts = records(t, output(t, SawCuts, m)); cuts[2][9] != "URN-L" || cuts[0][9] != "gives" {
		t.Errorf("the second cut gives %q", cuts[2][9])
	}
}

// laidOut is small with its pieces on two sheets and a stick.
func laidOut() *model.Model {
	const inch, quarter = length.Inch, length.Inch / 4
	m := small()
	m.Parts = []model.Part{
		{ID: "l", Label: "URN-L", Name: "left side"}, {ID: "r", Label: "URN-R", Name: "right side"}, {ID: "b", Label: "-1", Name: "block"},
	}
	side := geom.R(0, 0, 30*inch, 23*inch+quarter)
	m.Layouts = []model.Layout{
		{Stock: "sheet.birch", Kind: model.Panel, Blanks: []model.Blank{
			{Length: 96 * inch, Width: 48 * inch, Placed: []model.Placed{{Part: "l", At: side.Shift(geom.Point{X: quarter, Y: 12 * inch}), Turned: true}},
				Cuts: []model.SawCut{{At: 40*inch + quarter, Of: geom.R(quarter, quarter, 96*inch-quarter, 48*inch-quarter)}}},
			{Length: 96 * inch, Width: 48 * inch, Placed: []model.Placed{{Part: "r", At: side}}},
		}},
		{Stock: "stick.two_by_four", Kind: model.Lumber, Blanks: []model.Blank{{Length: 96 * inch, Placed: []model.Placed{{Part: "b", At: geom.R(30*inch, 0, 42*inch, 0)}}}}},
	}
	return m
}
