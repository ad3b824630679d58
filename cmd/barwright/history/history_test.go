package history_test

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/cmd/barwright/history"
	"barwright/lang"
)

// repository makes an empty one, in which git knows no other configuration. The test
// is skipped where git is missing.
func repository(t *testing.T) (dir string, git func(args ...string) string) {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: there is no git to read revisions with:", err)
	}
	for name, value := range map[string]string{ // in any order
		"HOME": t.TempDir(), "XDG_CONFIG_HOME": "", "GIT_CONFIG_NOSYSTEM": "1", "GIT_CONFIG_GLOBAL": os.DevNull,
		"GIT_AUTHOR_NAME": "A", "GIT_AUTHOR_EMAIL": "a@example.org", "GIT_COMMITTER_NAME": "A", "GIT_COMMITTER_EMAIL": "a@example.org",
	} {
		t.Setenv(name, value)
	}
	dir = t.TempDir()
	git = func(args ...string) string {
		t.Helper()
		cmd := exec.Command("git", args...)
		cmd.Dir = dir
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("git %q: %v\n%s", args, err, out)
		}
		return strings.TrimSpace(string(out))
	}
	git("init", "-q", "-b", "main")
	return dir, git
}

func write(t *testing.T, dir string, files map[string]string) {
	t.Helper()
	for name, text := range files { // in any order
		path := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
}

func commit(t *testing.T, dir, rev string) *history.Commit {
	t.Helper()
	repo, err := history.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	c, err := repo.Commit(rev)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestRead(t *testing.T) {
	dir, git := repository(t)
	write(t, dir, map[string]string{
		"rooms/bar/bar.hcl": "first", "rooms/bar/a\n\"b\t\xff.hcl": "odd", "rooms/bar/notes.txt": "", "rooms/bar/deep/er.hcl": "deep", "empty": "",
	})
	git("add", ".")
	git("commit", "-qm", "one")
	git("tag", "-am", "", "v1")
	write(t, dir, map[string]string{"rooms/bar/bar.hcl": "second"})
	git("commit", "-qam", "two")

	for rev, want := range map[string]string{"v1": "first", "HEAD~1": "first", "HEAD": "second", "main": "second", "HEAD^{/on}": "first"} {
		if text, err := commit(t, dir, rev).Read("rooms/bar/bar.hcl", 100); err != nil || string(text) != want {
			t.Errorf("%s has %q: %v", rev, text, err)
		}
	}
	c := commit(t, dir, "v1")
	if have := c.Descriptions("rooms/bar"); !slices.Equal(have, []string{"a\n\"b\t\xff.hcl", "bar.hcl"}) {
		t.Errorf("the folder has %q", have)
	}
	if have := c.Builds(); !slices.Equal(have, []string{"rooms/bar", "rooms/bar/deep"}) {
		t.Errorf("builds are in %q", have)
	}
	for name, want := range map[string]string{"rooms/bar/a\n\"b\t\xff.hcl": "odd", "empty": "", "rooms//bar/../bar/bar.hcl": "first"} {
		if text, err := c.Read(name, 100); err != nil || string(text) != want {
			t.Errorf("%q has %q: %v", name, text, err)
		}
	}
	if text, err := c.Read("rooms/bar/bar.hcl", 3); err != nil || string(text) != "fir" {
		t.Errorf("at most three bytes are %q: %v", text, err)
	}
	for _, name := range []string{"rooms/bar/cab.hcl", "rooms/bar/bar.hcl/x", "", "rooms"} {
		if text, err := c.Read(name, 100); err == nil {
			t.Errorf("%q has %q", name, text)
		}
	}
}

func TestRevisionsThatAreNone(t *testing.T) {
	dir, git := repository(t)
	write(t, dir, map[string]string{"bar.hcl": ""})
	git("add", ".")
	git("commit", "-qm", "one")
	git("tag", "blob", git("rev-parse", "HEAD:bar.hcl"))
	repo, err := history.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	for _, rev := range []string{"", "--upload-pack=x", "-h", "nothing", "HEAD~1", "HEAD..HEAD", "blob", "a b", "a\x00b", "HEAD\nHEAD", "^HEAD", "$(x)"} {
		if _, err := repo.Commit(rev); !errors.Is(err, history.ErrNoRevision) {
			t.Errorf("%q: %v", rev, err)
		}
	}
	if _, err := history.Open(t.TempDir()); !errors.Is(err, history.ErrNoRepository) {
		t.Errorf("a folder outside: %v", err)
	}
	shallow := filepath.Join(t.TempDir(), "shallow")
	write(t, dir, map[string]string{"bar.hcl": "more"})
	git("commit", "-qam", "two")
	git("clone", "-q", "--depth=1", "file://"+filepath.ToSlash(dir), shallow)
	if repo, err = history.Open(shallow); err != nil {
		t.Fatal(err)
	}
	if _, err := repo.Commit("HEAD~1"); !errors.Is(err, history.ErrNoRevision) || !strings.Contains(err.Error(), "shallow") {
		t.Errorf("in a shallow clone: %v", err)
	}
	t.Setenv("PATH", "")
	if _, err := history.Open(dir); !errors.Is(err, history.ErrNoGit) {
		t.Errorf("without git: %v", err)
	}
}

func TestPath(t *testing.T) {
	dir, git := repository(t)
	write(t, dir, map[string]string{"rooms/bar/bar.hcl": ""})
	git("add", ".")
	git("commit", "-qm", "one")
	for _, c := range []struct{ from, name, want string }{
		{"rooms/bar", "rooms/bar", "rooms/bar"}, {"rooms/bar", "./bar.hcl", "rooms/bar/bar.hcl"}, {"rooms/bar", ".", "rooms/bar"},
		{"rooms/bar", "..", "rooms"}, {"rooms/bar", "../..", "."}, {"rooms/bar", "../../../x", "../x"}, {"rooms/bar", "", "."},
		{".", "./rooms/", "rooms"}, {".", "rooms/bar/", "rooms/bar"},
	} {
		repo, err := history.Open(filepath.Join(dir, c.from))
		if err != nil {
			t.Fatal(err)
		}
		if have := repo.Path(c.name); have != c.want {
			t.Errorf("%q from %s is %q, not %q", c.name, c.from, have, c.want)
		}
	}
	t.Setenv("GIT_DIR", ".git") // as a hook has it
	if repo, err := history.Open(filepath.Join(dir, "rooms")); err != nil || repo.Here() != "rooms" {
		t.Errorf("in a hook: %v", err)
	}
	os.Unsetenv("GIT_DIR")
	bare := filepath.Join(t.TempDir(), "bare")
	git("clone", "-q", "--bare", ".", bare)
	if text, err := commit(t, bare, "HEAD").Read("rooms/bar/bar.hcl", 9); err != nil || len(text) > 0 {
		t.Errorf("a bare repository has %q: %v", text, err)
	}
	other := filepath.Join(t.TempDir(), "other")
	git("worktree", "add", "-q", other, "HEAD")
	repo, err := history.Open(filepath.Join(other, "rooms"))
	if err != nil || repo.Here() != "rooms" {
		t.Errorf("a second working tree: %v", err)
	}
}

// TestLinks follows links inside the tree only, and leaves submodules alone.
func TestLinks(t *testing.T) {
	dir, git := repository(t)
	outside := t.TempDir()
	write(t, outside, map[string]string{"secret.hcl": "secret"})
	write(t, dir, map[string]string{"shop/stock.hcl": "stock", "bar/bar.hcl": ""})
	for name, to := range map[string]string{ // in any order
		"bar/stock.hcl": "../shop/stock.hcl", "bar/all": "../shop", "round": "round", "long0": "shop",
		"bar/out.hcl": filepath.Join(outside, "secret.hcl"), "bar/up.hcl": "../../secret.hcl", "bar/gone.hcl": "nowhere.hcl",
	} {
		if err := os.Symlink(to, filepath.Join(dir, name)); err != nil {
			t.Skip(err)
		}
	}
	git("add", ".")
	git("update-index", "--add", "--cacheinfo", "160000,"+strings.Repeat("1", 40)+",sub")
	git("commit", "-qm", "one")
	c := commit(t, dir, "HEAD")
	for _, name := range []string{"bar/stock.hcl", "bar/all/stock.hcl", "long0/stock.hcl"} {
		if text, err := c.Read(name, 100); err != nil || string(text) != "stock" {
			t.Errorf("%s has %q: %v", name, text, err)
		}
	}
	for _, name := range []string{"bar/out.hcl", "bar/up.hcl", "../secret.hcl", "/etc/secret.hcl"} {
		if text, err := c.Read(name, 100); !errors.Is(err, lang.ErrOutside) {
			t.Errorf("%s has %q: %v", name, text, err)
		}
	}
	if _, err := c.Read("bar/gone.hcl", 100); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("a link to nothing: %v", err)
	}
	for _, name := range []string{"round", "round/x", "sub", "sub/bar.hcl"} {
		if text, err := c.Read(name, 100); err == nil {
			t.Errorf("%s has %q", name, text)
		}
	}
}

// TestNothingRuns gives a repository a configuration that would run programs, and a
// tree that no honest git makes.
func TestNothingRuns(t *testing.T) {
	dir, git := repository(t)
	ran := filepath.Join(t.TempDir(), "ran")
	write(t, dir, map[string]string{"bar.hcl": "text", ".gitattributes": "*.hcl filter=evil diff=evil\n"})
	git("add", ".")
	git("commit", "-qm", "one")
	touch := "touch '" + ran + "'; cat"
	for _, name := range []string{"filter.evil.smudge", "filter.evil.clean", "diff.evil.textconv", "core.fsmonitor", "core.pager", "pager.cat-file", "core.sshCommand", "diff.external"} {
		git("config", name, touch)
	}
	if text, err := commit(t, dir, "HEAD").Read("bar.hcl", 100); err != nil || string(text) != "text" {
		t.Errorf("the file has %q: %v", text, err)
	}
	if _, err := os.Stat(ran); err == nil {
		t.Error("a program of the configuration was run")
	}
	// The control: git itself runs them.
	if git("cat-file", "--filters", "HEAD:bar.hcl"); !exists(ran) {
		t.Error("the configuration would run nothing")
	}

	blob := git("rev-parse", "HEAD:bar.hcl")
	cmd := exec.Command("git", "mktree")
	cmd.Dir, cmd.Stdin = dir, strings.NewReader("100644 blob "+blob+"\tevil.hcl\n")
	inner, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	cmd = exec.Command("git", "mktree")
	cmd.Dir, cmd.Stdin = dir, strings.NewReader("040000 tree "+strings.TrimSpace(string(inner))+"\t..\n")
	outer, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	hostile := git("commit-tree", "-m", "hostile", strings.TrimSpace(string(outer)))
	if text, err := commit(t, dir, hostile).Read("../evil.hcl", 100); !errors.Is(err, lang.ErrOutside) {
		t.Errorf("a name that leads out has %q: %v", text, err)
	}
}

func exists(path string) bool {
	_, err := os.Stat(path)
	return err == nil
}

// TestNothingIsFetched reads in a clone that lacks its files.
func TestNothingIsFetched(t *testing.T) {
	dir, git := repository(t)
	write(t, dir, map[string]string{"bar.hcl": "text"})
	git("add", ".")
	git("commit", "-qm", "one")
	git("config", "uploadpack.allowFilter", "true")
	clone := filepath.Join(t.TempDir(), "clone")
	git("clone", "-q", "--no-checkout", "--filter=blob:none", "file://"+filepath.ToSlash(dir), clone)
	if text, err := commit(t, clone, "HEAD").Read("bar.hcl", 100); err == nil {
		t.Errorf("a file that is not there has %q", text)
	}
}

// TestTreeWithoutEnd reads a commit of nine small objects that lists a thousand million
// files.
func TestTreeWithoutEnd(t *testing.T) {
	dir, git := repository(t)
	write(t, dir, map[string]string{"bar.hcl": ""})
	line := "100644 blob " + git("hash-object", "-w", "bar.hcl")
	for range 9 {
		var entries string
		for i := range 10 {
			entries += fmt.Sprintf("%s\t%d.hcl\n", line, i)
		}
		cmd := exec.Command("git", "mktree")
		cmd.Dir, cmd.Stdin = dir, strings.NewReader(entries)
		tree, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		line = "040000 tree " + strings.TrimSpace(string(tree))
	}
	rev := git("commit-tree", "-m", "endless", strings.TrimPrefix(line, "040000 tree "))
	repo, err := history.Open(dir)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := repo.Commit(rev); err == nil || !strings.Contains(err.Error(), "too many") {
		t.Errorf("the files are listed: %v", err)
	}
}

// TestMistrust demands that what git says of ownership comes through.
func TestMistrust(t *testing.T) {
	dir, _ := repository(t)
	t.Setenv("GIT_TEST_ASSUME_DIFFERENT_OWNER", "1")
	_, err := history.Open(dir)
	if err == nil {
		t.Skip("this git does not look at who owns a repository")
	}
	if !strings.Contains(err.Error(), "dubious ownership") || !strings.Contains(err.Error(), "safe.directory") {
		t.Errorf("git's own words are lost: %v", err)
	}
}

func TestSplit(t *testing.T) {
	for name, want := range map[string][2]string{
		"HEAD:a/b": {"HEAD", "a/b"}, "HEAD:": {"HEAD", ""}, "v1:a:b": {"v1", "a:b"}, ":a": {"", "a"},
		"HEAD@{10:30}:a": {"HEAD@{10:30}", "a"}, "HEAD^{/fix: x}:a": {"HEAD^{/fix: x}", "a"}, "}:a": {"}", "a"}, `C:\x`: {"C", `\x`},
	} {
		if rev, path, ok := history.Split(name); !ok || rev != want[0] || path != want[1] {
			t.Errorf("%q is %q and %q", name, rev, path)
		}
	}
	for _, name := range []string{"HEAD", "HEAD@{10:30}", "", "{:"} {
		if _, _, ok := history.Split(name); ok {
			t.Errorf("%q has a path", name)
		}
	}
}
