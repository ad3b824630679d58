package follow

import (
	"context"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"
)

// bench is one file that is followed, looked at when a test says so. It is built as what
// it says; a text that begins with "half" must be quiet for five looks, others for two.
type bench struct {
	t     *testing.T
	file  string
	ticks chan time.Time
	hold  map[string]chan struct{} // builds that wait, by text; set before they are

	mu    sync.Mutex
	shown []string
	built []string
}

func follow(t *testing.T, first string) *bench {
	b := &bench{t: t, file: filepath.Join(t.TempDir(), "bar"), ticks: make(chan time.Time), hold: map[string]chan struct{}{}}
	b.write(first)
	ctx, end := context.WithCancel(t.Context())
	var followed sync.WaitGroup
	text, places := b.read()
	followed.Go(func() {
		Files[string, string]{
			Read: b.read,
			Same: func(a, b string) bool { return a == b },
			Build: func(text string) string {
				b.mu.Lock()
				b.built = append(b.built, text)
				hold := b.hold[text]
				b.mu.Unlock()
				if hold != nil {
					<-hold
				}
				return text
			},
			Quiet: func(_, now, _ string) int {
				if len(now) >= 4 && now[:4] == "half" {
					return 5
				}
				return 2
			},
			Show: func(_, built string) {
				b.mu.Lock()
				defer b.mu.Unlock()
				b.shown = append(b.shown, built)
			},
		}.Follow(ctx, text, places, b.ticks)
	})
	t.Cleanup(func() { end(); followed.Wait() })
	return b
}

func (b *bench) read() (string, []string) {
	text, err := os.ReadFile(b.file)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		b.t.Error(err)
	}
	if err != nil {
		text = []byte("half: gone")
	}
	return string(text), []string{b.file}
}

func (b *bench) write(text string) {
	if err := os.WriteFile(b.file, []byte(text), 0o666); err != nil {
		b.t.Fatal(err)
	}
}

// look looks so many times; a build that has nothing to wait for is done by the next.
func (b *bench) look(times int) {
	for range times {
		b.ticks <- time.Time{}
		time.Sleep(2 * time.Millisecond)
	}
}

// shows demands what was shown up to now, looking on for a while for what is to come.
func (b *bench) shows(want ...string) {
	b.t.Helper()
	var got []string
	for range 100 {
		b.mu.Lock()
		got = slices.Clone(b.shown)
		b.mu.Unlock()
		if slices.Equal(got, want) {
			return
		}
		b.look(1)
	}
	b.t.Errorf("shown was %q, not %q", got, want)
}

func TestShowsChanges(t *testing.T) {
	b := follow(t, "one")
	b.look(3)
	b.write("two")
	b.shows("two")
	b.write("half")
	b.shows("two", "half")
	b.write("three")
	b.shows("two", "half", "three")
}

// What changes again before it has been quiet is never shown.
func TestNeverHalf(t *testing.T) {
	b := follow(t, "one")
	for range 20 {
		b.write("half of two")
		b.look(4)
		b.write("")
		b.look(1)
		b.write("one and two")
		b.look(1)
	}
	b.shows("one and two")
}

// A file that is renamed away and replaced is never seen to be gone.
func TestReplaced(t *testing.T) {
	b := follow(t, "one")
	for _, text := range []string{"two", "three"} {
		if err := os.Rename(b.file, b.file+"~"); err != nil {
			t.Fatal(err)
		}
		b.look(3)
		if err := os.WriteFile(b.file+".new", []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		b.look(1)
		if err := os.Rename(b.file+".new", b.file); err != nil {
			t.Fatal(err)
		}
		b.look(8)
	}
	b.shows("two", "three")
	if err := os.Remove(b.file); err != nil {
		t.Fatal(err)
	}
	b.shows("two", "three", "half: gone")
}

// Of as many bytes, with its old date: only the text tells.
func TestNothingButTheText(t *testing.T) {
	b := follow(t, "one")
	b.look(1)
	info, err := os.Stat(b.file)
	if err != nil {
		t.Fatal(err)
	}
	b.write("two")
	if err := os.Chtimes(b.file, info.ModTime(), info.ModTime()); err != nil {
		t.Fatal(err)
	}
	b.shows("two")
}

// A new date on an old text, and a change that is taken back, show nothing.
func TestNoChange(t *testing.T) {
	b := follow(t, "one")
	b.look(2)
	b.write("one")
	b.look(10)
	b.write("two")
	b.look(1)
	b.write("one")
	b.look(10)
	b.shows()
	b.write("three")
	b.shows("three")
}

// A build that takes long is dropped when the text changes, and does not hold up the next.
func TestNewestWins(t *testing.T) {
	b := follow(t, "one")
	b.mu.Lock()
	b.hold["slow"] = make(chan struct{})
	b.mu.Unlock()
	b.write("slow")
	b.look(4)
	b.write("quick")
	b.shows("quick")
	close(b.hold["slow"])
	b.look(10)
	b.shows("quick")
}

// Builds do not pile up.
func TestTwoAtOnce(t *testing.T) {
	b := follow(t, "one")
	wait := make(chan struct{})
	b.mu.Lock()
	for _, text := range []string{"a", "b", "c", "d"} {
		b.hold[text] = wait
	}
	b.mu.Unlock()
	for _, text := range []string{"a", "b", "c", "d"} {
		b.write(text)
		b.look(3)
	}
	b.mu.Lock()
	if !slices.Equal(b.built, []string{"a", "b"}) {
		t.Errorf("built at once: %q", b.built)
	}
	b.mu.Unlock()
	close(wait)
	b.shows("d")
	if slices.Contains(b.built, "c") {
		t.Error("c was built when d was there already")
	}
}
