package page

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
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// measured is what the browser says of a page in a frame of one width.
type measured struct {
	Width, Scroll, Svgs, Texts, Small int
	Overlaps, Outside                 []string
	Twin                              int
	ShapesOfRow, AfterLeaving         int
	RowTitle                          string
	RowOfShape, SecondRowLit          bool
	TabStops                          int
	CutLit, BillLit, LayoutLit        int
	Said                              string
	FieldHeld, Entered, Cleared       bool
	Filtered                          []string
	FoundShapes                       int
	Counted                           string
}

var result = regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`)

// frame is a page at a width in CSS pixels.
type frame struct {
	width int
	m     *model.Model
}

// The outside check sets the page in a browser, at the widths of a desk, a
// phone and the narrowest phone, and has the browser measure its own letters.
func TestInBrowser(t *testing.T) {
	browser := find(t, "chromium", "chromium-browser")
	measure, err := os.ReadFile(filepath.Join("testdata", "measure.js"))
	if err != nil {
		t.Fatal(err)
	}
	frames := []frame{{1280, bar()}, {390, bar()}, {320, bar()}, {1280, strange()}, {320, strange()}, {1280, fitted()}, {390, fitted()}}
	for _, name := range examples {
		m := example(t, name)
		frames = append(frames, frame{1280, m}, frame{390, m})
	}
	for _, m := range []*model.Model{
		example(t, "boatshed", "width   = 30\n", "width   = 33.375\n", "width    = 42\n", "width    = 39 + 1/16\n", "bar_top     = 42", "bar_top     = 42.375"),
		example(t, "boatshed", "width   = 18\n", "width   = 20.25\n", "counter_top = 36", "counter_top = 35.1875", "width    = 42\n", "width    = 44.5\n"),
		example(t, "servery", `"urn" { width = 600 }`, `"urn" { width = 547 }`, `"tea" { width = 600 }`, `"tea" { width = 533 }`, "bar_top     = 1110", "bar_top     = 1127"),
	} {
		frames = append(frames, frame{1280, m})
	}
	var b bytes.Buffer
	b.WriteString("<!DOCTYPE html><meta charset=utf-8><pre id=\"measured\"></pre>")
	for _, f := range frames {
		fmt.Fprintf(&b, `<iframe style="border:0;width:%dpx;height:900px" srcdoc="%s"></iframe>`, f.width, html.EscapeString(written(t, f.m)))
	}
	fmt.Fprintf(&b, "<script>%s</script>", measure)
	file := filepath.Join(t.TempDir(), "frames.html")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	var all []measured
	match := result.FindSubmatch(run(t, browser, "--window-size=1400,1000", "--dump-dom", "file://"+file))
	if match == nil {
		t.Fatal("the browser gave no answer")
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(string(match[1]))), &all); err != nil {
		t.Fatalf("%v: %s", err, match[1])
	}
	if len(all) != len(frames) {
		t.Fatalf("%d pages measured", len(all))
	}
	for i, m := range all {
		m.check(t, frames[i].m)
	}
}

// strange is the bar with names of wide, of foreign and of very many letters,
// in millimetres.
func strange() *model.Model {
	m := viewtest.Bar()
	m.Build.Unit = length.Millimetres
	names := [...]string{"WWWWMMMM@@", "木工カウンター", strings.Repeat("mmmm ", 20), "шкафЩЩЩ", "ÄÖÜßÆŒ"}
	for i := range m.Runs {
		for j := range m.Runs[i].Boxes {
			m.Runs[i].Boxes[j].Name = names[(i+j)%len(names)]
		}
	}
	longest := strings.Repeat("W", 40) // a name has 40 bytes at most
	for i := range m.Cuts {
		m.Cuts[i].Stock, m.Cuts[i].Parts[0] = "stick."+longest, longest+"-BT"
	}
	for i := range m.Parts {
		m.Parts[i].Stock = "stick." + longest
		for j := range m.Parts[i].Openings {
			m.Parts[i].Openings[j].Name = names[(i+j)%len(names)]
		}
	}
	m.Room.Walls[0].Outlets[0].Name, m.Room.Walls[1].Name, m.Slabs[0].Name = names[2], names[1], names[0]
	m.Views = view.Views(m)
	return m
}

func (m *measured) check(t *testing.T, of *model.Model) {
	t.Helper()
	texts, drawn := 0, slices.Concat(of.Views, of.Sheets, of.Sticks)
	for _, v := range drawn {
		texts += len(v.Texts) + len(v.Dims)
	}
	if m.Svgs != len(drawn) || m.Texts != texts {
		t.Errorf("%d px: %d drawings with %d texts; want %d with %d", m.Width, m.Svgs, m.Texts, len(drawn), texts)
	}
	for _, o := range m.Overlaps {
		t.Errorf("%d px: texts overlap: %s", m.Width, o)
	}
	for _, o := range m.Outside {
		t.Errorf("%d px: text is cut off: %s", m.Width, o)
	}
	if m.Twin != 1 {
		t.Errorf("%d px: a text set twice counts as %d overlaps", m.Width, m.Twin)
	}
	if m.Scroll > m.Width {
		t.Errorf("%d px: the page is %d px wide", m.Width, m.Scroll)
	}
	if m.Small > 0 {
		t.Errorf("%d px: %d drawings have type below 10 px", m.Width, m.Small)
	}
	if m.ShapesOfRow < 2 || m.AfterLeaving != 0 || !m.RowOfShape || !m.SecondRowLit || m.TabStops != 1 || !strings.Contains(m.RowTitle, of.Parts[0].Label) {
		t.Errorf("%d px: pointing does not work: %+v", m.Width, *m)
	}
	m.checkNames(t, of)
}

// checkNames looks at what the first part's name finds.
func (m *measured) checkNames(t *testing.T, of *model.Model) {
	t.Helper()
	p := &of.Parts[0]
	cuts, lines := 0, 0
	for _, c := range of.Cuts {
		if slices.Contains(c.Parts, p.Label) {
			cuts++
		}
	}
	for _, l := range of.Bill {
		if l.Item == p.Stock {
			lines++
		}
	}
	if m.CutLit != cuts || m.BillLit != lines || m.LayoutLit != min(len(of.Sheets), 1) {
		t.Errorf("%d px: lit are %d lines of the cut list, %d of the bill, %d pieces as cut; want %d, %d, %d",
			m.Width, m.CutLit, m.BillLit, m.LayoutLit, cuts, lines, min(len(of.Sheets), 1))
	}
	for _, want := range []string{p.Label, p.Name, p.Owner, " thick", " from the left", " above "} {
		if !strings.Contains(m.Said, want) {
			t.Errorf("%d px: %q does not say %q", m.Width, m.Said, want)
		}
	}
	found := slices.Contains(m.Filtered, p.Label) && len(m.Filtered) < len(of.Parts) &&
		strings.HasPrefix(m.Counted, finding.Counted(len(m.Filtered), "part")+",") && m.FoundShapes > 0
	if !found || !m.FieldHeld || !m.Entered || !m.Cleared {
		t.Errorf("%d px: filtering does not work: %+v", m.Width, *m)
	}
}

// find returns the path of the first program that there is.
func find(t *testing.T, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatalf("none of %v is here", names)
	}
	t.Skipf("OUTSIDE CHECK SKIPPED: none of %v is here; the page is not looked at in a browser", names)
	return ""
}

func run(t *testing.T, browser string, args ...string) []byte {
	t.Helper()
	flags := []string{"--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync", "--user-data-dir=" + t.TempDir()}
	var stderr bytes.Buffer
	cmd := exec.Command(browser, append(flags, args...)...)
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v: %s", err, stderr.String())
	}
	return out
}
