package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// stockSize is a size as the command line has it: 96x48, with its price 96x48=45.50, or with how
// many there are 40x20*2.
type stockSize struct {
	length, width length.Length // width is 0 of a stick
	count         int
	price         float64
	priced        bool
}

// mostStockSizes is how many sizes a list may be cut from.
const mostStockSizes = 20

// readSize reads a size; wrong says why it is none.
func readSize(flag, text string, unit length.Unit) (s stockSize, wrong string) {
	s.count = 1
	size, price, priced := strings.Cut(text, "=")
	size, count, counted := strings.Cut(size, "*")
	sides := strings.FieldsFunc(size, func(c rune) bool { return c == 'x' || c == 'X' || c == '×' })
	switch {
	case flag == "--stick" && len(sides) != 1:
		return s, fmt.Sprintf("--stick is a length, as 96 or 96=7.50 with its price, not %q", text)
	case flag == "--sheet" && len(sides) != 2:
		return s, fmt.Sprintf("--sheet is a length along the grain and a width, as 96x48 or 96x48=45 with its price, not %q", text)
	case flag == "--offcut" && len(sides) != 2:
		return s, fmt.Sprintf("--offcut is a length along the grain and a width, as 40x20 or 40x20*2 where there are two, not %q", text)
	case counted && flag != "--offcut":
		return s, fmt.Sprintf("%s %q has a count; only offcuts are so many, of all else as many are bought as it takes", flag, text)
	case priced && flag == "--offcut":
		return s, fmt.Sprintf("--offcut %q has a price; what is there already costs nothing", text)
	}
	for i, to := range []*length.Length{&s.length, &s.width}[:len(sides)] {
		if *to, wrong = positive(flag, sides[i], unit); wrong != "" {
			return s, wrong
		}
	}
	var err error
	if counted {
		if s.count, err = strconv.Atoi(strings.TrimSpace(count)); err != nil || s.count < 1 || s.count > 1000 {
			return s, fmt.Sprintf("%s %q: how many there are is a whole number from 1 to 1000, not %q", flag, text, count)
		}
	}
	if s.priced = priced; priced {
		if s.price, err = strconv.ParseFloat(strings.TrimSpace(price), 64); err != nil || !(s.price > 0 && s.price <= 1e6) {
			return s, fmt.Sprintf("%s %q: a price is a number above 0 and up to 1000000, not %q", flag, text, price)
		}
	}
	return s, ""
}

// positive reads a length that must be above 0.
func positive(flag, text string, unit length.Unit) (length.Length, string) {
	l, wrong := measure(flag, text, unit)
	if wrong == "" && l == 0 {
		wrong = fmt.Sprintf("%s: a size is above 0, not %q", flag, strings.TrimSpace(text))
	}
	return l, wrong
}

// measure reads a length of 0 or more.
func measure(flag, text string, unit length.Unit) (length.Length, string) {
	text = strings.TrimSpace(text)
	l, err := length.Parse(text, unit)
	switch {
	case err != nil && err.Mend != "":
		return 0, fmt.Sprintf("%s: %q is no length: %s (%s)", flag, text, err.Reason, err.Mend)
	case err != nil:
		return 0, fmt.Sprintf("%s: %q is no length: %s", flag, text, err.Reason)
	case l < 0:
		return 0, fmt.Sprintf("%s: a length is 0 or more, not %q", flag, text)
	}
	return l, ""
}

// stockSizes reads all sizes of a flag. Either all have a price or none has.
func stockSizes(flag string, texts []string, unit length.Unit) (out []stockSize, wrong string) {
	if len(texts) > mostStockSizes {
		return nil, fmt.Sprintf("%s stands %d times; the most is %d", flag, len(texts), mostStockSizes)
	}
	for _, text := range texts {
		s, wrong := readSize(flag, text, unit)
		if wrong != "" {
			return nil, wrong
		}
		if len(out) > 0 && s.priced != out[0].priced {
			return nil, fmt.Sprintf("give all of %s a price, or none", flag)
		}
		if flag != "--offcut" && slices.ContainsFunc(out, func(o stockSize) bool { return o.length == s.length && o.width == s.width }) {
			return nil, fmt.Sprintf("%s %s is a size that stands there already", flag, text)
		}
		out = append(out, s)
	}
	return out, ""
}

func sheetSizes(all []stockSize) (out []model.SheetSize) {
	for _, s := range all {
		out = append(out, model.SheetSize{Length: s.length, Width: s.width, Price: s.price, Priced: s.priced})
	}
	return out
}

func offcuts(all []stockSize) (out []model.Offcut) {
	for _, s := range all {
		out = append(out, model.Offcut{Length: s.length, Width: s.width, Count: s.count})
	}
	return out
}

func stickLengths(all []stockSize) (out []model.StickLength) {
	for _, s := range all {
		out = append(out, model.StickLength{Length: s.length, Price: s.price, Priced: s.priced})
	}
	return out
}
