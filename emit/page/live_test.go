package page

import (
	"bytes"
	"html"
	"strings"
	"testing"

	"barwright/compile/model"
)

func live(t *testing.T, l Live) string {
	t.Helper()
	var b bytes.Buffer
	if _, err := WriteLive(&b, l); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	balanced(t, strings.NewReplacer(liveScript, "", foldScript, "").Replace(page))
	return page
}

// A live page shows what a written one does, and says what is wrong as the terminal does.
func TestLive(t *testing.T) {
	m := bar()
	_, body, _ := strings.Cut(written(t, m), "<body>")
	body, _, _ = strings.Cut(body, `<div id="pointed"`)
	const amiss = "error: unknown-block\n\n  bar.hcl:70  rn <back> {\n              ^^\n"
	tests := []struct {
		name       string
		live       Live
		has, lacks []string
	}{
		{"sound", Live{Name: "shed", Number: 7, Model: m}, []string{body, `data-number="7"`, "<title>" + html.EscapeString(m.Build.Name)}, []string{"<pre", "as it stands."}},
		{"wrong", Live{Name: "shed", Number: 8, Model: m, Amiss: amiss, Errors: "1 error"}, []string{body, html.EscapeString(amiss), "<strong>1 error</strong>", "the last build that had none"}, nil},
		{"nothing", Live{Name: "shed", Number: 1, Amiss: amiss, Errors: "1 error"}, []string{"<h1>shed</h1>", html.EscapeString(amiss), "no build to show yet"}, []string{"<svg", "<section"}},
	}
	for _, test := range tests {
		page := live(t, test.live)
		for _, text := range append(test.has, html.EscapeString(LivePolicy().String()), script, foldScript, liveScript) {
			if !strings.Contains(page, text) {
				t.Errorf("%s: the page lacks %.200q", test.name, text)
			}
		}
		for _, text := range test.lacks {
			if strings.Contains(page, text) {
				t.Errorf("%s: the page has %q", test.name, text)
			}
		}
	}
}

// What a text can hold cannot leave its place.
func TestLiveEscapes(t *testing.T) {
	page := live(t, Live{Name: "<b>", Amiss: "</pre><script>alert(1)</script>\x1b[31m\n", Model: &model.Model{}})
	if strings.Contains(page, "alert(1)</script>") || strings.ContainsRune(page, '\x1b') {
		t.Error("the text of a finding is written as it is")
	}
}
