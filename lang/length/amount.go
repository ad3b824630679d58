package length

import (
	"math/big"
	"slices"
	"strings"
)

// form is how an amount is written.
type form int

const (
	whole    form = iota // 7
	decimal              // 7.5
	fraction             // 1/2
	mixed                // 7 1/2
)

// amount is a number as written at text[from:to].
type amount struct {
	from, to int
	value    *big.Rat
	form     form
}

// amount reads a number.
func (r *reader) amount() (amount, *SyntaxError) {
	from := r.pos
	first := r.digits()
	switch {
	case r.peek() == '.' && (first != "" || digit(r.text, r.pos+1)):
		return r.decimal(from)
	case first == "":
		return amount{}, r.stray()
	case r.peek() == ',' && digit(r.text, r.pos+1):
		return amount{}, r.comma()
	case r.peek() == '/':
		a, err := r.fraction(from)
		if err == nil && a.value.Cmp(one) >= 0 {
			err = r.improper(a)
		}
		return a, err
	}
	a := amount{from: from, to: r.pos, value: rational(first), form: whole}
	return r.withFraction(a)
}

// withFraction reads the fraction that may follow a whole number.
func (r *reader) withFraction(a amount) (amount, *SyntaxError) {
	hyphen := r.skip('-')
	if !hyphen {
		r.spaces()
	}
	at := r.pos
	if fractionAt(r.text, at) {
		part, err := r.fraction(at)
		if err == nil && part.value.Cmp(one) >= 0 {
			err = r.fail(at, "", "a fraction after a whole number stays under one, and %s does not", r.text[at:r.pos])
		}
		if err != nil {
			return amount{}, err
		}
		return amount{from: a.from, to: r.pos, value: part.value.Add(part.value, a.value), form: mixed}, nil
	}
	if hyphen && digit(r.text, at) {
		return amount{}, r.fail(at, "", "after a hyphen comes a fraction, as in 19-1/2")
	}
	r.pos = a.to
	return a, nil
}

// decimal reads on from the point of a number that starts at from.
func (r *reader) decimal(from int) (amount, *SyntaxError) {
	point := r.pos
	r.pos++
	if r.digits() == "" {
		return amount{}, r.fail(r.pos, "", "a digit is missing after the point")
	}
	number := r.text[from:r.pos]
	switch {
	case r.peek() == '/':
		mend := ""
		if point > from {
			mend = r.mend(point, point+1, " ")
		}
		return amount{}, r.fail(point, mend, "a point and a fraction do not go together%s", wasMeant(mend))
	case r.peek() == '.' || r.peek() == ',' && digit(r.text, r.pos+1):
		return amount{}, r.fail(r.pos, "", "a number has one point")
	}
	return amount{from: from, to: r.pos, value: rational(number), form: decimal}, nil
}

// fraction reads a fraction that starts at from; its slash may be next already.
func (r *reader) fraction(from int) (amount, *SyntaxError) {
	r.digits()
	above := r.text[from:r.pos]
	r.pos++
	at := r.pos
	below := r.digits()
	if below == "" {
		return amount{}, r.fail(at, "", "a whole number is missing below the line of the fraction")
	}
	if next := r.peek(); next == '/' || next == '.' || next == ',' {
		return amount{}, r.fail(r.pos, "", "a fraction is one whole number over another, as in 23/32")
	}
	d := rational(below)
	if d.Sign() == 0 {
		return amount{}, r.fail(at, "", "a fraction cannot have 0 below the line")
	}
	return amount{from: from, to: r.pos, value: d.Quo(rational(above), d), form: fraction}, nil
}

// improper refuses what is most likely a mixed number that lost its space:
// two or more digits over a denominator of the tape, as in 71/2. It lets 5/4
// pass, which is a trade word for a board's thickness.
func (r *reader) improper(a amount) *SyntaxError {
	written := r.text[a.from:a.to]
	above, below, _ := strings.Cut(written, "/")
	if len(above) < 2 || !slices.Contains(tapeDenominators, below) {
		return nil
	}
	meant := mixedReadings(above, below)
	switch {
	case a.value.Cmp(one) == 0:
		return r.fail(a.from, "", "%s is one: write 1", written)
	case len(meant) == 0:
		return r.fail(a.from, "", "the fraction %s is more than one: write a whole number, a space and a fraction under one", written)
	case len(meant) == 1:
		return r.fail(a.from, r.mend(a.from, a.to, meant[0]), "the fraction %s is more than one; was %s meant?", written, meant[0])
	}
	return r.fail(a.from, "", "the fraction %s is more than one; was %s or %s meant?", written, meant[0], meant[1])
}

var tapeDenominators = []string{"2", "4", "8", "16", "32", "64"}

// mixedReadings returns the ways to part the numerator into a whole number and
// a fraction under one: 71/2 gives 7 1/2; 115/16 gives 1 15/16 and 11 5/16.
func mixedReadings(above, below string) []string {
	var readings []string
	for i := 1; i < len(above); i++ {
		if above[i] != '0' && rational(above[i:]).Cmp(rational(below)) < 0 {
			readings = append(readings, above[:i]+" "+above[i:]+"/"+below)
		}
	}
	return readings
}

// rational returns the value of digits with at most one point in them.
func rational(digits string) *big.Rat {
	value, ok := new(big.Rat).SetString(digits)
	if !ok {
		panic("length: not a number: " + digits)
	}
	return value
}

// digit reports whether text has a digit at that place.
func digit(text string, at int) bool {
	return at < len(text) && '0' <= text[at] && text[at] <= '9'
}

// fractionAt reports whether digits and a slash stand at that place.
func fractionAt(text string, at int) bool {
	from := at
	for digit(text, at) {
		at++
	}
	return at > from && at < len(text) && text[at] == '/'
}
