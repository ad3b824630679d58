package main

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// oddNames are names of files that some system takes.
var oddNames = []string{
	"new\nline", "\ttab ", " blank", `quo'te"s`, "日本", "cafe\u0301", "-dash", "--out", "\xff\xfe", "esc\x1b[31m",
	"star*?[x]", `back\slash`, "..dots", "a:b|c", "{}", "$(x)`y`", "%d%s", "#", "~", "\u202eright", ".barwright-1", strings.Repeat("n", 200),
}

// A build and its folder may be called anything that the system takes; what is written does
// not depend on it, and what is printed is one line without control codes.
func TestOddPaths(t *testing.T) {
	step, err := filepath.Abs(filepath.Join(example("steps"), "1"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(memory(t))
	var names []string
	for _, name := range oddNames {
		if os.Mkdir(name, 0o777) != nil {
			continue // this system does not take it
		}
		names = append(names, name)
		err := os.CopyFS(name, os.DirFS(step))
		if err == nil {
			err = os.Rename(filepath.Join(name, "bar.hcl"), filepath.Join(name, name+".hcl"))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(names) < 5 {
		t.Fatalf("this system takes only %q", names)
	}
	want := map[string][]byte{}
	alike := func(name, out string) {
		t.Helper()
		got := filesIn(t, out)
		for file, text := range got { // reasons name the file, in the record alone
			if file == "model.json" || file == "manifest.json" {
				delete(got, file)
			} else if bytes.Contains(text, []byte("esc\x1b")) {
				t.Errorf("%q: %s has a control code", name, file)
			}
		}
		if len(want) == 0 {
			want = got
		}
		if !maps.EqualFunc(got, want, bytes.Equal) {
			t.Errorf("%q: what is written depends on the name", name)
		}
	}
	for _, name := range names {
		var stdout, stderr bytes.Buffer
		if status := run([]string{"build", "-o", "one/" + name, "--", name}, streams{out: &stdout, err: &stderr}); status != exitClean {
			t.Errorf("%q: exit status %d: %s", name, status, stderr.String())
			continue
		}
		if line, _ := strings.CutSuffix(stdout.String(), "\n"); strings.ContainsAny(line, "\n\x1b\u202e") || !utf8.ValidString(line) || !strings.Contains(line, ": 7 parts") {
			t.Errorf("%q: printed is %q", name, stdout.String())
		}
		alike(name, "one/"+name)
	}
	var stdout, stderr bytes.Buffer
	args := append([]string{"build", "--format", "json", "-o", "many", "--"}, names...)
	if status := run(args, streams{out: &stdout, err: &stderr}); status != exitClean || !json.Valid(stdout.Bytes()) {
		t.Errorf("exit status %d: %s", status, stderr.String())
	}
	for _, name := range names {
		alike(name, "many/"+name)
	}
	entries, err := os.ReadDir("many")
	if err != nil || len(entries) != len(names) {
		t.Errorf("%d folders, not %d: %v", len(entries), len(names), err)
	}
}

// Several builds get folders by their names, also where they are named as "." or "..".
func TestNamesOfFolders(t *testing.T) {
	t.Chdir(t.TempDir())
	at, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	o := options{out: "out", args: []string{"a", "b"}}
	for path, want := range map[string]string{
		"a": "a", "a/": "a", "x/a.hcl": "a", ".": filepath.Base(at), "..": filepath.Base(filepath.Dir(at)), "a/..": filepath.Base(at),
		"./../..x": "..x", "-a": "-a",
	} {
		if got := outFolder(o, path); got != filepath.Join("out", want) {
			t.Errorf("%q goes to %q, not %q", path, got, want)
		}
	}
	for _, path := range []string{"/", "x/.hcl"} {
		if got := outFolder(o, path); got != "" {
			t.Errorf("%q goes to %q", path, got)
		}
	}
	var stderr bytes.Buffer
	if status := run([]string{"build", "/", "a", "-o", "out"}, streams{out: &stderr, err: &stderr}); status != exitMisuse || !strings.Contains(stderr.String(), "/ has no name that its folder in out could have") {
		t.Errorf("%d: %s", status, stderr.String())
	}
}
