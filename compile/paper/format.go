// Package paper lays views out on sheets that are printed: each at a scale of the trade, as large
// as fits, with a frame, a title block, and a bar beside each view that tells whether the printer
// kept to the scale. The same model gives the same papers.
package paper

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// Length is the measure of every coordinate.
type Length = length.Length

const mm = length.Millimetre

// Formats are the sizes of paper, lying, by name: ISO 216 and those of North America.
var Formats = map[string]geom.Point{
	"A4":      {X: 297 * mm, Y: 210 * mm},
	"A3":      {X: 420 * mm, Y: 297 * mm},
	"letter":  {X: 11 * length.Inch, Y: length.Inch * 17 / 2},
	"tabloid": {X: 17 * length.Inch, Y: 11 * length.Inch},
}

// Names are those of the formats.
var Names = [...]string{"A4", "A3", "letter", "tabloid"}

// scale is how many times smaller a view is on paper.
type scale int64

// Scales by ISO 5455, and those that rules for inches have (common practice): from 50 ft to an inch on
// they are those of site plans.
var (
	metric   = []scale{1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000}
	imperial = []scale{1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 192, 384, 600, 1200, 2400, 6000, 12_000}
)

// feet is what a foot is on paper, in inches.
var feet = map[scale]string{
	4: "3", 8: "1 1/2", 12: "1", 16: "3/4", 24: "1/2", 32: "3/8", 48: "1/4", 64: "3/16", 96: "1/8", 192: "1/16", 384: "1/32",
}

func scalesOf(u length.Unit) []scale {
	if u.Imperial() {
		return imperial
	}
	return metric
}

// words name a scale as drawings do.
func (n scale) words(u length.Unit) string {
	if inches := feet[n]; u.Imperial() && inches != "" {
		return inches + " in = 1 ft (" + n.ratio() + ")"
	}
	if u.Imperial() && n >= 600 {
		return fmt.Sprintf("1 in = %d ft (%s)", n/12, n.ratio())
	}
	return n.ratio()
}

func (n scale) ratio() string { return fmt.Sprintf("1:%d", int64(n)) }

// on is how long a length is on paper.
func (n scale) on(l Length) Length { return length.Round(l, Length(n)) / Length(n) }

// size is how large a rectangle is on paper.
func (n scale) size(r geom.Rect) geom.Point {
	return geom.Point{X: n.on(r.X.Size()), Y: n.on(r.Y.Size())}
}
