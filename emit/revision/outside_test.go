package revision

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
)

// drawn is the revision made by hand with the views of a bar whose knee wall grew.
func drawn() *model.Revision {
	r := every()
	old, now := viewtest.Bar(), viewtest.Bar()
	for i := range now.Parts {
		p := &now.Parts[i]
		if p.Kind == model.Lumber && p.Placement.Box.Z.Size() > p.Placement.Box.U.Size() {
			p.Placement.Box.Z.Hi += 40 * milli
		}
	}
	for i := range now.Slabs {
		now.Slabs[i].Box.Z = now.Slabs[i].Box.Z.Shift(40 * milli)
		now.Slabs[i].Box.V.Hi += 30 * milli
	}
	r.Old.Views, r.New.Views = view.Views(old), view.Views(now)
	r.Old.Room, r.New.Room, r.Old.Runs, r.New.Runs = old.Room, now.Room, old.Runs, now.Runs
	return r
}

// measured is what the browser says of a page in a frame of one width.
type measured struct {
	Width, Scroll, Svgs, Small int
	Outside                    []string
	Unfilled, Dashed           int
	Colours                    []string
}

var result = regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`)

// The outside check sets the page in a browser, at the widths of a desk, a phone and
// the narrowest phone: nothing is cut off, no type is too small, hatching is found, and
// old lines differ from new ones by more than their colour.
func TestInBrowser(t *testing.T) {
	browser := browserOf(t)
	measure, err := os.ReadFile(filepath.Join("testdata", "measure.js"))
	if err != nil {
		t.Fatal(err)
	}
	widths, page := []int{1280, 390, 320}, written(t, "html", drawn())
	var b bytes.Buffer
	b.WriteString("<!DOCTYPE html><meta charset=utf-8><pre id=\"measured\"></pre>")
	for _, width := range widths {
		fmt.Fprintf(&b, `<iframe style="border:0;width:%dpx;height:900px" srcdoc="%s"></iframe>`, width, html.EscapeString(page))
	}
	fmt.Fprintf(&b, "<script>%s</script>", measure)
	file := filepath.Join(t.TempDir(), "frames.html")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir="+t.TempDir(),
		"--window-size=1400,1000", "--dump-dom", "file://"+file).Output()
	if err != nil {
		t.Fatal(err)
	}
	match := result.FindSubmatch(out)
	if match == nil {
		t.Fatal("the browser gave no answer")
	}
	var all []measured
	if err := json.Unmarshal([]byte(html.UnescapeString(string(match[1]))), &all); err != nil || len(all) != len(widths) {
		t.Fatalf("%v: %s", err, match[1])
	}
	for _, m := range all {
		if m.Scroll > m.Width || m.Small > 0 || len(m.Outside) > 0 || m.Unfilled > 0 {
			t.Errorf("%d px: %+v", m.Width, m)
		}
		slices.Sort(m.Colours)
		if m.Svgs < 6 || m.Dashed != 1 || len(slices.Compact(m.Colours)) != 3 {
			t.Errorf("%d px: %+v", m.Width, m)
		}
	}
}

// browserOf returns the path of a browser.
func browserOf(t *testing.T) string {
	t.Helper()
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal("no Chromium is here")
	}
	t.Skip("OUTSIDE CHECK SKIPPED: no Chromium is here; the page is not looked at in a browser")
	return ""
}

// A run that begins 100 mm further right in the room: what stands at one place there
// lies on itself in every view that counts from the run.
func TestViewsAreAlignedByTheRoom(t *testing.T) {
	run := func(x geom.Length) *model.Model {
		return &model.Model{
			Runs:      []model.Run{{Name: "back", Frame: geom.Frame{Origin: geom.Point{X: x, Y: 50 * milli}}}},
			KneeWalls: []model.KneeWall{{Name: "bar", Run: "back"}},
		}
	}
	r := reported(&model.Revision{Old: run(0), New: run(100 * milli)}, sides)
	for name, want := range map[string]geom.Length{
		"elevation-back": -100 * milli, "fronts-back": -100 * milli, "knee-wall-bar": -100 * milli,
		"knee-wall-bar-room": 100 * milli, "section-bar": 0, "plan": 0,
	} {
		if got := r.shift(name); got != (geom.Point{X: want}) {
			t.Errorf("%s is moved by %v", name, got)
		}
	}
}

// A page of a large build shows some pieces and counts the others.
func TestPageOfManyPiecesIsSmall(t *testing.T) {
	r := every()
	for i := range 5000 {
		p := made(fmt.Sprintf("cabinet.n%d/back", i), fmt.Sprintf("N%d-BK", i), "back", fmt.Sprintf("cabinet n%d", i), model.Panel, "sheet.thin", 20, 30)
		r.Old.Parts = append(r.Old.Parts, p)
		p.Outline = geom.RectContour(geom.R(0, 0, 21*inch+geom.Length(i)*milli, 30*inch))
		r.Fates = append(r.Fates, model.Fate{Kind: model.MakeAgain, Old: -1, New: len(r.New.Parts), Offcut: -1})
		r.New.Parts = append(r.New.Parts, p)
	}
	pieces, more := reported(r, sides).pieces()
	if len(pieces) != mostPieces || more < 4800 {
		t.Errorf("%d pieces shown, %d more", len(pieces), more)
	}
	if n := len(written(t, "html", r)); n > 3_000_000 {
		t.Errorf("the page has %d bytes", n)
	}
}
