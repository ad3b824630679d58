package main

import (
	"bytes"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"
)

// fenced is a block of code of the README that begins with a text, as it stands there.
func fenced(t *testing.T, begins string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	for i, block := range strings.Split(string(text), "```") {
		if _, code, _ := strings.Cut(block, "\n"); i%2 == 1 && strings.HasPrefix(code, begins) {
			return code
		}
	}
	t.Fatalf("the README has no code that begins with %q", begins)
	return ""
}

// shop is a folder with a shop's builds in bars.
func shop(t *testing.T) string {
	t.Helper()
	dir := memory(t)
	for name, step := range map[string]string{"lane": "1", "shed": "2", "yard": "3"} {
		if err := os.CopyFS(filepath.Join(dir, "bars", name), os.DirFS(filepath.Join(example("steps"), step))); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// shell has a shell run a text in a folder, and gives its exit status and all that is printed.
func shell(t *testing.T, dir, text string, needs ...string) (status int, said string) {
	t.Helper()
	for _, name := range append(needs, "sh") {
		if _, err := exec.LookPath(name); err != nil {
			if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
				t.Fatal(err)
			}
			t.Skip("OUTSIDE CHECK SKIPPED:", err)
		}
	}
	program(t) // is on the path
	cmd := exec.Command("sh", "-c", text)
	cmd.Dir = dir
	out, err := cmd.CombinedOutput()
	if err != nil && cmd.ProcessState == nil {
		t.Fatal(err)
	}
	return cmd.ProcessState.ExitCode(), string(out)
}

// together is what one command writes of all builds of a shop, by the folder of each.
func together(t *testing.T, dir string) map[string][]byte {
	t.Helper()
	if status, said := shell(t, dir, "barwright build bars/* -o together"); status != 0 {
		t.Fatal(said)
	}
	return filesIn(t, filepath.Join(dir, "together"))
}

// The outside check: builds that xargs spreads, as the README says.
func TestXargs(t *testing.T) {
	dir := shop(t)
	text := fenced(t, "printf")
	if status, said := shell(t, dir, text, "xargs"); status != 0 || strings.Count(said, "bars/") != 6 {
		t.Errorf("exit status %d\n%s", status, said)
	}
	if !maps.EqualFunc(filesIn(t, filepath.Join(dir, "out", "bars")), together(t, dir), bytes.Equal) {
		t.Error("xargs gives other files than one command")
	}
	if err := os.WriteFile(filepath.Join(dir, "bars", "lane", "bar.hcl"), []byte("run"), 0o666); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(dir, "out")); err != nil {
		t.Fatal(err)
	}
	status, said := shell(t, dir, text, "xargs")
	if got := folders(t, filepath.Join(dir, "out", "bars")); status != 123 || got != "shed yard" {
		t.Errorf("one fails: exit status %d, and %q are built\n%s", status, got, said)
	}
}

// folders lists what is in a folder.
func folders(t *testing.T, dir string) string {
	t.Helper()
	entries, err := os.ReadDir(dir)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	slices.Sort(names)
	return strings.Join(names, " ")
}

// The outside check: builds that make spreads, as the README says; it builds what has changed.
func TestMake(t *testing.T) {
	dir := shop(t)
	if err := os.WriteFile(filepath.Join(dir, "Makefile"), []byte(fenced(t, "BARS")), 0o666); err != nil {
		t.Fatal(err)
	}
	const command = "make -k -j 4"
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil || !strings.Contains(string(readme), "`"+command+"`") {
		t.Fatal("the README has another command", err)
	}
	date := func(name string, at time.Time) {
		t.Helper()
		if err := os.Chtimes(filepath.Join(dir, "bars", name, "bar.hcl"), at, at); err != nil {
			t.Fatal(err)
		}
	}
	built := func(said string) string {
		var names []string
		for _, name := range []string{"lane", "shed", "yard"} {
			if strings.Contains(said, "bars/"+name+": ") {
				names = append(names, name)
			}
		}
		return strings.Join(names, " ")
	}
	for _, name := range []string{"lane", "shed", "yard"} {
		date(name, time.Now().Add(-time.Hour))
	}
	status, said := shell(t, dir, command, "make")
	if status != 0 || built(said) != "lane shed yard" {
		t.Fatalf("exit status %d\n%s", status, said)
	}
	if !maps.EqualFunc(filesIn(t, filepath.Join(dir, "out")), together(t, dir), bytes.Equal) {
		t.Error("make gives other files than one command")
	}
	if status, said := shell(t, dir, command, "make"); status != 0 || built(said) != "" {
		t.Errorf("nothing has changed: exit status %d\n%s", status, said)
	}
	date("shed", time.Now().Add(time.Hour))
	if status, said := shell(t, dir, command, "make"); status != 0 || built(said) != "shed" {
		t.Errorf("one has changed: exit status %d\n%s", status, said)
	}
	if err := os.WriteFile(filepath.Join(dir, "bars", "lane", "bar.hcl"), []byte("run"), 0o666); err != nil {
		t.Fatal(err)
	}
	date("lane", time.Now().Add(time.Hour))
	date("yard", time.Now().Add(time.Hour))
	if status, said := shell(t, dir, command, "make"); status == 0 || !strings.Contains(said, "bars/yard: ") || !strings.Contains(said, "Nothing was written.") {
		t.Errorf("one fails: exit status %d\n%s", status, said)
	}
}

// The outside check: the n-th line of a list, as the README says.
func TestNumberedJobs(t *testing.T) {
	dir := shop(t)
	text := "n=2\nprintf '%s\\n' bars/* > bars.txt\n" + fenced(t, `barwright build "$(sed`)
	if status, said := shell(t, dir, text, "sed"); status != 0 || !strings.HasPrefix(said, "bars/shed: ") {
		t.Errorf("exit status %d\n%s", status, said)
	}
	if got := folders(t, filepath.Join(dir, "out")); got != "2" {
		t.Errorf("%q are built", got)
	}
}
