package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
	"barwright/lang/length"
)

// wayByHand is what a way comes to, worked out on paper.
type wayByHand struct {
	example, key       string
	long, need         length.Length
	past, parts        []string // labels of the parts that are bored, in order
	supports           int
	low, high          length.Length // between which the middle of each hole is
	holeWide, holeHigh length.Length
}

const (
	in = length.Inch
	mm = length.Millimetre
)

// waysByHand are the ways of cables and cords in the examples.
//
// The cooler's cord begins in the middle of the foot of its rear: 30 of cabinet "kettle", the
// gap of 3/8 and half of 23 1/2, u = 42 1/8; v = 3/4; z = 1 1/2, on its blocks. Its outlet
// is at u = 62 1/2, 17 over the floor, which is 6/32 lower than the datum there by the
// readings (68, 0), 8/32, and (0, 0), 2/32, less 1.365/32: z = 16 13/16. It is reached where
// the back ends, v = 7/32. The plug of 1 1/2 passes the left side of "cups", which begins at
// 7/32: 1/2 of wood and half of the plug, v = 1 15/32. So the cord is
//
//	20 3/8 + 15 5/16 + (1 15/32 - 3/4) + (1 15/32 - 7/32) = 37 21/32
//
// long, and with 6 of slack 43 21/32. Its hole is over the bottom, 4 + 23/32, by half of the
// plug and 1/4 at least, 5 23/32; and under the lowest hole for a shelf pin, which is 215.856 mm
// up, by 2.5 mm, 1/2 in and half of the plug: 8.498 - 0.098 - 1 1/4 = 7.15, 7 5/32 at most.
//
// The scale's cable goes through the knee wall, whose framing is 109 1/2 less the skin of 7/32
// at its end: 109 9/32. The middles of the two boxes are 27 from its ends, and a box that
// lies is 3 3/4 wide: 109 9/32 - 54 - 3 3/4 = 51 17/32. With 12 of slack and 6 free in each box
// 75 17/32 are needed, 6.3 ft, sold as 7; staples stand 12 from the boxes, with 27 17/32
// between them, less than 54: two. The boxes are 37 1/2 high in the middle, and so are the
// holes in the studs at 32, 48, 64 and 79 19/32 (shimsByHand); they leave (3 1/2 - 3/4)/2 =
// 1 3/8 of wood, more than 1 1/4, and want no plates.
//
// The fridge's cord begins 600 + 5 + 595/2 = 902.5 from the left end of its run, 25 before its
// rear and 40 up, on its blocks. The run ends 4.05 before the corner at 3622 and is 2740
// long: its left end is at 877.95077, so that the outlet, at 2180, is 399.54923 further along;
// it is 480 over a floor that is 4 + 2180/720 = 7.028 deep there, and the datum 2.136 (survey_test.go): 475
// up, in half millimetres. It is reached before the back of 6.4. The side begins at the rear, 12 of wood
// and half of the plug before it are v = 32, but half of it and 6 before the back 32.4, 32.5 in
// half millimetres:
//
//	399.54923 + 435 + (32.5 - 25) + (32.5 - 6.4) = 868.14923
//
// and with 150 of slack 1018.14923. The hole is over the bottom, 150 + 17.8, by 26 at least,
// 193.8; and no higher than the outlet, or the cord would be longer.
var waysByHand = []wayByHand{
	{
		"boatshed", "cord.cooler", 37*in + 21*in/32, 43*in + 21*in/32, []string{"bay.cooler", "cabinet.cups"}, []string{"CUPS-L"}, 0,
		5*in + 23*in/32, 7*in + 5*in/32, 3 * in / 2, 3 * in / 2,
	},
	{
		"boatshed", "cable.scale", 51*in + 17*in/32, 75*in + 17*in/32, []string{"knee_wall.bar"}, []string{"BAR-S3", "BAR-S4", "BAR-S5", "BAR-S6"}, 2,
		75 * in / 2, 75 * in / 2, 3 * in / 4, 3 * in / 4,
	},
	{
		"servery", "cord.fridge", 868_149_230, 1_018_149_230, []string{"bay.fridge", "cabinet.plates"}, []string{"PLATES-L"}, 0,
		193_800_000, 475 * mm, 40 * mm, 40 * mm,
	},
}

// TestWaysByHand compares them with what is built.
func TestWaysByHand(t *testing.T) {
	for _, want := range waysByHand {
		m := compiled(t, want.example)
		w := wayNamed(t, m, want.key)
		if w.Length != want.long || w.Need != want.need || w.Supports != want.supports || !slices.Equal(w.Past, want.past) {
			t.Errorf("%s is %d long, %d are needed, with %d staples, past %v", want.key, w.Length, w.Need, w.Supports, w.Past)
		}
		var parts []string
		for _, h := range w.Holes {
			parts = append(parts, m.Parts[slices.IndexFunc(m.Parts, func(p model.Part) bool { return p.ID == h.Part })].Label)
			if h.At.Z < want.low || h.At.Z > want.high || h.Wide != want.holeWide || h.High != want.holeHigh || h.Plates != 0 {
				t.Errorf("%s: a hole of %d by %d at %d, with %d plates", want.key, h.Wide, h.High, h.At.Z, h.Plates)
			}
		}
		if !slices.Equal(parts, want.parts) {
			t.Errorf("%s bores %v", want.key, parts)
		}
	}
}

// TestWaysReachTheShop looks for the holes where they are made: in the DXF of a side as what is
// cut, and of a stud, which is bored through its sides, as a line; and for what is bought, and
// what the page tells.
func TestWaysReachTheShop(t *testing.T) {
	m := compiled(t, "boatshed")
	files := read(t, m)
	side, cord := partLabelled(t, m, "CUPS-L"), wayNamed(t, m, "cord.cooler")
	hole := cord.Holes[0]
	_, v := m.Runs[0].Frame.Local(geom.Point{X: hole.At.X, Y: hole.At.Y})
	at := side.Placement
	face, _ := at.Local(geom.Box{U: at.Box.U, V: geom.About(v, hole.Wide), Z: geom.About(hole.At.Z, hole.High)})
	if !slices.ContainsFunc(files["parts/CUPS-L.dxf"].Contours, func(c dxftest.Contour) bool { return near(c.Shape.Bounds(), face) }) {
		t.Errorf("CUPS-L.dxf has no hole at %v", face)
	}
	stud := partLabelled(t, m, "BAR-S3")
	high := wayNamed(t, m, "cable.scale").Holes[0].At.Z - stud.Placement.Box.Z.Lo
	if !slices.ContainsFunc(files["parts/BAR-S3.dxf"].Lines, func(l dxftest.Line) bool {
		return length.Apart(l.From.Y, high) < mm/100 && length.Apart(l.To.Y, high) < mm/100 && length.Apart(l.From.X, l.To.X) > in
	}) {
		t.Errorf("BAR-S3.dxf has no line at %d: %v", high, files["parts/BAR-S3.dxf"].Lines)
	}
	written := filesIn(t, built(t, "boatshed"))
	for item, want := range map[string]string{"cable": "7", "cable staples": "3", "drain.waste pipe": "2", "drain.waste trap": "1"} {
		if got := quantityOf(t, written["bill.json"], item); got != want {
			t.Errorf("the bill has %s of %s, want %s", got, item, want)
		}
	}
	row := regexp.MustCompile(`data-part="cabinet.cups/side-left"><td[^>]*>cord cooler</td>.*?1 1/2 × 1 1/2`)
	page := written["index.html"]
	if !row.Match(page) {
		t.Error("the page does not list the hole of the cord under its ways")
	}
	for _, text := range []string{"cable scale", "43 21/32", "75 17/32", "Local code and licensed practice decide what is wired and plumbed"} {
		if !bytes.Contains(page, []byte(text)) {
			t.Errorf("the page lacks %q", text)
		}
	}
}

// TestWaysInRevisions moves the cooler's outlet by 2 along, where the floor is as deep to a
// mark: its cord is 2 longer. A wider plug has its hole enlarged in the side; with 12 of slack more, 87 17/32 of
// cable are 8 ft.
func TestWaysInRevisions(t *testing.T) {
	for _, c := range []struct {
		edit string
		told []string
	}{
		{`- outlet "cooler" { at = [62.5, 17] }
+ outlet "cooler" { at = [64.5, 17] }`, []string{"cord.cooler (way, needed)  2 in more"}},
		{`- length = "6ft"
+ length = "6ft"
+ plug = { width = 2, height = 2 }`, []string{"cord.cooler holes          1/4 in lower", "rework      CUPS-L, left side of cabinet cups: enlarge the opening for cord\n"}},
		{`- to   = outlet.scale
+ to   = outlet.scale
+ slack = 24`, []string{"cable.scale needed  12 in more", "7 ft → 8 ft"}},
	} {
		dir := t.TempDir()
		for _, file := range edittest.Edited(t, edittest.Folder(t, example("boatshed")), c.edit) {
			if err := os.WriteFile(filepath.Join(dir, file.Name), file.Text, 0o666); err != nil {
				t.Fatal(err)
			}
		}
		var stdout, stderr bytes.Buffer
		if status := run([]string{"diff", example("boatshed"), dir}, streams{out: &stdout, err: &stderr}); status != exitClean {
			t.Fatalf("exit status %d\n%s", status, stderr.String())
		}
		for _, want := range c.told {
			if !strings.Contains(stdout.String(), want) {
				t.Errorf("after %s\nthe revision lacks %q:\n%s", c.edit, want, stdout.String())
			}
		}
	}
}

func wayNamed(t *testing.T, m *model.Model, key string) *model.Way {
	t.Helper()
	i := slices.IndexFunc(m.Ways, func(w model.Way) bool { return w.Key() == key })
	if i < 0 {
		t.Fatalf("there is no way of %s", key)
	}
	return &m.Ways[i]
}

// quantityOf is how much of an item a bill has.
func quantityOf(t *testing.T, text []byte, item string) string {
	t.Helper()
	var bill struct {
		Lines []struct {
			Item     string
			Quantity json.Number
		}
	}
	if err := json.Unmarshal(text, &bill); err != nil {
		t.Fatal(err)
	}
	for _, l := range bill.Lines {
		if l.Item == item {
			return l.Quantity.String()
		}
	}
	return "none"
}

// near reports whether two rectangles are the same to a hundredth of a millimetre.
func near(a, b geom.Rect) bool {
	return a.Grow(mm/100).Contains(b) && b.Grow(mm/100).Contains(a)
}
