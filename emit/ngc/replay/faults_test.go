package replay_test

import (
	"fmt"
	"math"
	"math/rand"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc/replay"
	"barwright/lang/length"
)

// sample is a good program, as lines, in which a fault is planted.
type sample struct {
	lines []string
	p     model.Program // a copy, with Tool and Travel as the fault wants them
	unit  float64       // mm
	rand  *rand.Rand    // the same at every run
}

// faults are what must be caught, and as what. Each plants one, and reports whether
// the program has a place for it.
var faults = [...]struct {
	name, want string
	plant      func(s *sample) bool
}{
	{"offset by 0.02 mm", "into wood that must stay", offset},
	{"a level 0.02 mm too deep", "below the floor|none of the levels|comes down", deeper},
	{"no finishing pass", "wood is left|must stay|misses its circle|instead of", unfinished},
	{"no last level", "wood is left|none of the levels|comes down|without a feed|misses its circle", unlevelled},
	{"a pass moved by 0.1 mm", "wood is left|must stay|misses its circle", moved},
	{"a bit 0.1 mm wider", "must stay", func(s *sample) bool { s.p.Tool.Diameter += mm / 10; return true }},
	{"a bit 0.12 mm narrower", "wood is left|at once", func(s *sample) bool { s.p.Tool.Diameter -= 12 * mm / 100; return true }},
	{"spindle off", "spindle stands", still},
	{"rapid through wood", "below the clearance|down into the wood", rushed},
	{"feed outside the travel", "travel is", outside},
	{"arc turned the other way", "more than half a turn|clockwise", turned},
	{"radius wrong", "misses its circle|of no radius|more than half a turn", offCentre},
	{"unit wrong", "units are not", otherUnit},
}

// TestCheckCatchesFaults plants every fault in programs that are drawn, the same at
// every run, until each was planted often; none of the programs is refused without.
func TestCheckCatchesFaults(t *testing.T) {
	const often, most = 50, 400
	planted := make([]int, len(faults))
	missing := len(faults)
	for i := 0; i < most && missing > 0; i++ {
		p, text := program(t, routertest.Requests().Example(i))
		var build replay.Checker // has cut the sound program before
		if err := build.Check(text, p); err != nil {
			t.Errorf("program %d: %v\n%s", i, err, text)
		}
		for k, f := range faults {
			s := &sample{lines: strings.SplitAfter(string(text), "\n"), p: *p, unit: 1, rand: rand.New(rand.NewSource(int64(i)))}
			if p.Tool.Dialect.Inch {
				s.unit = 25.4
			}
			if planted[k] == often || !f.plant(s) {
				continue
			}
			if planted[k]++; planted[k] == often {
				missing--
			}
			bad := strings.Join(s.lines, "")
			if err := build.Check([]byte(bad), &s.p); err == nil || !regexp.MustCompile(f.want).MatchString(err.Error()) {
				t.Errorf("program %d, %s: got %v, want %s\n%s\n%s", i, f.name, err, f.want, text, bad)
			}
		}
	}
	for k, f := range faults {
		if planted[k] < often {
			t.Errorf("%s: planted %d times only", f.name, planted[k])
		}
	}
}

// word finds a word in a line and returns where its number stands, and the number.
func word(line, letter string) (from, to int, v float64) {
	if !strings.HasPrefix(line, "G") {
		return 0, 0, 0
	}
	i := strings.Index(line, " "+letter)
	if i < 0 {
		return 0, 0, 0
	}
	from = i + 2
	to = from + strings.IndexAny(line[from:], " \n")
	v, err := strconv.ParseFloat(line[from:to], 64)
	if err != nil {
		panic(err)
	}
	return from, to, v
}

// decimal writes a number as all dialects take it here.
func decimal(v float64) string { return strconv.FormatFloat(v, 'f', 4, 64) }

// add adds millimetres to a word of a line; it reports whether the line has one.
func (s *sample) add(i int, letter string, mm float64) bool {
	from, to, v := word(s.lines[i], letter)
	if to > 0 {
		s.lines[i] = s.lines[i][:from] + decimal(v+mm/s.unit) + s.lines[i][to:]
	}
	return to > 0
}

// closed returns a closed side of the recess: the letter across it, the coordinate
// of the bit's centre along it, in mm, and the way out.
func (s *sample) closed() (letter string, at, out float64) {
	open := map[model.Edge]bool{}
	for _, e := range s.p.Open {
		open[e] = true
	}
	b, r := s.p.Shape.Bounds(), (s.p.Tool.Diameter+1)/2
	sides := [4]struct {
		letter string
		at     length.Length
		out    float64
	}{{"Y", b.Y.Lo + r, -1}, {"X", b.X.Hi - r, 1}, {"Y", b.Y.Hi - r, 1}, {"X", b.X.Lo + r, -1}}
	for _, k := range s.rand.Perm(4) {
		if side := sides[k]; !open[model.Edge(k)] {
			return side.letter, side.at.MM(), side.out
		}
	}
	panic("a recess that is open all round")
}

func offset(s *sample) bool {
	letter, _, out := s.closed()
	for i := range s.lines {
		s.add(i, letter, out*0.02)
	}
	return true
}

func deeper(s *sample) bool {
	level := -s.p.Levels[s.rand.Intn(len(s.p.Levels))].MM()
	for i := range s.lines {
		if _, to, z := word(s.lines[i], "Z"); to > 0 && math.Abs(z*s.unit-level) < 0.001 {
			s.add(i, "Z", -0.02)
		}
	}
	return true
}

// without takes out the feed moves from a comment to the next one, or to the end.
func (s *sample) without(comment string) bool {
	for i, line := range s.lines {
		if line != comment {
			continue
		}
		for i++; !strings.HasPrefix(s.lines[i], "(") && s.lines[i] != "M5\n"; i++ {
			if !strings.HasPrefix(s.lines[i], "G0") {
				s.lines[i] = ""
			}
		}
		return true
	}
	return false
}

func unfinished(s *sample) bool { return s.without("(finish the walls)\n") }

func unlevelled(s *sample) bool {
	n := len(s.p.Levels)
	return s.without(fmt.Sprintf("(level %d of %d)\n", n, n))
}

// moved leaves out recesses with reliefs: their bores may clear the wall as well.
func moved(s *sample) bool {
	if len(s.p.Reliefs) > 0 {
		return false
	}
	letter, at, out := s.closed()
	if s.rand.Intn(2) == 0 {
		out = -out
	}
	found := false
	for i := len(s.lines) - 1; i > 0 && !strings.HasPrefix(s.lines[i], "(level") && !strings.HasPrefix(s.lines[i], "(floor"); i-- {
		if _, to, v := word(s.lines[i], letter); to > 0 && math.Abs(v*s.unit-at) < 0.003 {
			found = s.add(i, letter, out*0.1)
		}
	}
	return found
}

// cutting returns a line at random that begins with one of the words, among those after the first
// level has begun.
func (s *sample) cutting(words ...string) (int, bool) {
	for _, i := range s.rand.Perm(len(s.lines)) {
		for _, w := range words {
			if strings.HasPrefix(s.lines[i], w+" ") && strings.Contains(strings.Join(s.lines[:i], ""), " Z-") {
				return i, true
			}
		}
	}
	return 0, false
}

func still(s *sample) bool {
	i, ok := s.cutting("G1", "G3")
	s.lines[i] = "M5\n" + s.lines[i]
	return ok
}

func rushed(s *sample) bool {
	i, ok := s.cutting("G1")
	line, _, _ := strings.Cut(s.lines[i], " F")
	s.lines[i] = "G0" + strings.TrimSuffix(line[2:], "\n") + "\n"
	return ok
}

// outside gives the machine just the travel that the program needs, and has the bit
// go a tenth of a millimetre farther, high above the wood.
func outside(s *sample) bool {
	tape, err := replay.Read([]byte(strings.Join(s.lines, "")), s.p.Tool.Dialect)
	if err != nil {
		panic(err)
	}
	plan, z := s.p.Reach()
	plan = plan.Union(geom.Rect{})
	grow := func(l length.Length) length.Length { return l + mm/100 }
	s.p.Tool.Travel = model.Travel{X: grow(plan.X.Size()), Y: grow(plan.Y.Size()), Z: grow(z.Size())}
	if err := replay.Check([]byte(strings.Join(s.lines, "")), &s.p); err != nil {
		panic(err)
	}
	start := tape.Motions[0].From
	for i, line := range s.lines {
		if strings.HasPrefix(line, "G0 X") {
			at := func(v float64) string { return decimal(v / s.unit) }
			s.lines[i] += fmt.Sprintf("G1 X%s F%.3f\nG1 X%s\n", at(plan.X.Hi.MM()+0.1), s.p.Tool.Feed.MM()/s.unit, at(start.X))
			return true
		}
	}
	return false
}

func turned(s *sample) bool {
	i, ok := s.cutting("G3")
	s.lines[i] = strings.Replace(s.lines[i], "G3", "G2", 1)
	return ok
}

func offCentre(s *sample) bool {
	i, ok := s.cutting("G3")
	if !ok {
		return false
	}
	letter := "I"
	_, _, x := word(s.lines[i], "I")
	if _, _, y := word(s.lines[i], "J"); math.Abs(y) > math.Abs(x) {
		letter = "J"
	}
	return s.add(i, letter, 0.1)
}

func otherUnit(s *sample) bool {
	for i, line := range s.lines {
		if strings.HasPrefix(line, "G17 ") {
			swap := strings.NewReplacer("G20", "G21", "G21", "G20")
			s.lines[i] = swap.Replace(line)
		}
	}
	return true
}
