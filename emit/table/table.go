// Package table writes the bill and the cut list: as CSV (RFC 4180, in UTF-8,
// lines ended by a line feed) for a spreadsheet, and as JSON for programs. The
// first CSV record names the columns. A length stands twice: as the build's
// people read it, rounded where no tape shows it, and in millimetres as a plain
// decimal, exactly. Empty cells
// and null say that something is not known.
package table

import (
	"encoding/csv"
	"io"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/length"
)

// mm returns a length in millimetres, exactly.
func mm(l model.Length) string { return l.Decimal(length.Millimetres, length.MaxPlaces) }

// decimal returns a number with up to so many places, rounded, without
// trailing zeros, and never as -0.
func decimal(x float64, places int) string {
	s := strconv.FormatFloat(x, 'f', places, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// known returns a number as decimal does, and nothing for 0, which stands for
// what is not known.
func known(x float64, places int) string {
	if x == 0 {
		return ""
	}
	return decimal(x, places)
}

// money returns an amount with two places; with more, up to six, where it has
// them, as the price of a single screw may.
func money(x float64) string {
	s := decimal(x, 6)
	if _, part, _ := strings.Cut(s, "."); len(part) > 2 {
		return s
	}
	return strconv.FormatFloat(x, 'f', 2, 64)
}

// plain makes a text harmless in a spreadsheet: one that would be taken for a
// formula gets an apostrophe in front, which spreadsheets do not show.
func plain(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r\n", rune(text[0])) {
		return "'" + text
	}
	return text
}

// write writes records as CSV.
func write(w io.Writer, records [][]string) error {
	c := csv.NewWriter(w)
	if err := c.WriteAll(records); err != nil {
		return err
	}
	return c.Error()
}
