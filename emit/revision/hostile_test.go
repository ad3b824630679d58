package revision

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// hostile is a revision in which somebody else chose every name and text.
func hostile(bad string) (*model.Revision, Names) {
	r := every()
	for _, m := range []*model.Model{r.Old, r.New} {
		m.Build.Name, m.Build.Revision = bad, bad
		for i := range m.Parts {
			p := &m.Parts[i]
			p.ID, p.Label, p.Name, p.Owner, p.Stock = bad+p.ID, bad, bad+p.Name, bad, bad+p.Stock
			for j := range p.Bores {
				p.Bores[j].Name = bad
			}
		}
		m.Views = []model.View{{Name: bad, Title: bad, TextHeight: 10, Shapes: []model.Shape{area(0, 0, 9, 9)}, Texts: []model.Text{{Text: bad}}}}
	}
	r.New.Views[0].Shapes[0] = area(0, 0, 9, 8)
	r.New.Views[0].Shapes[0].Title = bad
	for i := range r.Changes {
		c := &r.Changes[i]
		c.Name, c.Means, c.Old, c.New, c.OldWritten, c.Because = bad, bad, bad, bad, bad, []string{bad, bad}
	}
	for i := range r.Fates {
		for j := range r.Fates[i].Steps {
			r.Fates[i].Steps[j].Text = bad
		}
	}
	for i := range r.Findings {
		for _, f := range []*finding.Finding{r.Findings[i].Old, r.Findings[i].New} {
			if f != nil {
				f.Text, f.At.File = bad, bad
			}
		}
	}
	for i := range r.Bill {
		for _, l := range []*model.BillLine{r.Bill[i].Old, r.Bill[i].New} {
			if l != nil {
				l.Text, l.Unit, l.Needed = bad, bad, bad
			}
		}
	}
	r.Again[0].Text, r.Notes = bad, []string{bad, "1. " + bad, "- " + bad}
	return r, Names{bad, bad}
}

func TestHostileNamesOnATerminal(t *testing.T) {
	r, names := hostile("\x1b]0;x\x07\x1b[2J\u202e\r\n\x00\u009b31m\xff木")
	var b bytes.Buffer
	if err := Text(&b, r, names, finding.Style{}); err != nil {
		t.Fatal(err)
	}
	if !utf8.Valid(b.Bytes()) || strings.ContainsAny(b.String(), "\x1b\x07\r\x00\u202e\u009b") {
		t.Error("control characters came through")
	}
}

// Of what a name brings in, nothing but text is left: no tag, no link, no end of a cell
// and no mention.
func TestHostileNamesInMarkdown(t *testing.T) {
	bad := "</details><script>a|b`c`*d*_e_[f](javascript:g)![h](//i)@all #1 !2 &lt; https://j www.k\n\n# l\n```\n"
	r, names := hostile(bad)
	var b bytes.Buffer
	if err := Markdown(&b, r, names); err != nil {
		t.Fatal(err)
	}
	for l := range strings.SplitSeq(b.String(), "\n") {
		bare := regexp.MustCompile(`\\.`).ReplaceAllString(l, "")
		if strings.HasPrefix(l, "|") {
			if n := strings.Count(bare, "|"); n < 4 || n > 6 {
				t.Errorf("%d cells' ends in %s", n, l)
			}
			continue
		}
		bare = strings.TrimPrefix(strings.TrimPrefix(bare, "### "), "**")
		if strings.ContainsAny(strings.TrimSuffix(bare, "**"), "`*_[]<>#|!@&") {
			t.Errorf("markup is left in %s", l)
		}
	}
	for _, live := range []string{"@all", "#1", "!2", "https://", "www.k", "\n# ", "\n```"} {
		if strings.Contains(b.String(), live) {
			t.Errorf("%q came through", live)
		}
	}
	if !strings.Contains(b.String(), "\n- 1\\. ") || !strings.Contains(b.String(), "\n- \\- ") {
		t.Error("a note begins a list of its own")
	}
}

var metaTag = regexp.MustCompile(`<meta [^>]*`)

// kinds reads a page as strict XML and returns its elements with their attributes.
func kinds(t testing.TB, text string) map[string]bool {
	t.Helper()
	d, out := xml.NewDecoder(strings.NewReader(metaTag.ReplaceAllString(text, "$0/"))), map[string]bool{}
	for {
		token, err := d.Token()
		if err == io.EOF {
			return out
		}
		if err != nil {
			t.Fatalf("tags do not balance: %v", err)
		}
		if e, ok := token.(xml.StartElement); ok {
			out[e.Name.Local] = true
			for _, a := range e.Attr {
				out[e.Name.Local+" "+a.Name.Local] = true
			}
		}
	}
}

func TestHostileNamesOnThePage(t *testing.T) {
	plain, names := hostile("plain")
	var want, got bytes.Buffer
	if err := Page(&want, plain, names); err != nil {
		t.Fatal(err)
	}
	bad, names := hostile(`</title></style></script><script>alert(1)</script><img src=x onerror="alert(2)">'"&` + "\x00\x1b\u202e\xff")
	if err := Page(&got, bad, names); err != nil {
		t.Fatal(err)
	}
	known := kinds(t, want.String())
	for kind := range kinds(t, got.String()) {
		if !known[kind] && kind != "text textLength" && kind != "text lengthAdjust" {
			t.Errorf("<%s> came in by a name", kind)
		}
	}
	if !utf8.Valid(got.Bytes()) || strings.ContainsAny(got.String(), "\x00\x1b\u202e") || strings.Contains(got.String(), "<script") {
		t.Error("control characters or a script came through")
	}
}

func TestPageFetchesNothing(t *testing.T) {
	text := written(t, "html", every())
	if strings.Contains(text, "http:") || strings.Contains(text, "https:") || !strings.Contains(text, "default-src &#39;none&#39;") {
		t.Error("the page fetches something, or may")
	}
	ids := map[string]bool{}
	for _, m := range regexp.MustCompile(` id="([^"]*)"`).FindAllStringSubmatch(text, -1) {
		if ids[m[1]] {
			t.Errorf("two elements are %q", m[1])
		}
		ids[m[1]] = true
	}
	for _, m := range regexp.MustCompile(`(?:url\(|href=")#([^")]*)`).FindAllStringSubmatch(text, -1) {
		if !ids[m[1]] {
			t.Errorf("nothing is %q", m[1])
		}
	}
}
