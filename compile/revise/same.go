package revise

import (
	"regexp"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// same reports whether two values are equal. Where the builds show lengths in different
// ways, they are read again: to a thousandth of an inch, for texts round to half of one.
func (d *differ) same(a, b *model.Value) bool {
	if a.Text == b.Text {
		return true
	}
	alike := d.old.Build.Unit == d.new.Build.Unit && d.old.Build.Marks == d.new.Build.Marks
	if alike || a.Kind != b.Kind {
		return false
	}
	as, ok := lengthsIn(a.Text)
	bs, ok2 := lengthsIn(b.Text)
	if !ok || !ok2 || len(as) != len(bs) {
		return false
	}
	for i := range as {
		if length.Apart(as[i], bs[i]) > length.Inch/1000 {
			return false
		}
	}
	return true
}

// lengthsIn reads the lengths of a value's text, as length.Show prints them; ok is
// false where it holds anything else.
func lengthsIn(text string) (out []model.Length, ok bool) {
	for item := range strings.SplitSeq(strings.Trim(text, "[]"), ", ") {
		tape, over, by := item, "", model.Length(1)
		if at, rest, found := strings.Cut(item, " + "); found {
			tape, over = at, rest
		} else if at, rest, found := strings.Cut(item, " - "); found {
			tape, over, by = at, rest, -1
		}
		if !strings.ContainsAny(tape, "mi") { // a bare number is no length
			return nil, false
		}
		l, err := length.Parse(tape, length.Inches)
		if err != nil {
			return nil, false
		}
		if over != "" {
			rest, err := length.Parse(over, length.Inches)
			if err != nil {
				return nil, false
			}
			l += by * rest
		}
		out = append(out, l)
	}
	return out, true
}

// sameFigures reports whether two expressions of one value differ at most in their blanks,
// and in zeros that end a number: 36.0 for 36.
func sameFigures(a, b string) bool { return shortest(a) == shortest(b) }

func shortest(text string) string {
	return decimal.ReplaceAllStringFunc(strings.Join(strings.Fields(text), ""), func(n string) string {
		return strings.TrimSuffix(strings.TrimRight(n, "0"), ".")
	})
}

var decimal = regexp.MustCompile(`\d+\.\d+`)
