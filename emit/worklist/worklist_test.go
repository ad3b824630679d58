package worklist

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

var update = flag.Bool("update", false, "rewrite the golden file")

// few is a list with a step or two of each sort.
func few() *model.Model {
	const wired = "Switch off, lock and test."
	return &model.Model{
		Build: model.Build{Name: "boat shed & bar", Unit: length.Inches, Marks: length.Inch / 32, Revision: "B"},
		Work: []model.Task{
			{Key: "site.walls", Phase: "on site", Title: "Measure the walls again", People: 1, Tools: []string{"tape", "level"},
				Checks: []model.Check{{What: "wall north, length", Figure: "136 1/8 in"}, {What: "a wall whose name is as long as names may be, and longer than a line", Figure: "12 in"}}},
			{Key: "fix.anchor.end", Phase: "on site", Title: "Stick the block down", People: 1, Cure: 24, Parts: []string{"END-A"},
				After: []model.Before{{Key: "site.walls", Why: "it stands on the lines"}}},
			{Key: "wire.seen", Phase: "on site", Title: "Wait until it has been looked at", People: 1, Hold: "a licensed electrician", Cautions: []string{wired}},
			{Key: "skin", Phase: "on site", Title: "Put on the skin", People: 2, WeightKg: 0.9, Lifted: "ROOM-1, long", Cautions: []string{wired, "Find cables."},
				After: []model.Before{{Key: "wire.seen", Why: "it hides the wiring"}, {Key: "site.walls", Why: "it must be there"}, {Key: "fix.anchor.end", Why: "it must be there"}}},
			{Key: "set", Phase: "boxes", Title: "Set cabinet urn", Way: "in from the front, then 2 in to the left", Tools: []string{"level", "shims"}, People: 2, WeightKg: 45.359237, Lifted: "cabinet urn", Cautions: []string{wired},
				After:  []model.Before{{Key: "skin", Why: "it hides it"}, {Key: "site.walls", Why: "it hides it"}, {Key: "wire.seen", Why: "it hides it"}, {Key: "fix.anchor.end", Why: "it hides it"}},
				Screws: []model.Driven{{Screw: "screw.wall", Text: "#8 x 2 1/2 in", Count: 4, Use: "to hold cabinet urn to the wall"}, {Screw: "screw.odd", Count: 1, Use: "to join"}}},
			{Key: "light", Phase: "boxes", Title: "Carry a feather\x1b[31m", Tools: []string{"level", "shims"}, People: 1, WeightKg: 9.9, Lifted: "FEATHER"},
			{Key: "unknown", Phase: "boxes", Title: "Slide in what nobody weighed", People: 2, Parts: strings.Split(strings.Repeat("P ", fewLabels+1), " ")[:fewLabels+1]},
		},
	}
}

func text(t *testing.T, m *model.Model) string {
	t.Helper()
	var b bytes.Buffer
	if err := Text(&b, m); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGolden(t *testing.T) {
	got := text(t, few())
	path := filepath.Join("testdata", "work.txt")
	if *update {
		if err := os.WriteFile(path, []byte(got), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	for line := range strings.Lines(got) {
		if line = strings.TrimSuffix(line, "\n"); finding.Columns(line) > columns || strings.TrimRight(line, " ") != line {
			t.Errorf("%q does not print in %d columns", line, columns)
		}
	}
}

func TestSpans(t *testing.T) {
	for _, c := range []struct {
		n    []int
		want string
	}{
		{[]int{3}, "3"}, {[]int{4, 3}, "3, 4"}, {[]int{3, 4, 5}, "3 to 5"}, {[]int{9, 1, 2, 3, 3, 7, 8}, "1 to 3, 7 to 9"}, {[]int{1, 3}, "1, 3"},
	} {
		if got := spans(c.n); got != c.want {
			t.Errorf("%v is %q, not %q", c.n, got, c.want)
		}
	}
}

// full takes some bytes and then no more.
type full struct{ room int }

func (w *full) Write(b []byte) (int, error) {
	if w.room -= len(b); w.room < 0 {
		return 0, errors.New("full")
	}
	return len(b), nil
}

func TestWriteErrors(t *testing.T) {
	if Text(&full{100}, few()) == nil {
		t.Error("a full disk is not told")
	}
}
