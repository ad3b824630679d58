package paper_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"html"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"testing"

	"barwright/compile/model"
	"barwright/compile/paper"
)

var measured = regexp.MustCompile(`(?s)<pre id="measured">(.*?)</pre>`)

// TestOutsideBrowser has a browser set the SVGs of both examples and of random builds, and measure
// its own letters: no text meets another, and none is cut off.
func TestOutsideBrowser(t *testing.T) {
	browser := ""
	for _, name := range []string{"chromium", "chromium-browser"} {
		if path, err := exec.LookPath(name); err == nil && browser == "" {
			browser = path
		}
	}
	if browser == "" && os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal("chromium is not here")
	}
	if browser == "" {
		t.Skip("OUTSIDE CHECK SKIPPED: chromium is not here; papers are not looked at in a browser")
	}
	var papers []model.Paper
	for i, name := range examples {
		papers = append(papers, printed(example(t, name), paper.Names[2*i])...)
	}
	for seed := range *builds {
		papers = append(papers, printed(random(seed), paper.Names[seed%len(paper.Names)])...)
	}
	measure, err := os.ReadFile(filepath.Join("testdata", "measure.js"))
	if err != nil {
		t.Fatal(err)
	}
	var page bytes.Buffer
	page.WriteString("<!DOCTYPE html><meta charset=utf-8><pre id=\"measured\"></pre>")
	for i := range papers {
		page.Write(drawing(t, &papers[i]))
	}
	fmt.Fprintf(&page, "<script>%s</script>", measure)
	file := filepath.Join(t.TempDir(), "papers.html")
	if err := os.WriteFile(file, page.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(browser, "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
		"--disable-background-networking", "--disable-component-update", "--disable-sync",
		"--user-data-dir="+t.TempDir(), "--dump-dom", "file://"+file).Output()
	match := measured.FindSubmatch(out)
	if err != nil || match == nil {
		t.Fatalf("the browser gave no answer: %v", err)
	}
	var seen struct {
		Twin int
		All  []struct {
			Texts int
			Found []string
		}
	}
	if err := json.Unmarshal([]byte(html.UnescapeString(string(match[1]))), &seen); err != nil {
		t.Fatal(err)
	}
	if len(seen.All) != len(papers) || seen.Twin == 0 {
		t.Fatalf("%d drawings of %d; a text set twice is found %d times more", len(seen.All), len(papers), seen.Twin)
	}
	for i, s := range seen.All {
		want := 0
		for _, l := range papers[i].Lettering {
			if l.Text != "" {
				want++
			}
		}
		if s.Texts != want {
			t.Errorf("%s: %d texts of %d", papers[i].Name, s.Texts, want)
		}
		for _, f := range s.Found {
			t.Errorf("%s: %s", papers[i].Name, f)
		}
	}
}
