package main

import (
	"debug/buildinfo"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// tableOf reads the rows of a table of DEVELOPERS.md, by the head of its first two columns: its first
// column with the second. Lookup only.
func tableOf(t *testing.T, first, second string) map[string]string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	if err != nil {
		t.Fatal(err)
	}
	_, table, ok := strings.Cut(string(text), "| "+first+" | "+second+" |\n")
	if !ok {
		t.Fatalf("DEVELOPERS.md has no table of %s and %s", first, second)
	}
	rows := map[string]string{}
	for line := range strings.Lines(table) {
		if !strings.HasPrefix(line, "|") {
			break
		}
		if cells := strings.Split(strings.Trim(line, "|\n"), "|"); !strings.Contains(cells[0], "---") {
			rows[strings.TrimSpace(cells[0])] = strings.TrimSpace(cells[1])
		}
	}
	return rows
}

func keys(rows map[string]string) []string {
	out := []string{}
	for key := range rows {
		out = append(out, key)
	}
	slices.Sort(out)
	return out
}

// TestDependenciesAreTold holds DEVELOPERS.md to go.mod: each module that is required directly has its reason.
func TestDependenciesAreTold(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	var direct []string
	for _, m := range regexp.MustCompile(`(?m)^\t(\S+) v\S+$`).FindAllStringSubmatch(string(text), -1) { // the others end in // indirect
		direct = append(direct, m[1])
	}
	slices.Sort(direct)
	told := tableOf(t, "module", "why")
	if diff := cmp.Diff(direct, keys(told)); diff != "" {
		t.Errorf("the modules of go.mod and those of DEVELOPERS.md (-go.mod +DEVELOPERS.md):\n%s", diff)
	}
	for module, why := range told {
		if why == "" {
			t.Errorf("%s has no reason", module)
		}
	}
}

// licences are the words that a licence's text is known by.
var licences = map[string][]string{ // lookup only
	"MIT":          {"Permission is hereby granted, free of charge", "to deal in the Software without restriction"},
	"BSD-3-Clause": {"Redistributions in binary form must reproduce", "Neither the name of"},
	"Apache-2.0":   {"Apache License", "Version 2.0"},
	"MPL-2.0":      {"Mozilla Public License", "ersion 2.0"},
	"OFL-1.1":      {"SIL OPEN FONT LICENSE Version 1.1"},
	"Unicode":      {"to deal in the Data Files or Software without restriction"},
}

// TestLicencesAreTold holds DEVELOPERS.md to the program that is built: each module that is linked into it is
// listed with the licences whose texts lie in the module, and no other module is.
func TestLicencesAreTold(t *testing.T) {
	path, err := exec.LookPath("barwright") // which TestMain has built
	if err != nil {
		t.Fatal(err)
	}
	info, err := buildinfo.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	told := tableOf(t, "linked module", "licence")
	linked := []string{}
	for _, dep := range info.Deps {
		linked = append(linked, dep.Path)
		if have := licencesIn(t, dep.Path); told[dep.Path] != have {
			t.Errorf("%s is under %s, and DEVELOPERS.md says %q", dep.Path, have, told[dep.Path])
		}
	}
	slices.Sort(linked)
	if diff := cmp.Diff(linked, keys(told)); diff != "" {
		t.Errorf("the modules of the program and those of DEVELOPERS.md (-linked +DEVELOPERS.md):\n%s", diff)
	}
}

// licencesIn names the licences whose texts lie at the top of a module.
func licencesIn(t *testing.T, module string) string {
	t.Helper()
	out, err := exec.Command("go", "list", "-m", "-json", module).Output()
	if err != nil {
		t.Fatal(err)
	}
	var m struct{ Dir string }
	if err := json.Unmarshal(out, &m); err != nil {
		t.Fatal(err)
	}
	files, err := filepath.Glob(filepath.Join(m.Dir, "LICENSE*"))
	if err != nil || m.Dir == "" || len(files) == 0 {
		t.Fatalf("%s has no licence: %v", module, err)
	}
	var found []string
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		plain := strings.Join(strings.Fields(string(text)), " ")
		for name, words := range licences {
			if !slices.ContainsFunc(words, func(w string) bool { return !strings.Contains(plain, w) }) {
				found = append(found, name)
			}
		}
	}
	slices.Sort(found)
	return strings.Join(slices.Compact(found), " and ")
}
