package folder

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

const childVariable = "BARWRIGHT_FOLDER_CHILD"

// TestMain lets the test binary stand in for a program that builds again and
// again until it is killed.
func TestMain(m *testing.M) {
	dir := os.Getenv(childVariable)
	if dir == "" {
		os.Exit(m.Run())
	}
	for g := range 5000 { // not for ever, should the test itself be killed
		if err := Replace(context.Background(), dir, generation(g)); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

// generation returns files that all carry the number g; odd and even ones have
// other names.
func generation(g int) []File {
	text := strings.Repeat(fmt.Sprintf("generation %d\n", g), 2000)
	var files []File
	for i := range 12 {
		files = append(files, File{fmt.Sprintf("%d/f%d-%d", i%3, g%2, i), func(w io.Writer) error {
			for part := range strings.SplitSeq(text, "9") {
				if _, err := io.WriteString(w, part); err != nil {
					return err
				}
			}
			return nil
		}})
	}
	return files
}

// wholeGeneration wants a folder to hold the files of one generation, all of
// them and nothing else.
func wholeGeneration(t *testing.T, out string) {
	t.Helper()
	_, kept, err := personal(out)
	if err != nil || len(kept) > 0 {
		t.Fatalf("the folder is not as its manifest says: %v, %v", kept, err)
	}
	got := read(t, out)
	var first string
	files := 0
	for name, text := range got {
		if strings.HasSuffix(name, "/") || name == manifestName {
			continue
		}
		if files++; first == "" {
			first = text
		}
		if text != first || text == "" {
			t.Fatalf("%s is of another generation", name)
		}
	}
	if files != 12 {
		t.Fatalf("%d files: %v", files, got)
	}
}

// Killed at 30 moments, a run leaves the old or the new folder, whole; the
// next run leaves nothing else beside it.
func TestKilledAtAnyMoment(t *testing.T) {
	probe := t.TempDir()
	a, b := filepath.Join(probe, "a"), filepath.Join(probe, "b")
	write(t, filepath.Join(a, "x"), "")
	write(t, filepath.Join(b, "y"), "")
	if err := exchange(a, b); errors.Is(err, errors.ErrUnsupported) {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("this file system cannot exchange two names in one step")
		}
		t.Skip("OUTSIDE CHECK SKIPPED: this file system cannot exchange two names in one step")
	}
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	if err := Replace(t.Context(), out, generation(0)); err != nil {
		t.Fatal(err)
	}
	moments := rand.New(rand.NewSource(1))
	littered := 0
	for range 30 {
		child := exec.Command(os.Args[0])
		child.Env = append(os.Environ(), childVariable+"="+out)
		child.Stderr = os.Stderr
		if err := child.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(5_000+moments.Intn(60_000)) * time.Microsecond)
		child.Process.Kill()
		if err := child.Wait(); err == nil || child.ProcessState.Exited() {
			t.Fatalf("the child was not killed: %v", err)
		}
		wholeGeneration(t, out)
		if entries, _ := os.ReadDir(parent); len(entries) > 1 {
			littered++
		}
	}
	if littered == 0 {
		t.Error("no kill fell into a run: this test proves nothing")
	}
	t.Logf("%d of 30 kills left a staging folder", littered)
	if err := Replace(t.Context(), out, generation(7)); err != nil {
		t.Fatal(err)
	}
	wholeGeneration(t, out)
	for name := range read(t, parent) {
		if !strings.HasPrefix(name, "out/") {
			t.Errorf("litter: %s", name)
		}
	}
}

func TestLeftovers(t *testing.T) {
	ours := tree{"marker": markerText, "new/": "", "new/half": "x", "manifest.json": "{"}
	manifestOf := func(content tree) string {
		dir := filepath.Join(t.TempDir(), "x")
		replace(t, dir, content)
		return read(t, dir)[manifestName]
	}
	whole := manifestOf(tree{"x": "old"})
	cases := map[string]struct {
		left    tree
		cleared bool
	}{
		"of a run stopped while writing":      {ours, true},
		"of a run stopped at once":            {tree{}, true},
		"of a run stopped in its marker":      {tree{"marker": "Staging"}, true},
		"of a run stopped while removing":     {tree{"marker": markerText, "new/": "", "new/x": "old", "new/manifest.json": whole}, true},
		"with another marker":                 {tree{"marker": "mine", "new/": ""}, false},
		"without a marker":                    {ours.without("marker"), false},
		"with something more":                 {tree{"marker": markerText, "notes.txt": "mine"}, false},
		"with what a person made, swapped in": {tree{"marker": markerText, "new/": "", "new/x": "old", "new/mine": "", "new/manifest.json": whole}, false},
		"with what a person edited":           {tree{"marker": markerText, "new/": "", "new/x": "mine", "new/manifest.json": whole}, false},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			root := filepath.Join(parent, ".out.barwright-123")
			os.Mkdir(root, 0o777)
			for file, text := range c.left {
				if strings.HasSuffix(file, "/") {
					os.MkdirAll(filepath.Join(root, file), 0o777)
					continue
				}
				write(t, filepath.Join(root, file), text)
			}
			before := read(t, root)
			replace(t, filepath.Join(parent, "out"), tree{"x": "1"})
			if _, err := os.Stat(root); c.cleared != errors.Is(err, os.ErrNotExist) {
				t.Fatalf("cleared: %v, want %v", err != nil, c.cleared)
			}
			if !c.cleared {
				if diff := cmp.Diff(before, read(t, root)); diff != "" {
					t.Error(diff)
				}
			}
		})
	}
}

// Without an exchange in one step a run can stop when the old folder is moved
// aside and the new one not yet in its place.
func TestAFolderMovedAsideIsPutBack(t *testing.T) {
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	root := filepath.Join(parent, ".out.barwright-123")
	replace(t, out, tree{"x": "old"})
	write(t, filepath.Join(out, "mine"), "mine")
	write(t, filepath.Join(root, "marker"), markerText)
	if err := os.Rename(out, filepath.Join(root, "old")); err != nil {
		t.Fatal(err)
	}
	err := Replace(t.Context(), out, texts(tree{"x": "new"}))
	if refused := new(Refused); !errors.As(err, &refused) {
		t.Errorf("%v: want a refusal, for the folder that was put back", err)
	}
	got := read(t, parent).without("out/manifest.json")
	if diff := cmp.Diff(tree{"out/": "", "out/x": "old", "out/mine": "mine"}, got); diff != "" {
		t.Error(diff)
	}
}

// The way of systems without an exchange, step by step.
func TestSwapByWayOfASpare(t *testing.T) {
	parent := t.TempDir()
	a, b, spare := filepath.Join(parent, "a"), filepath.Join(parent, "b"), filepath.Join(parent, "spare")
	write(t, filepath.Join(a, "x"), "a")
	write(t, filepath.Join(b, "x"), "b")
	if err := swapBySpare(a, b, spare); err != nil {
		t.Fatal(err)
	}
	want := tree{"a/": "", "a/x": "b", "b/": "", "b/x": "a"}
	if diff := cmp.Diff(want, read(t, parent)); diff != "" {
		t.Error(diff)
	}
	if err := swapBySpare(filepath.Join(parent, "missing"), b, spare); err == nil {
		t.Error("swapped with nothing")
	}
	if diff := cmp.Diff(want, read(t, parent)); diff != "" {
		t.Errorf("not put back: %s", diff)
	}
}
