package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/emit/paper"
	"barwright/emit/worklist"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// pdftotext reads a PDF back with poppler; the test is skipped where that is missing, and fails where
// outside checks are required.
func pdftotext(t *testing.T, form, file string) string {
	t.Helper()
	text, err := exec.Command("pdftotext", form, file, "-").Output()
	if err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("outside check required, but pdftotext fails:", err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: pdftotext of poppler-utils fails:", err)
	}
	return string(text)
}

func writeFile(t *testing.T, file folder.File) string {
	t.Helper()
	var text bytes.Buffer
	if err := file.Write(&text); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), file.Name)
	if err := os.WriteFile(path, text.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestSitePapers reads site.pdf from outside: cards, poles, shims, lines, holes, order and labels are there, and each
// paper has the revision and the reminder. The figures were worked out by hand in compile/onsite.
func TestSitePapers(t *testing.T) {
	m := compiled(t, "boatshed")
	text := pdftotext(t, "-layout", writeFile(t, siteFiles(m, "")[0]))
	for _, want := range []string{
		"Marking card: CUPS-BK, back of cabinet cups", "32 9/16", "34 15/16", "13 5/16", "Marking card: SINK-L", "10 17/32", "18 1/32",
		"Story pole, wall north", "134 5/8 beans right, corner left", "Story pole, heights", "Shims: the list", "knee wall bar, stud 8",
		"Screw lines inside cabinets", "8 25/32", "BAR-S3", "36, lower end", "Order of setting", "over stub drain", "local code and licensed practice decide",
	} {
		if !strings.Contains(squeezed(text), want) {
			t.Errorf("site.pdf does not say %q", want)
		}
	}
	for i := range m.Parts {
		if !strings.Contains(text, m.Parts[i].Label) {
			t.Errorf("no label of %s", m.Parts[i].Label)
		}
	}
	numbers := worklist.Numbers(m)
	for i := range m.Setting.Steps {
		s := &m.Setting.Steps[i]
		if want := worklist.Step(numbers, s) + " " + finding.Capital(s.Title()); !strings.Contains(squeezed(text), want) {
			t.Errorf("the order of setting does not say %q, as work.txt has it", want)
		}
	}
	pages := strings.Split(strings.TrimRight(text, "\f"), "\f")
	for i, page := range pages {
		for _, want := range []string{"Measure again before you cut.", "Revision", fmt.Sprintf("%d of %d", i+1, len(pages))} {
			if !strings.Contains(page, want) {
				t.Errorf("paper %d does not say %q", i+1, want)
			}
		}
	}
}

// word is where poppler finds a word, in points from the upper left of its page.
type word struct {
	page           int
	x0, y0, x1, y1 float64
	text           string
}

// words reads what pdftotext -bbox prints, and the size of each page.
func words(t *testing.T, listing string) (all []word, sizes [][2]float64) {
	t.Helper()
	form := regexp.MustCompile(`<(page|word)((?: \w+="[\d.-]+")+)>(?:(.*)</word>)?`)
	for _, found := range form.FindAllStringSubmatch(listing, -1) {
		var n []float64
		for _, at := range regexp.MustCompile(`"([\d.-]+)"`).FindAllStringSubmatch(found[2], -1) {
			f, err := strconv.ParseFloat(at[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			n = append(n, f)
		}
		if found[1] == "page" {
			sizes = append(sizes, [2]float64{n[0], n[1]})
			continue
		}
		all = append(all, word{len(sizes), n[0], n[1], n[2], n[3], found[3]})
	}
	return all, sizes
}

// collisions lists words that lie over one another, and those that leave the frame, 10 mm from the
// edges of the paper. Poppler's boxes are as high as the type's lines, which may touch: what counts
// is more than a point across and two and a half up.
func collisions(all []word, sizes [][2]float64) (out []string) {
	const frame = 10 / 25.4 * 72
	for i, w := range all {
		size := sizes[w.page-1]
		if w.x0 < frame || w.y0 < frame || w.x1 > size[0]-frame || w.y1 > size[1]-frame {
			out = append(out, fmt.Sprintf("paper %d: %q leaves the frame", w.page, w.text))
		}
		for _, o := range all[i+1:] {
			if o.page == w.page && min(w.x1, o.x1)-max(w.x0, o.x0) > 1 && min(w.y1, o.y1)-max(w.y0, o.y0) > 2.5 {
				out = append(out, fmt.Sprintf("paper %d: %q lies over %q", w.page, w.text, o.text))
			}
		}
	}
	return out
}

// TestSitePapersAreLegible looks at the boxes of words as poppler has them, of all papers for the floor.
func TestSitePapersAreLegible(t *testing.T) {
	for _, name := range examples {
		m := compiled(t, name)
		for _, file := range append(siteFiles(m, ""), fullScale(m, "")...) {
			all, sizes := words(t, pdftotext(t, "-bbox", writeFile(t, file)))
			if len(all) < 100 || len(sizes) < 10 {
				t.Errorf("%s, %s: %d words on %d papers", name, file.Name, len(all), len(sizes))
			}
			for _, fault := range collisions(all, sizes) {
				t.Errorf("%s, %s: %s", name, file.Name, fault)
			}
		}
	}
	bad := []model.Paper{{Size: geom.Point{X: 100 * length.Millimetre, Y: 100 * length.Millimetre}, Lettering: []model.Lettering{
		{At: geom.Point{X: 50 * length.Millimetre, Y: 50 * length.Millimetre}, Height: 5 * length.Millimetre, Text: "one"},
		{At: geom.Point{X: 52 * length.Millimetre, Y: 51 * length.Millimetre}, Height: 5 * length.Millimetre, Text: "two"},
		{At: geom.Point{X: 50 * length.Millimetre, Y: 95 * length.Millimetre}, Height: 5 * length.Millimetre, Text: "out"},
	}}}
	file := folder.File{Name: "bad.pdf", Write: func(w io.Writer) error { return paper.WritePDF(w, "bad", bad) }}
	all, sizes := words(t, pdftotext(t, "-bbox", writeFile(t, file)))
	if found := collisions(all, sizes); len(found) != 2 {
		t.Errorf("of two faults these are found: %v", found)
	}
}

func squeezed(text string) string { return strings.Join(strings.Fields(text), " ") }

// TestFullScale asks for strips, and looks for their joints and the bar's length; without the flag there
// are none.
func TestFullScale(t *testing.T) {
	for unit, name := range map[string]string{"4 in": "boatshed", "100 mm": "servery"} {
		out := filepath.Join(t.TempDir(), "out")
		var stdout, stderr bytes.Buffer
		if status := run([]string{"build", "--full-scale", example(name), "-o", out}, streams{out: &stdout, err: &stderr}); status != exitClean {
			t.Fatal(stderr.String())
		}
		text := squeezed(pdftotext(t, "-layout", filepath.Join(out, "poles.pdf")))
		for _, want := range []string{"the bar must be " + unit, "joint 1", "Story pole"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s: poles.pdf does not say %q", name, want)
			}
		}
	}
	if _, err := os.Stat(filepath.Join(built(t, "boatshed"), "poles.pdf")); err == nil {
		t.Error("strips are written unasked")
	}
}

// TestPapersOfNothing: a model with nothing in it has no papers, and no file with an empty one.
func TestPapersOfNothing(t *testing.T) {
	m := &model.Model{}
	drawn, _ := papers(m, view.Drawings(m), "letter")
	for _, file := range slices.Concat(drawn, siteFiles(m, "letter"), fullScale(m, "letter")) {
		t.Errorf("%s is written of nothing", file.Name)
	}
}
