package model

import (
	"math"
	"strconv"
	"strings"
)

// BillLine is one line of the bill.
type BillLine struct {
	Section  string  // "sheets", "sticks", "steel", "slabs", "banding", "screws", "fittings", "consumables"
	Item     string  // "sheet.birch"
	Text     string  // what one asks for at the counter
	Use      string  // what it is for
	Quantity float64 // 0 where it is not known
	Unit     string  // "sheet", "stick", "box", "piece", "m2", "sq ft"
	Needed   string  // what is used of it: "142 pieces", "31 ft 4 in"
	WeightKg float64 // of what is used; 0 where unknown
	Price    float64 // each; 0 where not given
	Priced   bool
}

// WithoutWeight is what is used of it, without what that weighs.
func (l BillLine) WithoutWeight() string {
	i := strings.LastIndex(l.Needed, "; ")
	if i >= 0 && (strings.HasSuffix(l.Needed, " lb") || strings.HasSuffix(l.Needed, " kg")) {
		return l.Needed[:i]
	}
	return l.Needed
}

// Cost returns quantity times price to the nearest hundredth, so that costs add
// up as they are printed.
func (l BillLine) Cost() float64 { return math.Round(l.Quantity*l.Price*100) / 100 }

// Total adds up the lines that carry a price, and counts those that do not.
func Total(lines []BillLine) (cost float64, unpriced int) {
	for _, l := range lines {
		if !l.Priced {
			unpriced++
			continue
		}
		cost += l.Cost()
	}
	return cost, unpriced
}

// pound is the international pound in kilograms (NIST SP 811, appendix B).
const pound = 0.45359237

// Pounds writes a weight in pounds, to the tenth: "12.5 lb".
func Pounds(kg float64) string { return strconv.FormatFloat(kg/pound, 'f', 1, 64) + " lb" }

// Thousandths writes a number with as many of three decimals as it needs: "0.125", "12".
func Thousandths(x float64) string {
	text := strconv.FormatFloat(x, 'f', 3, 64)
	return strings.TrimSuffix(strings.TrimRight(text, "0"), ".")
}
