package paper_test

import (
	"bytes"
	"encoding/xml"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
	emit "barwright/emit/paper"
	"barwright/lang"
	"barwright/lang/source"
)

var builds = flag.Int("builds", 12, "how many random builds the outside readers judge")

var examples = []string{"boatshed", "servery"}

func example(t *testing.T, name string) *model.Model {
	t.Helper()
	var files source.Files
	paths, err := filepath.Glob(filepath.Join("../../examples", name, "*.hcl"))
	if err != nil || len(paths) == 0 {
		t.Fatalf("no example %s: %v", name, err)
	}
	for _, path := range paths {
		text, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		files = append(files, source.File{Name: filepath.Base(path), Text: text})
	}
	src, findings := lang.Read(files)
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	return m
}

// random is a random build with its views.
func random(seed int) *model.Model {
	m := rapid.Custom(viewtest.Random).Example(seed)
	m.Views = view.Views(m)
	return m
}

// outside runs a program of poppler over a PDF of papers.
func outside(t *testing.T, papers []model.Paper, program string, args ...string) []byte {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatalf("%s is not here", program)
		}
		t.Skipf("OUTSIDE CHECK SKIPPED: %s is not here; papers are not read back", program)
	}
	file := filepath.Join(t.TempDir(), "papers.pdf")
	if err := os.WriteFile(file, written(t, papers), 0o666); err != nil {
		t.Fatal(err)
	}
	for i := range args {
		args[i] = strings.ReplaceAll(args[i], "FILE", file)
	}
	var stderr bytes.Buffer
	cmd := exec.Command(program, args...)
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil || stderr.Len() > 0 {
		t.Fatalf("%s: %v: %s", program, err, stderr.String())
	}
	return out
}

func written(t *testing.T, papers []model.Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := emit.WritePDF(&b, "papers", papers); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// page is one as pdftotext reads it.
type page struct {
	Width  float64 `xml:"width,attr"`
	Height float64 `xml:"height,attr"`
	Words  []struct {
		XMin float64 `xml:"xMin,attr"`
		YMin float64 `xml:"yMin,attr"`
		XMax float64 `xml:"xMax,attr"`
		YMax float64 `xml:"yMax,attr"`
		Text string  `xml:",chardata"`
	} `xml:"word"`
}

func read(t *testing.T, papers []model.Paper) []page {
	t.Helper()
	var doc struct {
		Pages []page `xml:"body>doc>page"`
	}
	d := xml.NewDecoder(bytes.NewReader(outside(t, papers, "pdftotext", "-bbox", "FILE", "-")))
	d.Strict = false
	d.Entity = xml.HTMLEntity
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Pages) != len(papers) {
		t.Fatalf("%d pages of %d papers", len(doc.Pages), len(papers))
	}
	return doc.Pages
}

// figure is what a dimension ends with, but for the unit; a name before it is left out where there is no room.
var figure = regexp.MustCompile(`(?:^| )(~?(?:\d+ \d+/\d+|\d+/\d+|[\d.]+))(?: mm| in)?$`)

// checkWords holds that no word meets another or the edge of its page, and that every dimension of
// the views is there, as often at least as it is in them.
func checkWords(t *testing.T, m *model.Model, papers []model.Paper) {
	t.Helper()
	var all strings.Builder
	for n, p := range read(t, papers) {
		for i, w := range p.Words {
			// Words are parted by two blanks, so that each has both of its own.
			fmt.Fprintf(&all, " %s ", w.Text)
			if w.XMin < 0 || w.YMin < 0 || w.XMax > p.Width || w.YMax > p.Height {
				t.Errorf("paper %d: %q is cut off", n+1, w.Text)
			}
			for _, o := range p.Words[:i] {
				if slanted(&papers[n], w.Text, o.Text) {
					continue
				}
				if w.XMin < o.XMax && o.XMin < w.XMax && w.YMin < o.YMax && o.YMin < w.YMax {
					t.Errorf("paper %d: %q meets %q", n+1, w.Text, o.Text)
				}
			}
		}
	}
	want := map[string]int{}
	for _, v := range append(m.Views[:len(m.Views):len(m.Views)], m.Sheets...) {
		for _, d := range v.Dims {
			text := d.Text.Text
			if f := figure.FindStringSubmatch(text); f != nil {
				text = f[1]
			}
			want[" "+strings.Join(strings.Fields(text), "  ")+" "]++
		}
	}
	// A text with a fraction is one word.
	said := strings.Join(strings.Fields(all.String()), "  ")
	for text, times := range want {
		if got := strings.Count(" "+said+" ", text); got < times {
			t.Errorf("dimension %q is there %d times, not %d", text, got, times)
		}
	}
}

// slanted reports whether one of some texts stands aslant, so that its upright box is not its own; a
// browser judges those.
func slanted(p *model.Paper, texts ...string) bool {
	return slices.ContainsFunc(p.Lettering, func(l model.Lettering) bool {
		return l.Turn%(90*geom.Degree) != 0 && slices.Contains(texts, l.Text)
	})
}

func TestOutsideWords(t *testing.T) {
	for _, name := range examples {
		m := example(t, name)
		for _, format := range paper.Names {
			t.Run(name+" on "+format, func(t *testing.T) { checkWords(t, m, printed(m, format)) })
		}
	}
	for seed := range *builds {
		format := paper.Names[seed%len(paper.Names)]
		t.Run(fmt.Sprintf("build %d on %s", seed, format), func(t *testing.T) {
			m := random(seed)
			checkWords(t, m, printed(m, format))
		})
	}
}

// TestOutsideFonts holds that all type is embedded, and only what is used of it.
func TestOutsideFonts(t *testing.T) {
	papers := printed(example(t, "boatshed"), "letter")
	lines := strings.Split(strings.TrimSpace(string(outside(t, papers, "pdffonts", "FILE"))), "\n")
	if len(lines) != 4 {
		t.Fatalf("not two faces:\n%s", strings.Join(lines, "\n"))
	}
	for _, line := range lines[2:] {
		if cells := strings.Fields(line); strings.Join(cells[len(cells)-5:len(cells)-2], " ") != "yes yes yes" {
			t.Errorf("not embedded, cut down and known by letters: %s", line)
		}
	}
}

var (
	pathData = regexp.MustCompile(`<path[^>]* d="(M[^"]*)"`)
	figures  = regexp.MustCompile(`-?[0-9.]+`)
)

// sizes are the width and height of every outline of a drawing, in millimetres.
func sizes(svg []byte, unit float64) (all [][2]float64) {
	for _, d := range pathData.FindAllSubmatch(svg, -1) {
		if bytes.ContainsAny(d[1], "AaCc") {
			continue
		}
		lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
		for i, f := range figures.FindAll(d[1], -1) {
			var x float64
			fmt.Sscan(string(f), &x)
			lo[i%2], hi[i%2] = min(lo[i%2], x*unit), max(hi[i%2], x*unit)
		}
		all = append(all, [2]float64{hi[0] - lo[0], hi[1] - lo[1]})
	}
	return all
}

// TestOutsideScale measures every part that is drawn at an eighth or a tenth, and each of its
// dimensions, in the coordinates of the SVG and of the PDF as pdftocairo tells them.
func TestOutsideScale(t *testing.T) {
	for name, scale := range map[string]float64{"boatshed": 8, "servery": 10} {
		m := example(t, name)
		papers := printed(m, m.Build.Paper)
		measured := 0
		for i := range papers {
			p := &papers[i]
			v := alone(m, p, scale)
			if v == nil {
				continue
			}
			var svg bytes.Buffer
			if err := emit.WriteSVG(&svg, p); err != nil {
				t.Fatal(err)
			}
			for _, seen := range [][][2]float64{
				sizes(svg.Bytes(), 1),
				sizes(outside(t, papers[i:i+1], "pdftocairo", "-svg", "FILE", "-"), 25.4/72),
			} {
				for _, want := range lengths(m, v) {
					measured++
					if !drawn(seen, want[0]/scale, want[1]/scale) {
						t.Errorf("%s: nothing on the paper is %v mm at 1:%v", v.Name, want, scale)
					}
				}
			}
		}
		if measured < 20 {
			t.Errorf("%s: %d lengths measured", name, measured)
		}
	}
}

// alone is the view of a part that is drawn on a paper at a scale, where all on it is.
func alone(m *model.Model, p *model.Paper, scale float64) *model.View {
	ratio := fmt.Sprintf("1:%v", scale)
	atScale := true
	for _, l := range p.Lettering {
		if strings.HasPrefix(l.Text, "Scale ") && !strings.HasSuffix(strings.TrimSuffix(l.Text, ")"), ratio) {
			atScale = false
		}
	}
	for i := range m.Views {
		v := &m.Views[i]
		for _, l := range p.Lettering {
			if atScale && v.Part != "" && l.Bold && l.Text == v.Title && strings.Contains(p.Name, v.Name) {
				return v
			}
		}
	}
	return nil
}

// lengths are the size of the part and the reach of each straight dimension, in millimetres.
func lengths(m *model.Model, v *model.View) (all [][2]float64) {
	const mm = 1e6
	for i := range m.Parts {
		if p := &m.Parts[i]; p.ID == v.Part && len(p.Outline) == 4 {
			b := p.Outline.Bounds()
			all = append(all, [2]float64{float64(b.X.Size()) / mm, float64(b.Y.Size()) / mm})
		}
	}
	for _, d := range v.Dims {
		if a, b := d.A, d.B; a.X == b.X || a.Y == b.Y {
			all = append(all, [2]float64{math.Abs(float64(b.X-a.X)) / mm, math.Abs(float64(b.Y-a.Y)) / mm})
		}
	}
	return all
}

// drawn reports whether something on paper is so wide and so high within 0.05 mm.
func drawn(seen [][2]float64, w, h float64) bool {
	for _, s := range seen {
		if math.Abs(s[0]-w) <= 0.05 && math.Abs(s[1]-h) <= 0.05 {
			return true
		}
	}
	return false
}
