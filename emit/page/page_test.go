package page

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/viewtest"
	"barwright/emit/markup"
	"barwright/lang/length"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write golden files anew")

func bar() *model.Model {
	m := viewtest.Bar()
	m.Views = view.Views(m)
	return m
}

func fitted() *model.Model {
	m := viewtest.Fitted()
	m.Views = view.Views(m)
	return m
}

func written(t testing.TB, m *model.Model) string {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, m, nil); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// piece writes what fn writes.
func piece(m *model.Model, fn func(writer)) string {
	var b bytes.Buffer
	p := writer{Writer: markup.New(&b), m: m}
	fn(p)
	p.Close()
	return b.String()
}

func TestGoldenPieces(t *testing.T) {
	m := bar()
	small := &model.Model{Build: m.Build, Parts: m.Parts[:7:7], Cuts: m.Cuts[:2], Layouts: m.Layouts, Bill: m.Bill,
		Slabs: m.Slabs, Programs: m.Programs[:1], Findings: m.Findings, Givens: m.Givens, Work: fewTasks}
	for i := range m.Views {
		if m.Views[i].Part == "cabinet.urn/back" {
			small.Views = m.Views[i : i+1]
		}
	}
	pieces := []struct {
		file  string
		write func(writer)
	}{
		{"top.html", func(p writer) { p.top(); p.bar(); p.pointed() }},
		{"findings.html", writer.findings},
		{"parts.html", writer.parts},
		{"lists.html", func(p writer) { p.cuts(); p.layouts(); p.bill(); p.programs() }},
		{"work.html", writer.work},
		{"fitted.html", func(p writer) { p.m = fewFitted(); p.parts(); p.cuts() }},
	}
	for _, g := range pieces {
		got := piece(small, g.write)
		path := filepath.Join("testdata", g.file)
		if *update {
			if err := errors.Join(os.MkdirAll("testdata", 0o755), os.WriteFile(path, []byte(got), 0o644)); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), got); diff != "" {
			t.Errorf("%s changed (-want +got); run with -update if it should:\n%s", g.file, diff)
		}
	}
}

// fewTasks are steps of two phases.
var fewTasks = []model.Task{
	{Key: "site.walls", Phase: "on site", Title: "Measure the walls <again>", People: 1, Checks: []model.Check{{What: "wall north, length", Figure: "136 1/8 in"}}},
	{Key: "wire.seen", Phase: "on site", Title: "Wait", People: 1, Hold: "a licensed electrician", Cautions: []string{"Switch off."}},
	{Key: "set", Phase: "boxes", Title: "Set cabinet urn", People: 2, WeightKg: 30, Lifted: "cabinet urn", After: []model.Before{{Key: "wire.seen", Why: "it hides the wiring"}}},
}

// fewFitted is a side, a shelf, a door and the drawing of two doors that are alike,
// of a bar with all its fittings.
func fewFitted() *model.Model {
	whole := fitted()
	m := &model.Model{Build: whole.Build}
	for _, p := range whole.Parts {
		if slices.Contains([]string{"cabinet.urn/side-left", "cabinet.urn/shelf-1", "cabinet.urn/front-DO", "cabinet.kegs/front-DO"}, p.ID) {
			m.Parts = append(m.Parts, p)
		}
	}
	m.Cuts = layout.Cuts(m.Parts)
	for _, v := range whole.Views {
		if v.Part == "cabinet.urn/front-DO" {
			m.Views = append(m.Views, v)
		}
	}
	return m
}

func TestWriteIsDeterministic(t *testing.T) {
	m := bar()
	first := written(t, m)
	if !reflect.DeepEqual(m, bar()) {
		t.Error("the model was written to")
	}
	if written(t, bar()) != first {
		t.Error("the same model gives different bytes")
	}
}

func TestEmptyModel(t *testing.T) {
	balanced(t, written(t, &model.Model{}))
}

var voidTag = regexp.MustCompile(`<(?:meta|input) [^>]*`)

// balanced reads the page as strict XML, without its script and once the only
// elements without an end are given one: every start must have its end, in
// order, and every attribute its quotes. It returns all elements.
func balanced(t testing.TB, page string) []xml.StartElement {
	t.Helper()
	page = voidTag.ReplaceAllString(strings.Replace(page, script, "", 1), "$0/")
	d := xml.NewDecoder(strings.NewReader(page))
	var elements []xml.StartElement
	for {
		token, err := d.Token()
		if err == io.EOF {
			return elements
		}
		if err != nil {
			t.Fatalf("tags do not balance: %v", err)
		}
		if e, ok := token.(xml.StartElement); ok {
			elements = append(elements, e.Copy())
		}
	}
}

// kinds returns the elements' names and those of their attributes, once each.
func kinds(elements []xml.StartElement) []string {
	var names []string
	for _, e := range elements {
		names = append(names, e.Name.Local)
		for _, a := range e.Attr {
			names = append(names, e.Name.Local+" "+a.Name.Local)
		}
	}
	slices.Sort(names)
	return slices.Compact(names)
}

func TestWellFormed(t *testing.T) {
	page := written(t, bar())
	anchored(t, balanced(t, page))
	for _, wanted := range []string{"<!DOCTYPE html>", `<meta charset="utf-8">`, `role="img"`, "Local code and licensed practice decide"} {
		if !strings.Contains(page, wanted) {
			t.Errorf("the page lacks %s", wanted)
		}
	}
	if own := markup.Look + foldLook + script + foldScript; strings.Contains(own, "</") || strings.Contains(own, "http") {
		t.Error("style or script could end its element or fetch something")
	}
}

// anchored checks that no id is given twice and every link has its target.
func anchored(t testing.TB, elements []xml.StartElement) {
	t.Helper()
	var ids, links []string
	for _, e := range elements {
		for _, a := range e.Attr {
			switch a.Name.Local {
			case "id":
				ids = append(ids, a.Value)
			case "href":
				links = append(links, a.Value)
			}
		}
	}
	slices.Sort(ids)
	if n := len(ids); n != len(slices.Compact(slices.Clone(ids))) {
		t.Error("an id is given twice")
	}
	for _, l := range links {
		if !slices.Contains(ids, strings.TrimPrefix(l, "#")) {
			t.Errorf("link %s leads nowhere in the page", l)
		}
	}
}

// Names come from a description that somebody else may have written.
func TestHostileNames(t *testing.T) {
	plain := kinds(balanced(t, written(t, bar())))
	bad := `</title></style></script><script>alert(1)</script><img src=x onerror="alert(2)">'"&` + "\x00\x1b\u202e\xff"
	m := viewtest.Bar()
	m.Build.Name, m.Build.Revision = bad, bad
	for i := range m.Parts {
		p := &m.Parts[i]
		p.ID, p.Label, p.Name, p.Owner, p.Stock, p.Face = bad+p.ID, bad, bad, bad, bad, bad
		for j := range p.Openings {
			p.Openings[j].Name = bad
		}
	}
	for i := range m.Runs {
		for j := range m.Runs[i].Boxes {
			m.Runs[i].Boxes[j].Name = bad
		}
	}
	for i := range m.Findings {
		m.Findings[i].Text, m.Findings[i].Mend, m.Findings[i].At.File = bad, bad, bad
	}
	m.Bill[0].Text, m.Cuts[0].Parts, m.Programs[0].Zero, m.Givens[0].Name = bad, []string{bad}, bad, bad
	m.Views = view.Views(m)
	page := written(t, m)
	for _, kind := range kinds(balanced(t, page)) {
		if !slices.Contains(plain, kind) && kind != "text textLength" && kind != "text lengthAdjust" {
			t.Errorf("<%s> came in by a name", kind)
		}
	}
	if n := strings.Count(page, "<script"); n != 1 {
		t.Errorf("%d scripts", n)
	}
	if !utf8.ValidString(page) || strings.ContainsAny(page, "\x00\x1b\u202e") {
		t.Error("control characters came through")
	}
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space") }

func TestWriteErrorIsReturned(t *testing.T) {
	if Write(fullDisk{}, bar(), nil) == nil {
		t.Error("an error of the writer is lost")
	}
}

func TestPageIsSmall(t *testing.T) {
	if n := len(written(t, bar())); n > 1_500_000 {
		t.Errorf("the page has %d bytes", n)
	}
}

func BenchmarkWrite(b *testing.B) {
	m := bar()
	for b.Loop() {
		if err := Write(io.Discard, m, nil); err != nil {
			b.Fatal(err)
		}
	}
}

func TestPieces(t *testing.T) {
	for _, test := range []struct {
		x          float64
		unit, want string
	}{
		{0, "piece", ""}, {1, "sheet", "1 sheet"}, {2, "sheet", "2 sheets"}, {4, "box of 100", "4 boxes of 100"}, {1, "box of 50", "1 box of 50"},
		{7, "pack of 12", "7 packs of 12"}, {1.22, "m2", "1.22 m2"}, {13.4, "sq ft", "13.4 sq ft"}, {3, "", "3 "},
	} {
		if got := Pieces(test.x, test.unit); got != test.want {
			t.Errorf("%v of %q: %q, want %q", test.x, test.unit, got, test.want)
		}
	}
}

// A list of what is bought names each length, not the longest alone.
func TestBought(t *testing.T) {
	const mm = length.Millimetre
	stick := func(l length.Length) model.Blank { return model.Blank{Length: l} }
	p := writer{m: &model.Model{Build: model.Build{Unit: length.Inches, Marks: length.Inch / 32}}}
	l := model.Layout{Blanks: []model.Blank{stick(120 * length.Inch), stick(120 * length.Inch), stick(96 * length.Inch)}}
	if got := p.bought(&l); got != "2 of 120, 1 of 96" {
		t.Errorf("%q", got)
	}
	p.m.Build.Unit = length.Millimetres
	l.Blanks = []model.Blank{{Length: 2440 * mm, Width: 1220 * mm}, {Length: 2440 * mm, Width: 1220 * mm}}
	if got := p.bought(&l); got != "2 of 2440 × 1220" {
		t.Errorf("%q", got)
	}
	if got := p.pounds(10); got != "" {
		t.Errorf("pounds in a metric build: %q", got)
	}
}
