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
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/lang"
)

// example compiles an example, with texts and what stands for each, once, in turn.
func example(t *testing.T, name string, edits ...string) *model.Model {
	t.Helper()
	files := edittest.Folder(t, "../../examples/"+name)
	for i := 0; i < len(edits); i += 2 {
		text := string(files[0].Text)
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("%s has no %q", name, edits[i])
		}
		files[0].Text = []byte(strings.Replace(text, edits[i], edits[i+1], 1))
	}
	src, findings := lang.Read(files)
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatalf("%s: %v %v", name, findings, more)
	}
	return m
}

var examples = [...]string{"boatshed", "servery"}

// module finds a module of npm; it gives the file to read.
func module(t *testing.T, name string) string {
	t.Helper()
	out, err := exec.Command(find(t, "node"), "-p", "require.resolve("+fmt.Sprintf("%q", name)+")").Output()
	if err == nil {
		return strings.TrimSpace(string(out))
	}
	if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatalf("npm's %s is not on NODE_PATH", name)
	}
	t.Skipf("OUTSIDE CHECK SKIPPED: npm's %s is not on NODE_PATH; the page is not judged by it", name)
	return ""
}

// The pages are valid HTML by a published checker, which finds a mistake that is put in.
func TestOutsideValid(t *testing.T) {
	module(t, "html-validate")
	judge := func(page string) string {
		file := filepath.Join(t.TempDir(), "page.html")
		if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
		out, err := exec.Command("node", filepath.Join("testdata", "validate.js"), file).CombinedOutput()
		if err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		return string(out)
	}
	for _, name := range examples {
		page := written(t, example(t, name))
		if said := judge(large(t, example(t, name), beside)); said != "" {
			t.Errorf("%s, as a large one: %s", name, said)
		}
		if said := judge(page); said != "" {
			t.Errorf("%s: %s", name, said)
		}
		if said := judge(strings.Replace(page, "<h2", "<h5></h2><h2", 1)); !strings.Contains(said, "close-order") {
			t.Errorf("%s: a heading that is not closed is passed: %q", name, said)
		}
	}
}

// accessible is what axe says of a page in a frame of one width.
type accessible struct {
	Width           int
	Dark            bool
	Passes          int
	Serious, Others []string
}

var policy = regexp.MustCompile(`<meta http-equiv="Content-Security-Policy"[^>]*>`)

// axe finds nothing serious in the pages, light or dark, on a desk or a phone; and it does in a
// page whose language and whose field's label are taken away.
func TestOutsideAccessible(t *testing.T) {
	axe, err := os.ReadFile(module(t, "axe-core/axe.min.js"))
	if err != nil {
		t.Fatal(err)
	}
	bad := strings.NewReplacer(`<html lang="en">`, "<html>", `for="wanted"`, "", ` placeholder="Filter …"`, "").Replace(written(t, bar()))
	first := example(t, examples[0])
	pages := []string{bad, large(t, first, beside), large(t, first, asked)}
	for _, name := range examples {
		pages = append(pages, written(t, example(t, name)))
	}
	for scheme, dark := range []bool{true, false} {
		for _, got := range judged(t, string(axe), pages, scheme) {
			broken := got.at%len(pages) == 0
			if got.Dark != dark || got.Passes < 10 {
				t.Errorf("%d px: dark %v, %d rules passed", got.Width, got.Dark, got.Passes)
			}
			if broken == (len(got.Serious) == 0) {
				t.Errorf("page %d, %d px, dark %v: %s", got.at, got.Width, dark, strings.Join(got.Serious, "\n"))
			}
			if !broken && len(got.Others) > 0 {
				t.Logf("page %d, %d px: %s", got.at, got.Width, strings.Join(got.Others, "\n"))
			}
		}
	}
}

type verdict struct {
	accessible
	at int
}

// judged has axe judge pages at two widths, in a colour scheme as Chromium numbers them.
func judged(t *testing.T, axe string, pages []string, scheme int) (out []verdict) {
	t.Helper()
	var b bytes.Buffer
	b.WriteString(`<!DOCTYPE html><meta charset=utf-8><meta name="color-scheme" content="light dark"><pre id="measured"></pre>`)
	for _, width := range []int{1280, 390} {
		for _, page := range pages {
			// axe cannot run where the page's own policy allows but one script.
			page = policy.ReplaceAllString(page, "")
			page = strings.Replace(page, "</head>", "<script>"+axe+"</script></head>", 1)
			fmt.Fprintf(&b, `<iframe style="border:0;width:%dpx;height:900px" srcdoc="%s"></iframe>`, width, html.EscapeString(page))
		}
	}
	judge, err := os.ReadFile(filepath.Join("testdata", "accessible.js"))
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprintf(&b, "<script>%s</script>", judge)
	file := filepath.Join(t.TempDir(), "frames.html")
	if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
		t.Fatal(err)
	}
	dom := run(t, find(t, "chromium", "chromium-browser"), fmt.Sprintf("--blink-settings=preferredColorScheme=%d", scheme),
		"--virtual-time-budget=600000", "--window-size=1400,1000", "--dump-dom", "file://"+file)
	match := result.FindSubmatch(dom)
	if match == nil {
		t.Fatal("the browser gave no answer")
	}
	var all []accessible
	if err := json.Unmarshal([]byte(html.UnescapeString(string(match[1]))), &all); err != nil {
		t.Fatalf("%v: %s", err, match[1])
	}
	if len(all) != 2*len(pages) {
		t.Fatalf("%d pages judged", len(all))
	}
	for i, a := range all {
		out = append(out, verdict{a, i})
	}
	return out
}
