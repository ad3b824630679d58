package paper

import "strings"

// run is a piece of a line of text that is set alike: upright type, or a fraction whose
// numerator stands over its denominator.
type run struct {
	text     string // plain; of a fraction its numerator
	under    string // the denominator; empty of plain text
	afterGap bool   // a gap instead of a space stands before the fraction
}

// runsOf takes the fractions out of a line: "1 3/8 in" is plain "1", 3 over 8, plain " in".
func runsOf(line string) (runs []run) {
	plain := 0
	for i := 0; i < len(line); {
		num := digits(line[i:])
		if num == 0 {
			i++
			continue
		}
		end := i + num
		den := 0
		if end < len(line) && line[end] == '/' {
			den = digits(line[end+1:])
		}
		if den == 0 || num > 3 || den > 3 || !free(line, i, end+1+den) {
			i = end
			continue
		}
		before := line[plain:i]
		whole := strings.TrimSuffix(before, " ")
		gap := whole != before && whole != "" && digits(whole[len(whole)-1:]) > 0
		if !gap {
			whole = before
		}
		if whole != "" {
			runs = append(runs, run{text: whole})
		}
		runs = append(runs, run{text: line[i:end], under: line[end+1 : end+1+den], afterGap: gap})
		i = end + 1 + den
		plain = i
	}
	if plain < len(line) {
		runs = append(runs, run{text: line[plain:]})
	}
	return runs
}

// digits is how many digits a text begins with.
func digits(s string) (n int) {
	for n < len(s) && '0' <= s[n] && s[n] <= '9' {
		n++
	}
	return n
}

// free reports whether what stands before and after a fraction leaves it one: no letter, no point and no other
// stroke, as in a date or a name.
func free(line string, from, to int) bool {
	joined := func(b byte) bool {
		return b == '/' || b == '.' || b == '_' || b >= 0x80 || 'a' <= b|0x20 && b|0x20 <= 'z' || '0' <= b && b <= '9'
	}
	return (from == 0 || !joined(line[from-1]) && line[from-1] != '-') && (to == len(line) || !joined(line[to]))
}
