package folder

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// locks skips the test where the system has no file locks.
func locks(t *testing.T) {
	t.Helper()
	f, err := os.Open(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := lock(f); errors.Is(err, errors.ErrUnsupported) {
		t.Skip("OUTSIDE CHECK SKIPPED: there are no file locks here")
	}
}

// A run that finds another at its folder is refused in the end, and touches nothing of it.
func TestTwoRunsAtOneFolder(t *testing.T) {
	locks(t)
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	err := Replace(t.Context(), out, []File{{"x", func(w io.Writer) error {
		before := read(t, parent)
		_, err := claim(t.Context(), "here", out, 3)
		if want := "output folder here is refused: another build is writing it"; err == nil || err.Error() != want {
			t.Errorf("%v: want %q", err, want)
		}
		if refused := new(Refused); !errors.As(err, &refused) {
			t.Errorf("%v: want a refusal", err)
		}
		if diff := cmp.Diff(before, read(t, parent)); diff != "" {
			t.Errorf("touched: %s", diff)
		}
		replace(t, filepath.Join(parent, "out2"), tree{"beside": ""}) // what stands beside is free
		_, err = io.WriteString(w, "outer")
		return err
	}}})
	if err != nil {
		t.Fatal(err)
	}
	want := tree{"out/": "", "out/x": "outer", "out2/": "", "out2/beside": ""}
	if diff := cmp.Diff(want, read(t, parent).without("out/manifest.json", "out2/manifest.json")); diff != "" {
		t.Error(diff)
	}
}

// A run that finds another at its folder waits, and writes when that has ended.
func TestTheSecondRunWaits(t *testing.T) {
	locks(t)
	parent := t.TempDir()
	out := filepath.Join(parent, "out")
	first, err := claim(t.Context(), out, out, 1)
	if err != nil {
		t.Fatal(err)
	}
	if err := first.fill(t.Context(), texts(tree{"x": "first"}), inFolder{}); err != nil {
		t.Fatal(err)
	}
	second := make(chan error)
	go func() { second <- Replace(t.Context(), out, texts(tree{"x": "second"})) }()
	if err := first.place(out, out); err != nil {
		t.Error(err)
	}
	if got := read(t, out)["x"]; got != "first" {
		t.Errorf("x holds %q while the first run has the folder", got)
	}
	if err := first.remove(); err != nil {
		t.Error(err)
	}
	if err := <-second; err != nil {
		t.Error(err)
	}
	if diff := cmp.Diff(tree{"out/": "", "out/x": "second"}, read(t, parent).without("out/manifest.json")); diff != "" {
		t.Error(diff)
	}
}

// Of many runs that begin at once each writes the folder whole, and none fails.
func TestManyRunsAtOneFolder(t *testing.T) {
	locks(t)
	parent := t.TempDir()
	var all sync.WaitGroup
	for i := range 12 {
		all.Go(func() {
			text := fmt.Sprint(i)
			if err := Replace(t.Context(), filepath.Join(parent, "out"), texts(tree{"x": text, text + "/y": text})); err != nil {
				t.Error(err)
			}
		})
	}
	all.Wait()
	text := read(t, parent)["out/x"]
	want := tree{"out/": "", "out/x": text, "out/" + text + "/": "", "out/" + text + "/y": text}
	if diff := cmp.Diff(want, read(t, parent).without("out/manifest.json")); diff != "" {
		t.Error(diff)
	}
}

// Who waits can be interrupted.
func TestWaitingIsInterrupted(t *testing.T) {
	locks(t)
	out := filepath.Join(t.TempDir(), "out")
	first, err := claim(t.Context(), out, out, 1)
	if err != nil {
		t.Fatal(err)
	}
	defer first.remove()
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if _, err := claim(ctx, out, out, 1_000_000); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}

// Interrupted at any write, a run leaves the old folder and nothing else.
func TestInterruptedAtAnyWrite(t *testing.T) {
	for _, old := range []tree{nil, {"x": "old", "deep/y": "old"}} {
		var writes atomic.Int64 // files are written at once
		for stop := int64(1); ; stop++ {
			parent := t.TempDir()
			out := filepath.Join(parent, "new", "out")
			if old != nil {
				replace(t, out, old)
			}
			before := read(t, parent)
			ctx, cancel := context.WithCancel(t.Context())
			writes.Store(0)
			writer := func(w io.Writer) error {
				for range 3 {
					if writes.Add(1) == stop {
						cancel()
					}
					if _, err := w.Write(make([]byte, 5000)); err != nil {
						return err
					}
				}
				return nil
			}
			err := Replace(ctx, out, []File{{"a", writer}, {"b/c", writer}, {"b/d", writer}})
			cancel()
			if stop > writes.Load() {
				if err != nil {
					t.Error(err)
				}
				break
			}
			if !errors.Is(err, context.Canceled) {
				t.Errorf("interrupted at write %d: %v", stop, err)
			}
			if diff := cmp.Diff(before, read(t, parent)); diff != "" {
				t.Errorf("interrupted at write %d: %s", stop, diff)
			}
		}
		if n := writes.Load(); n != 9 {
			t.Errorf("%d writes: the test proves less than it says", n)
		}
	}
}
