package progress

import (
	"bytes"
	"io"
	"strings"
	"testing"
	"time"

	"barwright/lang/finding"
)

// screen is what a terminal shows of what was written: its lines, each as it was left.
func screen(written string) []string {
	var lines []string
	for line := range strings.SplitSeq(written, "\n") {
		var cells []rune
		for i, part := range strings.Split(line, "\r") {
			if i == 0 {
				cells = []rune(part)
				continue
			}
			over := []rune(part)
			cells = append(over, cells[min(len(over), len(cells)):]...)
		}
		lines = append(lines, strings.TrimRight(string(cells), " "))
	}
	return lines
}

// ticked draws a line as if so many ticks had passed.
func ticked(l *Line, n int) {
	ticks := make(chan time.Time, n)
	for range n {
		ticks <- time.Time{}
	}
	close(ticks)
	l.Follow(ticks)
}

func TestLine(t *testing.T) {
	var out bytes.Buffer
	l := New(&out)
	shows := func(want string) {
		t.Helper()
		if got := strings.Join(screen(out.String()), "|"); got != want {
			t.Errorf("the terminal shows %q, not %q", got, want)
		}
	}
	l.Say("shed", "solving")
	ticked(l, patience-1)
	if out.Len() > 0 {
		t.Errorf("%q is written too early", out.String())
	}
	ticked(l, 1)
	shows("shed: solving")
	l.Say("shed", "cut")
	shows("shed: solving")
	ticked(l, 1)
	shows("shed: cut")

	results := l.Before(&out)
	io.WriteString(results, "a finding\n")
	shows("a finding|")
	ticked(l, 1)
	shows("a finding|shed: cut")
	l.Expect(3)
	l.Say("lane", "reading")
	l.Done("shed")
	ticked(l, 1)
	shows("a finding|1 of 3 done; lane: reading")
	l.Done("lane")
	ticked(l, 1)
	shows("a finding|")
	l.Say("", "drawing")
	ticked(l, 1)
	shows("a finding|2 of 3 done; drawing")
	l.End()
	shows("a finding|")
	ticked(l, 3)
	shows("a finding|")
	if strings.ContainsRune(out.String(), '\x1b') {
		t.Error("there is a control code that not every terminal knows")
	}
}

// Nothing is written twice, so that a terminal that is slow is not kept busy.
func TestQuiet(t *testing.T) {
	var out bytes.Buffer
	l := New(&out)
	l.Say("shed", "solving")
	ticked(l, 50)
	if n := strings.Count(out.String(), "solving"); n != 1 {
		t.Errorf("one state is written %d times", n)
	}
}

func TestOddNames(t *testing.T) {
	for _, name := range []string{"a\nb", "\x1b[2J", "\xff\xfe", strings.Repeat("日本", 60), strings.Repeat("x", 500)} {
		var out bytes.Buffer
		l := New(&out)
		l.Say(name, "solving")
		ticked(l, patience)
		text := strings.TrimPrefix(out.String(), "\r")
		if strings.ContainsAny(text, "\n\r\x1b") || finding.Columns(text) > widest || text == "" {
			t.Errorf("%q is shown as %q", name, text)
		}
		l.End()
		if got := out.String(); !strings.HasSuffix(got, "\r"+strings.Repeat(" ", finding.Columns(text))+"\r") {
			t.Errorf("%q leaves %q", name, got)
		}
	}
}

// A line that nobody sees takes everything.
func TestNobodySees(t *testing.T) {
	var l *Line
	l.Expect(2)
	l.Say("shed", "solving")
	l.Done("shed")
	l.End()
	var out bytes.Buffer
	if io.WriteString(l.Before(&out), "text"); out.String() != "text" {
		t.Errorf("%q", out.String())
	}
}
