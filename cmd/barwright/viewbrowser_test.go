package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// The outside check: Chromium shows what is saved, and what it has open stays in its place.
func TestViewInBrowser(t *testing.T) {
	v := serveCopy(t, "boatshed", nil)
	w := browse(t)
	w.open(t, v.address)
	texts := revisedTop(t, v)
	fact := `[...document.querySelectorAll("header dt")].find((e) => e.textContent === "bar_top").nextSibling.textContent`

	// Somebody has scrolled down to a part, points at it with the keyboard, has ticked a step, and scrolled a table.
	w.value(t, `
		window.errors = [];
		addEventListener("error", (e) => errors.push(e.message));
		addEventListener("unhandledrejection", (e) => errors.push(String(e.reason)));
		document.addEventListener("securitypolicyviolation", (e) => errors.push(e.violatedDirective));
		window.part = document.querySelector("figure.drawing path[data-part$='/side-left']").closest("figure");
		window.row = document.querySelector("tr[data-part$='/side-left']");
		document.querySelector(".work input").checked = true;
		row.focus();
		part.scrollIntoView({ block: "center" });
		window.top0 = part.getBoundingClientRect().top; 0`)
	stays := `Object.entries({
		focus: document.activeElement === row,
		row: row.classList.contains("lit"),
		shape: document.querySelector("svg path.lit") !== null,
		bar: !document.getElementById("pointed").hidden,
		tick: document.querySelector(".work input").checked,
		part: part.isConnected,
		scrolled: scrollY > 0,
	}).filter(([, ok]) => !ok).map(([name]) => name).join(", ")`
	check := func(what string) {
		t.Helper()
		if lost := w.value(t, stays); lost != "" {
			t.Errorf("%s: lost is %s", what, lost)
		}
		if moved := w.value(t, `Math.abs(part.getBoundingClientRect().top - top0) <= 1`); moved != "true" {
			t.Errorf("%s: the part has moved in the window by %s px", what, w.value(t, `part.getBoundingClientRect().top - top0`))
		}
		if errs := w.value(t, `errors.join("; ")`); errs != "" {
			t.Errorf("%s: %s", what, errs)
		}
	}
	if w.value(t, stays) != "" || w.value(t, fact) != "42" {
		t.Fatal("the page is not as it is to be before it changes")
	}

	v.write(t, "bar.hcl", texts[0])
	w.wait(t, fact+` === "41.75"`)
	check("saved")

	v.write(t, "bar.hcl", misspelt(texts[1]))
	w.wait(t, `document.querySelector("#live pre") !== null`)
	check("wrong")
	if w.value(t, `document.querySelector("#live pre").textContent.includes("  bar.hcl:") && `+fact+` === "41.75"`) != "true" {
		t.Error("the findings are not over the last good build")
	}
	if w.value(t, `(() => { const r = document.querySelector("#live").getBoundingClientRect(); return r.top >= 0 && r.bottom < innerHeight * 0.6; })()`) != "true" {
		t.Error("the findings are not in sight where the page is scrolled")
	}

	v.write(t, "bar.hcl", texts[1])
	w.wait(t, `document.querySelector("#live pre") === null`)
	check("mended")
	if got := w.value(t, fact); got != "42" {
		t.Error(got)
	}

	// What is drawn by changes is what is drawn at once.
	same := w.value(t, `(async () => {
		const plain = (page) => ["body > header", "body > main"].map((part) => {
			const e = page.querySelector(part).cloneNode(true);
			for (const lit of e.querySelectorAll("*")) {
				lit.classList.remove("lit", "near", "found");
				if (!lit.className.length && lit.tagName !== "path") lit.removeAttribute("class");
				if (lit.matches("tr, tr a, .scroll")) lit.removeAttribute("tabindex"); // the script decides what Tab stops at
			}
			return e;
		});
		const now = plain(new DOMParser().parseFromString(await (await fetch("/")).text(), "text/html"));
		return plain(document).every((e, i) => e.outerHTML === now[i].outerHTML);
	})()`)
	if same != "true" {
		t.Error("the page is not what the server has")
	}

	v.end()
	w.wait(t, `!document.getElementById("ended").hidden`)
	check("ended")
}

// A page that begins with nothing but findings becomes the page of the build.
func TestViewMendedInBrowser(t *testing.T) {
	var text []byte
	v := serveCopy(t, "steps/1", func(dir string) {
		var err error
		name := filepath.Join(dir, "bar.hcl")
		if text, err = os.ReadFile(name); err == nil {
			err = os.WriteFile(name, bytes.Replace(text, []byte(`run "`), []byte(`rn "`), 1), 0o666)
		}
		if err != nil {
			t.Fatal(err)
		}
	})
	w := browse(t)
	w.open(t, v.address)
	if w.value(t, `document.querySelectorAll("svg, section").length === 0 && document.querySelector("#live pre").textContent.startsWith("error: unknown-block\n\n")`) != "true" {
		t.Error("the first page is not the findings alone")
	}
	v.write(t, "bar.hcl", text)
	w.wait(t, `document.querySelector("#live pre") === null && document.querySelectorAll("svg").length > 4`)
	w.value(t, `document.querySelector("tr[data-part]").focus(); 0`)
	if w.value(t, `document.querySelectorAll("svg path.lit").length > 0 && !document.getElementById("pointed").hidden`) != "true" {
		t.Error("parts that are new on the page cannot be pointed at")
	}
}

// More pages than a browser keeps connections are open; one that comes back in sight is redrawn.
func TestViewManyTabs(t *testing.T) {
	v := serveCopy(t, "steps/5", nil)
	first := browse(t)
	first.open(t, v.address)
	last := first
	for range 7 {
		last = first.tab(t)
		last.open(t, v.address)
	}
	text := v.read(t, "bar.hcl")
	v.write(t, "bar.hcl", bytes.Replace(text, []byte("bar_top = 42"), []byte("bar_top = 43"), 1))
	shows := `document.querySelector("header").textContent.includes("bar_top43")`
	last.wait(t, shows)
	first.call(t, "Page.bringToFront", nil, &struct{}{})
	first.wait(t, shows)
}
