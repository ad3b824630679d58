package main

import (
	"io"
	"net/http"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/view"
)

// The outside check: of a build of more than 3000 parts Chromium asks for what comes in sight, is unfolded
// or searched, again when it has changed, and for nothing else.
func TestViewLargeInBrowser(t *testing.T) {
	v, edits := manyCabinets(t, 200)
	w := browse(t)
	w.open(t, v.address)
	w.value(t, `
		window.errors = [];
		addEventListener("error", (e) => errors.push(e.message));
		addEventListener("unhandledrejection", (e) => errors.push(String(e.reason)));
		document.addEventListener("securitypolicyviolation", (e) => errors.push(e.violatedDirective));
		window.rows = () => document.querySelectorAll("#parts tbody tr").length;
		document.getElementById("drawings").scrollIntoView(); 0`)
	w.wait(t, `document.querySelector("#plan svg") !== null`)
	if w.value(t, `rows() === 0 && document.querySelectorAll("#drawings figure:not(:has(svg))").length > 20`) != "true" {
		t.Error("what is folded or out of sight is not left out")
	}

	before, _, _ := strings.Cut(string(edits[1]), "width = 24.2188")
	runs, cabinets := namedRun.FindAllStringSubmatch(before, -1), namedCabinet.FindAllStringSubmatch(before, -1)
	bottom := "cabinet." + cabinets[len(cabinets)-1][1] + "/bottom"
	w.value(t, `document.querySelector("#fold-parts-Run_`+runs[len(runs)-1][1]+`").open = true; 0`)
	w.wait(t, `rows() > 50`)
	row := `document.querySelector("#parts tr[data-part='` + bottom + `']")`
	size := row + `.querySelector("td[data-h=size]").textContent`
	wide := w.value(t, size)
	w.value(t, row+`.focus(); 0`)
	if w.value(t, `document.querySelectorAll("#plan path.lit, #plan path.near").length > 0 && !document.getElementById("pointed").hidden`) != "true" {
		t.Error("what has been asked for cannot be pointed at")
	}
	v.write(t, "hall000.hcl", edits[0])
	w.wait(t, size+" !== "+strconv.Quote(wide))
	if w.value(t, `document.activeElement.dataset.part`) != bottom {
		t.Error("the focus is lost where a list is asked for anew")
	}

	w.value(t, `(() => { const f = document.getElementById("wanted"); f.value = "cabinet c150"; f.dispatchEvent(new Event("input")); })(), 0`)
	w.wait(t, `rows() > 3000 && /^[1-9]\d* parts, /.test(document.getElementById("found").textContent)`)
	if w.value(t, `[...document.querySelectorAll("#parts .fold:not([hidden])")].every((e) => e.open && e.querySelector("tr.found") !== null)`) != "true" {
		t.Error("what is found is not unfolded, or more than that is shown")
	}
	if errs := w.value(t, `errors.join("; ")`); errs != "" {
		t.Error(errs)
	}
}

var namedRun, namedCabinet = regexp.MustCompile(`run "(\w+)"`), regexp.MustCompile(`cabinet "(\w+)"`)

var asksFor = regexp.MustCompile(`data-asks="([^"]*)"`)

// What a page asks for is served, also while the text is wrong; nothing else is.
func TestViewPieces(t *testing.T) {
	v, edits := manyCabinets(t, 200)
	v.listen(t)
	v.write(t, "hall000.hcl", misspelt(edits[1]))
	v.event(t)
	page := v.page(t)
	if !strings.Contains(page, lastBuild) {
		t.Error("the page does not say that the text is wrong")
	}
	asked := asksFor.FindAllStringSubmatch(page, -1)
	if len(asked) < 50 {
		t.Fatalf("%d pieces are asked for", len(asked))
	}
	for i, ask := range asked {
		if i%7 > 0 {
			continue // each takes its time to draw
		}
		if status, text := piece(t, v, ask[1]); status != http.StatusOK || !strings.HasPrefix(text, "<") {
			t.Errorf("%s: %d, %.40q", ask[1], status, text)
		}
	}
	if status, _ := piece(t, v, "no-such"); status != http.StatusNotFound {
		t.Errorf("a piece that is not there is answered with %d", status)
	}
}

func piece(t *testing.T, v *viewed, name string) (status int, text string) {
	t.Helper()
	reply, err := http.Get(v.address + "pieces/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer reply.Body.Close()
	read, err := io.ReadAll(reply.Body)
	if err != nil {
		t.Fatal(err)
	}
	return reply.StatusCode, string(read)
}

// Every drawing and every sheet is in a file that the page of a large build can lead to.
func TestViewsHaveFiles(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		m, out := compiled(t, name), built(t, name)
		_, views := papers(m, view.Drawings(m), "")
		if want := len(m.Views) + len(m.Sheets); len(views) != want {
			t.Errorf("%s: files for %d views, not %d", name, len(views), want)
		}
		for view, file := range views {
			if _, err := os.Stat(filepath.Join(out, file)); err != nil {
				t.Errorf("%s: %v", view, err)
			}
		}
	}
}
