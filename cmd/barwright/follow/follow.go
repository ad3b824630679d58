// Package follow follows files that somebody edits: it reads and builds them anew when
// they change, and shows what came of it once they stay as they are. It takes what to read
// and how to build; which files there are, each reading says. Files are looked at again and
// again, for no file system tells of every change, and their text counts: one that is
// written anew as it was is no change.
//
// Editors write a file in several steps, or another in its place. A build begins with the
// first sight of a change, so that no time is lost, but is shown only when the files have
// been quiet for as many looks as it asks for; what is read or built meanwhile and is not
// the newest is dropped.
package follow

import (
	"context"
	"io/fs"
	"os"
	"slices"
	"time"
)

// Files are files that are read as R and built as B.
type Files[R, B any] struct {
	// Read reads all files. Places are the files and folders that it looked for, whether
	// they are there or not.
	Read func() (text R, places []string)
	// Same reports whether two readings are of one text.
	Same func(a, b R) bool
	// Build may run at the same time as Read, Same, and another Build.
	Build func(R) B
	// Quiet is for how many looks the files must have stayed as they are before what was
	// built of now is shown instead of what was built of shown.
	Quiet func(shown, now R, built B) int
	// Show shows the newest build.
	Show func(R, B)
}

// mostBuilds is how many builds run at once: one that is not wanted any more, and the newest.
const mostBuilds = 2

// Follow follows the files from a first reading, of which the build is shown, until the
// context ends. It looks at each tick, which come some hundredths of a second apart.
func (f Files[R, B]) Follow(ctx context.Context, first R, places []string, ticks <-chan time.Time) {
	s := state[R, B]{Files: f, shown: first, newest: first, places: places, seen: look(places), built: make(chan made[B], mostBuilds)}
	for {
		select {
		case <-ctx.Done():
			return
		case <-ticks:
			s.look()
		case m := <-s.built:
			s.running--
			if m.of == s.number {
				s.ready = &m.build
			}
		}
		s.start()
		s.show()
	}
}

// made is a build of the reading of a number.
type made[B any] struct {
	of    int
	build B
}

// state is how far the following has come.
type state[R, B any] struct {
	Files[R, B]
	shown, newest R
	number        int // of the newest reading
	places        []string
	seen          []sight // of the places, at the last look
	quiet         int     // looks since the last change
	wanted        bool    // the newest reading is yet to be built
	running       int     // builds
	built         chan made[B]
	ready         *B // the build of the newest reading, not shown yet
}

// look looks at the files. Those that are as they were are read once more after 1, 2, 4, 8
// and so on looks: a change within one step of the file system's clock, of as many bytes,
// shows in nothing but the text.
func (s *state[R, B]) look() {
	s.quiet++
	if now := look(s.places); !slices.EqualFunc(now, s.seen, sight.same) {
		s.seen, s.quiet = now, 0
	}
	if s.quiet&(s.quiet-1) != 0 {
		return
	}
	text, places := s.Read()
	if !slices.Equal(places, s.places) {
		s.places, s.seen = places, look(places)
	}
	if s.Same(text, s.newest) {
		return
	}
	s.newest, s.quiet, s.ready, s.wanted = text, 0, nil, true
	s.number++
}

// start begins with the newest build.
func (s *state[R, B]) start() {
	if !s.wanted || s.running == mostBuilds {
		return
	}
	s.wanted = false
	s.running++
	go func(number int, text R) { s.built <- made[B]{number, s.Build(text)} }(s.number, s.newest)
}

// show shows what is built, where it has been quiet for long enough. Text that has come
// back to what is shown needs no showing.
func (s *state[R, B]) show() {
	if s.ready == nil || s.quiet < s.Quiet(s.shown, s.newest, *s.ready) || !slices.EqualFunc(look(s.places), s.seen, sight.same) {
		return
	}
	if !s.Same(s.newest, s.shown) {
		s.Show(s.newest, *s.ready)
	}
	s.shown, s.ready = s.newest, nil
}

// sight is what a look tells of a file or a folder; nil where there is none.
type sight struct{ info fs.FileInfo }

func look(places []string) []sight {
	out := make([]sight, len(places))
	for i, place := range places {
		if info, err := os.Stat(place); err == nil {
			out[i].info = info
		}
	}
	return out
}

func (a sight) same(b sight) bool {
	if a.info == nil || b.info == nil {
		return a.info == nil && b.info == nil
	}
	return os.SameFile(a.info, b.info) && a.info.Size() == b.info.Size() && a.info.ModTime().Equal(b.info.ModTime()) && a.info.Mode() == b.info.Mode()
}
