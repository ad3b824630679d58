// Package progress keeps one line of a terminal that says what a program is doing. The
// line is written over in place, with no control code but the carriage return, and is gone
// before anything else is printed and at the end.
package progress

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"

	"barwright/lang/finding"
)

const (
	// Every is how often a line is drawn anew.
	Every = 100 * time.Millisecond

	patience = 5  // ticks before the line is first seen
	widest   = 72 // columns that a line takes, so that most terminals do not break it
)

// Line is such a line. Nil is one that nobody sees: it takes all and prints nothing. Its
// methods may be called at the same time.
type Line struct {
	mu          sync.Mutex
	to          io.Writer
	total, done int
	now         []task // in the order of their beginning
	shown       string // on the terminal
	seen        int    // ticks
	ended       bool
}

// task is one of the things that are being done.
type task struct{ name, stage string }

// New is a line on a terminal.
func New(to io.Writer) *Line { return &Line{to: to} }

// Expect says how many things are to be done; the line counts them where there are several.
func (l *Line) Expect(total int) {
	l.change(func() { l.total = total })
}

// Say says what is being done to a thing of a name, which may be empty.
func (l *Line) Say(name, stage string) {
	l.change(func() {
		for i := range l.now {
			if l.now[i].name == name {
				l.now[i].stage = stage
				return
			}
		}
		l.now = append(l.now, task{name, stage})
	})
}

// Done says that a thing is done.
func (l *Line) Done(name string) {
	l.change(func() {
		l.done++
		for i := range l.now {
			if l.now[i].name == name {
				l.now = append(l.now[:i], l.now[i+1:]...)
				return
			}
		}
	})
}

func (l *Line) change(how func()) {
	if l == nil {
		return
	}
	l.mu.Lock()
	defer l.mu.Unlock()
	how()
}

// Follow draws the line at each tick, from the fifth on, until there are none.
func (l *Line) Follow(ticks <-chan time.Time) {
	for range ticks {
		l.change(func() {
			if l.seen++; l.seen >= patience && !l.ended {
				l.draw(l.text())
			}
		})
	}
}

// End takes the line away for good.
func (l *Line) End() {
	l.change(func() {
		l.draw("")
		l.ended = true
	})
}

// Before returns a writer that takes the line away before it writes to w.
func (l *Line) Before(w io.Writer) io.Writer {
	if l == nil {
		return w
	}
	return before{l, w}
}

type before struct {
	line *Line
	to   io.Writer
}

func (b before) Write(p []byte) (n int, err error) {
	b.line.change(func() {
		b.line.draw("")
		n, err = b.to.Write(p)
	})
	return n, err
}

// text is what the line says now.
func (l *Line) text() string {
	if len(l.now) == 0 {
		return ""
	}
	var words []string
	for _, t := range l.now {
		if t.name != "" {
			t.stage = t.name + ": " + t.stage
		}
		words = append(words, t.stage)
	}
	text := strings.Join(words, ", ")
	if l.total > 1 {
		text = fmt.Sprintf("%d of %d done; %s", l.done, l.total, text)
	}
	return cut(strings.ReplaceAll(finding.Clean(text), "\n", " "))
}

// cut shortens a text to the widest line.
func cut(text string) string {
	if finding.Columns(text) <= widest {
		return text
	}
	runes := []rune(text)
	for finding.Columns(string(runes)) >= widest {
		runes = runes[:len(runes)-1]
	}
	return string(runes) + "…"
}

// draw writes a text over the one that is shown; an empty one leaves the cursor where the
// line began.
func (l *Line) draw(text string) {
	if text == l.shown {
		return
	}
	over := "\r" + text + strings.Repeat(" ", max(finding.Columns(l.shown)-finding.Columns(text), 0))
	if text == "" {
		over += "\r"
	}
	io.WriteString(l.to, over)
	l.shown = text
}
