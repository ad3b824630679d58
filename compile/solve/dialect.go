package solve

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/length"
)

func (s *solver) dialect(b *lang.Block) model.Dialect {
	d := model.Dialect{
		Inch: s.Text(b, "unit") == "in", Decimals: s.Count(b, "decimals"), Percent: s.Flag(b, "percent"),
		Chords: s.Text(b, "arcs") == "chords", Chord: s.Length(b, "chord"), Numbers: s.Flag(b, "line_numbers"),
		Comments: s.Text(b, "comments"), Start: linesOf(s.Text(b, "start")), End: linesOf(s.Text(b, "end")),
		Change: s.Flag(b, "change"), SpinUp: s.Number(b, "spin_up"),
	}
	if d.Decimals == 0 {
		d.Decimals = 4
		if d.Inch {
			d.Decimals = 5
		}
	}
	return d
}

// linesOf parts a text of several lines; an empty text has none.
func linesOf(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

// Limits of dialects. Straight pieces that left an arc by more could leave wood
// where the steel's corner lies, and none can stay closer than its ends are rounded.
const (
	longestWait = 60 // seconds
	mostChord   = length.Millimetre / 20
	leastChord  = 2 // of the last decimal
)

// checkDialects refuses what no program can be written with, and lines of the
// control's own that could move the machine where nobody looks.
func (s *solver) checkDialects() {
	for _, b := range s.Source.Top("router") {
		d := s.dialect(b)
		s.checkOwn(b, "start", d.Start, d.Numbers)
		s.checkOwn(b, "end", d.End, d.Numbers)
		if d.SpinUp > longestWait {
			s.Findings.Errorf("wait-too-long", b.Attr("spin_up").Expr.At, fmt.Sprintf("spin_up = %d, or less", longestWait),
				"The program would wait %s s for the spindle; %d s at most are written.",
				strconv.FormatFloat(d.SpinUp, 'f', -1, 64), longestWait)
		}
		if d.Chords {
			s.checkChord(b, d)
		}
		if a := s.Value(b, "acceleration"); a.Kind == expr.Number && values.NumberOf(a) <= 0 {
			s.Findings.Errorf("not-positive", b.Attr("acceleration").Expr.At, "acceleration = 500, or what the machine's manual states",
				"The acceleration is %s; it must be above zero. Times follow from it.", strconv.FormatFloat(values.NumberOf(a), 'f', -1, 64))
		}
	}
}

func (s *solver) checkChord(b *lang.Block, d model.Dialect) {
	unit := length.Millimetres
	if d.Inch {
		unit = length.Inches
	}
	least := leastChord * unit.Size()
	for range d.Decimals {
		least /= 10
	}
	if d.Chord == 0 || least <= d.Chord && d.Chord <= mostChord { // 0: it is in error
		return
	}
	s.Findings.Errorf("chord-out-of-range", b.Said("chord"), "a chord between the two, or more decimals",
		"Straight pieces would leave an arc by up to %s. With %d decimals of %s they can stay within %s %s, and more than %s would show in the fit.",
		s.Show(d.Chord), d.Decimals, unit, least.Decimal(unit, d.Decimals), unit, s.Show(mostChord))
}

// longestLine is what RS274/NGC reads; a number before it takes up to lineNumber.
const (
	longestLine = 256
	lineNumber  = len("N99990 ")
)

func (s *solver) checkOwn(b *lang.Block, name string, lines []string, numbered bool) {
	most := longestLine
	if numbered {
		most -= lineNumber
	}
	for i, line := range lines {
		wrong := unfitLine(line)
		if len(line) > most {
			wrong = fmt.Sprintf("it has %d characters, and %d are read", len(line), most)
		}
		if wrong != "" {
			s.Findings.Errorf("line-not-safe", b.Attr(name).Expr.At, "leave the line out, and have the person do it by hand",
				"Line %d of it cannot stand in a program: %s.", i+1, wrong)
			return
		}
	}
}

var (
	ownComment = regexp.MustCompile(`^(\([^()]*\)|;.*)$`)
	ownWord    = regexp.MustCompile(`^[A-Z]-?[0-9]{1,9}(\.[0-9]{0,6})?$`)
)

// refusedM are the M codes that end a program, turn the spindle, change the bit or
// the pallet, or go on in another program.
var refusedM = []float64{2, 3, 4, 5, 6, 30, 60, 97, 98, 99}

// unfitLine says what is wrong with a line of a control's own, "" if nothing is. It is
// a comment, or one code that moves nothing by what RS274/NGC says of it: how exactly a
// path is followed (G61, G61.1, G64), or an M code, with the numbers that it takes.
func unfitLine(line string) string {
	if strings.ContainsFunc(line, func(r rune) bool { return r < ' ' || r > '~' }) {
		return "only printable ASCII is read"
	}
	if ownComment.MatchString(line) {
		return ""
	}
	seen := ""
	for i, word := range strings.Split(line, " ") {
		if !ownWord.MatchString(word) {
			return fmt.Sprintf("%q is no word: a capital letter and a number, one blank between words", word)
		}
		number, _ := strconv.ParseFloat(word[1:], 64) // which is what ownWord lets through
		switch letter := word[:1]; {
		case strings.Contains(seen, letter):
			return fmt.Sprintf("two %s words", letter)
		case letter == "G" && i == 0 && (number == 61 || number == 61.1 || number == 64):
		case letter == "M" && i == 0 && number >= 0 && !slices.Contains(refusedM, number):
		case i > 0 && strings.Contains("PQL", letter):
		case i == 0 && letter != "G" && letter != "M":
			return fmt.Sprintf("it begins with %s, and not with a G or M code", word)
		default:
			return fmt.Sprintf("%s could move the machine, or change what the program means, unseen", word)
		}
		seen += word[:1]
	}
	return ""
}
