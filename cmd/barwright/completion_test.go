package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"barwright/cmd/barwright/completion"
)

// parseOnly stands for a script: the shell reads what follows and runs nothing.
const parseOnly = "-n"

// shellRun runs a script in a shell, in a folder with a build and with the
// program on the path, and returns the lines that it prints. The test is
// skipped where the shell is missing.
func shellRun(t *testing.T, shell, script string, args ...string) []string {
	t.Helper()
	if _, err := exec.LookPath(shell); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: there is no", shell, "to try its completion in:", err)
	}
	self, err := os.Executable() // called barwright, it is the program
	if err != nil {
		t.Fatal(err)
	}
	bin, home, dir := t.TempDir(), t.TempDir(), t.TempDir()
	if err := os.Symlink(self, filepath.Join(bin, "barwright")); err != nil {
		t.Fatal(err)
	}
	if err := os.CopyFS(filepath.Join(dir, "shed"), os.DirFS(filepath.Join(root, "examples", "steps", "5"))); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "notes.txt"), nil, 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := exec.LookPath("git"); err == nil {
		tagged(t, dir)
	}
	if script != parseOnly {
		if script, err = filepath.Abs(script); err != nil {
			t.Fatal(err)
		}
	}
	ctx, stop := context.WithTimeout(t.Context(), time.Minute)
	defer stop()
	cmd := exec.CommandContext(ctx, shell, append([]string{script}, args...)...)
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "PATH="+bin+string(os.PathListSeparator)+os.Getenv("PATH"), "HOME="+home,
		"XDG_CONFIG_HOME="+home, "XDG_DATA_HOME="+home, "TERM=dumb")
	var errs bytes.Buffer
	cmd.Stderr = &errs
	out, err := cmd.Output()
	if err != nil || errs.Len() > 0 {
		t.Fatalf("%s: %v\n%s%s", shell, err, out, errs.String())
	}
	return strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
}

// hostileTag is what a tag may be called; a shell that reads it as a command makes a
// file.
const hostileTag = "evil$(touch${IFS}ran)"

// tagged makes a folder a repository with a tag.
func tagged(t *testing.T, dir string) {
	t.Helper()
	inGit(t, dir, []string{"init", "-q"}, []string{"add", "shed"}, []string{"commit", "-qm", "one"}, []string{"tag", hostileTag})
	t.Cleanup(func() {
		if _, err := os.Stat(filepath.Join(dir, "ran")); err == nil {
			t.Error("the name of a tag was run")
		}
	})
}

// TestShellsOfferRevisions looks for a tag among what is offered, as plain text.
func TestShellsOfferRevisions(t *testing.T) {
	inGit(t, ".") // where it is
	t.Run("bash", func(t *testing.T) {
		compareOffers(t, []string{"diff", "ev"}, shellRun(t, "bash", "testdata/shell/offers.bash", "diff", "ev"), []string{hostileTag})
	})
	t.Run("fish", func(t *testing.T) {
		compareOffers(t, []string{"diff", "ev"}, shellRun(t, "fish", "testdata/shell/offers.fish", "barwright diff ev"), []string{hostileTag})
	})
	t.Run("zsh", func(t *testing.T) {
		got := shellRun(t, "zsh", "testdata/shell/tab.zsh", "barwright diff ev")
		if want := `<barwright diff evil\$\(touch\$\{IFS\}ran\) >`; len(got) != 1 || got[0] != want {
			t.Errorf("zsh makes %q of it, not %q", got, want)
		}
	})
}

func commandNames() []string {
	var out []string
	for _, c := range commands() {
		out = append(out, c.name)
	}
	return append(out, "help")
}

// offers are lines with what a shell has to offer at their end, in any order.
// The words are those that bash makes of a line: an = stands alone.
var offers = []struct {
	words []string
	want  []string
}{
	{[]string{""}, commandNames()},
	{[]string{"bu"}, []string{"build"}},
	{[]string{"build", "--o"}, []string{"--out"}},
	{[]string{"build", "s"}, []string{"shed"}},
	{[]string{"build", "n"}, nil}, // notes.txt is no description
	{[]string{"build", "shed/b"}, []string{"shed/bar.hcl"}},
	{[]string{"build", "shed", "-o", "s"}, []string{"shed"}},
	{[]string{"build", "shed", "--set", ""}, []string{"bar_top="}},
	{[]string{"check", "--set-file", "n"}, []string{"notes.txt"}},
	{[]string{"new", "--unit", ""}, []string{"in", "mm"}},
	{[]string{"completion", ""}, completion.Shells()},
	{[]string{"check", "--format", "j"}, []string{"json"}},
	{[]string{"explain", "run-too-l"}, []string{"run-too-long"}},
	{[]string{"show", "shed", "knee_wall.bar.hei"}, []string{"knee_wall.bar.height"}},
	{[]string{"diff", "shed", "s"}, []string{"shed"}},
	{[]string{"diff", "shed/b"}, []string{"shed/bar.hcl"}},
	{[]string{"diff", "--cut", "n"}, []string{"notes.txt"}},
	{[]string{"diff", "shed", "--set-new", ""}, []string{"bar_top="}},
}

// TestBashOffers sources the script in bash and asks what it offers.
func TestBashOffers(t *testing.T) {
	inBash := append(slices.Clone(offers), []struct{ words, want []string }{
		{[]string{"build", "shed", "--set", "=", "b"}, []string{"bar_top="}},
		{[]string{"build", "shed", "--set", "="}, []string{"bar_top="}},
		{[]string{"build", "shed", "--set", "bar_top", "="}, nil},
		{[]string{"build", "shed", "--set", "bar_top", "=", "4"}, nil},
		{[]string{"show", "--set", "bar_top", "=", "44", "sh"}, []string{"shed"}},
		{[]string{"new", "--unit", "in", "s"}, []string{"shed"}},
		{[]string{"new", "shed", ""}, nil},
	}...)
	for _, o := range inBash {
		got := shellRun(t, "bash", "testdata/shell/offers.bash", o.words...)
		compareOffers(t, o.words, got, o.want)
	}
}

// TestFishOffers has fish itself complete lines.
func TestFishOffers(t *testing.T) {
	for _, o := range offers {
		got := shellRun(t, "fish", "testdata/shell/offers.fish", "barwright "+strings.Join(o.words, " "))
		for i := range got {
			got[i], _, _ = strings.Cut(got[i], "\t")
			got[i] = strings.TrimSuffix(got[i], "/")
		}
		if slices.Equal(o.words, []string{"build", "n"}) {
			continue // fish offers other files where none has the ending
		}
		compareOffers(t, o.words, got, o.want)
	}
}

func compareOffers(t *testing.T, words, got, want []string) {
	t.Helper()
	got = slices.DeleteFunc(got, func(s string) bool { return s == "" })
	slices.Sort(got)
	want = slices.Sorted(slices.Values(want))
	if !slices.Equal(got, want) {
		t.Errorf("barwright %q is offered %q, not %q", words, got, want)
	}
}

// TestZshCompletes types lines into zsh, presses the tab key, and reads what
// has become of them.
func TestZshCompletes(t *testing.T) {
	lines := [][2]string{
		{"barwright bu", "barwright build "},
		{"barwright build --o", "barwright build --out="},
		{"barwright build s", "barwright build shed/"},
		{"barwright build shed/b", "barwright build shed/bar.hcl "},
		{"barwright build shed -o s", "barwright build shed -o shed/"},
		{"barwright build shed --set b", "barwright build shed --set bar_top="},
		{"barwright build shed --set=b", "barwright build shed --set=bar_top="},
		{"barwright check --set-file n", "barwright check --set-file notes.txt "},
		{"barwright new --unit i", "barwright new --unit in "},
		{"barwright completion b", "barwright completion bash "},
		{"barwright show shed knee_wall.bar.hei", "barwright show shed knee_wall.bar.height "},
	}
	var typed []string
	for _, l := range lines {
		typed = append(typed, l[0])
	}
	got := shellRun(t, "zsh", "testdata/shell/tab.zsh", typed...)
	for i, l := range lines {
		if i >= len(got) || got[i] != "<"+l[1]+">" {
			t.Errorf("%q becomes %q, not %q", l[0], got[min(i, len(got)-1)], l[1])
		}
	}
}

// TestCompletionParses has each shell read its own script.
func TestCompletionParses(t *testing.T) {
	for _, shell := range completion.Shells() {
		t.Run(shell, func(t *testing.T) {
			script := filepath.Join(t.TempDir(), "script")
			var out bytes.Buffer
			if status := run([]string{"completion", shell}, streams{out: &out, err: &out}); status != exitClean {
				t.Fatalf("status %d: %s", status, out.String())
			}
			if err := os.WriteFile(script, out.Bytes(), 0o666); err != nil {
				t.Fatal(err)
			}
			shellRun(t, shell, parseOnly, script)
		})
	}
}

// TestCompletionKnowsAll looks for each command and each flag in each script.
func TestCompletionKnowsAll(t *testing.T) {
	for _, shell := range completion.Shells() {
		var out bytes.Buffer
		if err := completion.Write(&out, shell, completions()); err != nil {
			t.Fatal(err)
		}
		for _, c := range completions() {
			flags := 0
			for _, f := range c.Flags {
				flags++
				name := "--" + f.Long
				if shell == "fish" {
					name = "-l " + f.Long
				}
				if !strings.Contains(out.String(), name) {
					t.Errorf("%s does not know %s %s", shell, c.Name, name)
				}
			}
			if flags == 0 || !strings.Contains(out.String(), c.Name) {
				t.Errorf("%s: %s has %d flags", shell, c.Name, flags)
			}
		}
	}
	if err := completion.Write(&bytes.Buffer{}, "tcsh", completions()); err == nil {
		t.Error("there is a script for tcsh")
	}
}
