package main

import (
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/view"
	"barwright/lang"
	"barwright/lang/filename"
)

var safeName = regexp.MustCompile(`^[A-Za-z0-9_][A-Za-z0-9._-]*\.[a-z]+$`)

// safeNames fails the test where a system would not take the name of a file, or would
// take two for the same, and returns all names.
func safeNames(t *testing.T, files []folder.File) []string {
	t.Helper()
	var names []string
	seen := map[string]bool{} // lookup only
	for _, f := range files {
		dir, base := path.Split(f.Name)
		stem := strings.TrimSuffix(base, path.Ext(base))
		unreserved := filename.Of(stem[:min(len(stem), 20)]) == stem[:min(len(stem), 20)]
		if seen[strings.ToLower(f.Name)] || strings.Count(dir, "/") > 1 || len(base) > 100 || !safeName.MatchString(base) || !unreserved {
			t.Errorf("%q", f.Name)
		}
		seen[strings.ToLower(f.Name)] = true
		names = append(names, f.Name)
	}
	return names
}

// hostile names are words of the language, and no good names of files.
var hostile = map[string]string{
	"bins": "con", "beans": "日本", "cups": "étagère", "kegs": strings.Repeat("ä", 20), "bar": "aux",
	"birch": "NUL", "thin": "кофе", "bench": "com1", "front": "ü", "back": "ö", "half": "LPT9",
}

// Whatever the blocks of a description are called, all files of its build have names that
// are safe and tell what they hold.
func TestHostileNames(t *testing.T) {
	files := edittest.Folder(t, example("boatshed"))
	for i := range files {
		text := string(files[i].Text)
		for from, to := range hostile {
			text = regexp.MustCompile(`(?m)^( *\w+ )"`+from+`"`).ReplaceAllString(text, `$1"`+to+`"`)
			text = regexp.MustCompile(`\b(\w+)\.`+from+`\b`).ReplaceAllString(text, "$1."+to)
		}
		text = strings.Replace(text, "  decimals = 4\n", "  relief = \"diagonal\"\n  guide = { bush = \"5/8in\", bit = \"1/4in\", board = sheet.LPT9 }\n", 1)
		files[i].Text = []byte(text)
	}
	src, findings := lang.Read(files)
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	m.Table.Drawings = true
	for way, want := range map[string][]string{
		"each": {
			"parts/CON-L.dxf", "parts/u65E5u672C-L.dxf", "parts/ETAGERE-DV1.dxf", "parts/ETAGERE-DV1-far.dxf",
			"parts/AeAeAeAeAeAeAeAeAeAeAeAeAeAeAeAeAeAeAeAe-L.dxf", "router/test-piece.ngc", "router/setup.txt",
			"router/aux-support-1.ngc", "templates/aux-support-1.dxf", "drawings/plan.dxf",
		},
		"distinct": {"parts/CON-L-x1.dxf"},
		"sheets":   {"sheets/NUL-1.dxf", "sheets/u043Au043Eu0444u0435-1.dxf"},
	} {
		m.Table.Files = way
		out, err := outputs(m, view.Drawings(m), "")
		if err != nil {
			t.Fatal(err)
		}
		names := safeNames(t, out)
		for _, name := range want {
			if !slices.Contains(names, name) {
				t.Errorf("%s: no %s", way, name)
			}
		}
	}
}

// Labels and names that no description can give, but a model can.
func TestHostileLabels(t *testing.T) {
	m := compiled(t, "boatshed")
	bad := []string{"../../etc/passwd", "CON", "aux.dxf", "", ".", "日本", "a\x00b\n", strings.Repeat("x", 300), strings.Repeat("x", 299) + "y", "CUPS-DV1-FAR", "lpt1.tar"}
	byLabel := map[string]string{} // lookup only
	k := 0
	for i := range m.Parts {
		if p := &m.Parts[i]; p.Label != "CUPS-DV1" && k < len(bad) {
			byLabel[p.Label] = bad[k]
			p.Label, k = bad[k], k+1
		}
	}
	for i := range m.Cuts {
		for j, label := range m.Cuts[i].Parts {
			if to, ok := byLabel[label]; ok {
				m.Cuts[i].Parts[j] = to
			}
		}
	}
	long := "sheet." + strings.Repeat("z", 300)
	for i := range m.Layouts {
		if m.Layouts[i].Stock == m.Stock.Sheets[0].Name {
			m.Layouts[i].Stock = long
		}
	}
	m.Stock.Sheets[0].Name = long
	for way, want := range map[string]string{
		"each": "parts/CUPS-DV1-far-2.dxf", "distinct": "parts/CUPS-DV1-x1-far.dxf", "sheets": "sheets/" + strings.Repeat("z", 80) + "-1.dxf",
	} {
		m.Table.Files = way
		if names := safeNames(t, cutFiles(m)); !slices.Contains(names, want) {
			t.Errorf("%s: no %s", way, want)
		}
	}
}
