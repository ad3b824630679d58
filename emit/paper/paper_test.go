package paper_test

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"
	"time"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	emit "barwright/emit/paper"
)

// TestSameBytes writes random builds twice, as PDF and as SVG.
func TestSameBytes(t *testing.T) {
	for seed := range 12 {
		m, format := random(seed), paper.Names[seed%len(paper.Names)]
		one, two := printed(m, format), printed(m, format)
		if !bytes.Equal(written(t, one), written(t, two)) {
			t.Errorf("build %d: two PDFs differ", seed)
		}
		for i := range one {
			if !bytes.Equal(drawing(t, &one[i]), drawing(t, &two[i])) {
				t.Errorf("build %d: two SVGs of %s differ", seed, one[i].Name)
			}
		}
	}
}

// TestNoClock writes an example before and after a second has passed.
func TestNoClock(t *testing.T) {
	papers := printed(example(t, "servery"), "A4")
	before := written(t, papers)
	time.Sleep(1100 * time.Millisecond)
	if !bytes.Equal(before, written(t, papers)) {
		t.Error("a second later the PDF differs")
	}
}

func printed(m *model.Model, format string) []model.Paper {
	return paper.Drawings(m, view.Drawings(m), paper.Formats[format])
}

func drawing(t *testing.T, p *model.Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := emit.WriteSVG(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// texts are what stands in the text elements of an SVG, which must be sound XML.
func texts(t *testing.T, svg []byte) (all []string) {
	t.Helper()
	d := xml.NewDecoder(bytes.NewReader(svg))
	said, within := "", false
	for {
		token, err := d.Token()
		if err == io.EOF {
			return all
		}
		if err != nil {
			t.Fatal(err)
		}
		switch x := token.(type) {
		case xml.StartElement:
			if x.Name.Local == "text" {
				said, within = "", true
			}
		case xml.CharData:
			if within {
				said += string(x)
			}
		case xml.EndElement:
			if x.Name.Local == "text" {
				all, within = append(all, strings.TrimSpace(said)), false
			}
		}
	}
}

// TestTextOfSVG holds that each lettering reads in the SVG as it is, stacked fractions too.
func TestTextOfSVG(t *testing.T) {
	for i, p := range printed(example(t, "boatshed"), "letter") {
		got := texts(t, drawing(t, &p))
		if len(got) != len(p.Lettering) {
			t.Fatalf("paper %d: %d texts of %d", i+1, len(got), len(p.Lettering))
		}
		for k, l := range p.Lettering {
			if got[k] != strings.TrimSpace(l.Text) {
				t.Errorf("paper %d: %q reads %q", i+1, l.Text, got[k])
			}
		}
	}
}

// sample is a paper with one line of text.
func sample(l model.Lettering) *model.Paper {
	const mm = 1_000_000
	l.At, l.Height = geom.Point{X: 20 * mm, Y: 20 * mm}, 3*mm
	return &model.Paper{Name: "sample", Title: "sample", Number: 1, Of: 1, Size: geom.Point{X: 100 * mm, Y: 50 * mm}, Lettering: []model.Lettering{l}}
}

func TestStackedFraction(t *testing.T) {
	svg := string(drawing(t, sample(model.Lettering{Text: "38 3/8", Align: model.Start})))
	for _, want := range []string{
		`<tspan x="1.668" y="0">38</tspan>`, // two figures of 0.556 em: their middle
		`<tspan font-size="0"> </tspan><tspan x="4.188" y="-1.38" font-size="1.98">3</tspan>`,
		`<tspan font-size="0">/</tspan><tspan x="4.188" y="0.646" font-size="1.98">8</tspan>`,
		`<path d="M3.637 -1.08H4.738"`,
	} {
		if !strings.Contains(svg, want) {
			t.Errorf("%s is not in\n%s", want, svg)
		}
	}
}

// TestOutsideForeignLetters: what the type has not is written in others, never as nothing or as an
// empty box, and whoever searches the file finds what is meant.
func TestOutsideForeignLetters(t *testing.T) {
	const text = "木 bar Щ ⌀5"
	page := string(outside(t, []model.Paper{*sample(model.Lettering{Text: text, Align: model.Start})}, "pdftotext", "FILE", "-"))
	if strings.TrimSpace(page) != text {
		t.Errorf("it reads %q", page)
	}
	glyphs := func(text string) int {
		svg := outside(t, []model.Paper{*sample(model.Lettering{Text: text, Align: model.Start})}, "pdftocairo", "-svg", "FILE", "-")
		return bytes.Count(svg, []byte("<use "))
	}
	if got, want := glyphs(text), glyphs("? bar Щ ⌀5"); got != want || want == 0 {
		t.Errorf("%d glyphs are drawn, not %d", got, want)
	}
	if svg := string(drawing(t, sample(model.Lettering{Text: text, Align: model.Start}))); !strings.Contains(svg, text) {
		t.Error("the SVG lacks the text")
	}
}
