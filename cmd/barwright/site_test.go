package main

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
)

// pdftotext reads a PDF back with poppler; the test is skipped where that is missing, and fails where
// outside checks are required.
func pdftotext(t *testing.T, file string) string {
	t.Helper()
	text, err := exec.Command("pdftotext", "-layout", file, "-").Output()
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
	text := pdftotext(t, writeFile(t, siteFiles(m)[0]))
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
	pages := strings.Split(strings.TrimRight(text, "\f"), "\f")
	for i, page := range pages {
		for _, want := range []string{"Measure again before you cut.", "Revision", fmt.Sprintf("%d of %d", i+1, len(pages))} {
			if !strings.Contains(page, want) {
				t.Errorf("paper %d does not say %q", i+1, want)
			}
		}
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
		text := squeezed(pdftotext(t, filepath.Join(out, "poles.pdf")))
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

// TestSitePapersOfLittle lays out papers of a model with nothing in it.
func TestSitePapersOfLittle(t *testing.T) {
	for _, file := range append(siteFiles(&model.Model{}), fullScale(&model.Model{})) {
		if err := file.Write(&bytes.Buffer{}); err != nil {
			t.Error(file.Name, err)
		}
	}
}
