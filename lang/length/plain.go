package length

import (
	"strconv"
	"strings"
)

// Decimals that Plain prints: finer than anybody marks out, and what a caliper
// shows.
const (
	plainInch = 3
	plainMM   = 2
)

// Plain prints a length for a sentence or a table. Where l is on the step, or on
// a 64th of an inch exactly, it is the fraction that [Show] prints; elsewhere
// inches are decimals, to a thousandth: "2.516 in", "7 ft 11.516 in". Nearer to
// the step than a thousandth tells counts as on it. Millimetres have two decimals
// at most: "4.05 mm". Only 0 is printed as 0: a smaller length has as many
// decimals as it takes to show a digit.
//
// What it prints is rounded; [Show] hides nothing.
func Plain(l Length, u Unit, step Length) string {
	if !u.Imperial() {
		return plainDecimal(l, Millimetres, plainMM) + " mm"
	}
	const finest, thousandth = Inch / 64, Inch / 1000
	near := Round(l, inchFraction(step))
	if off := Apart(l, near); 2*off < thousandth && (near != 0 || l == 0) {
		return Show(near, u, step)
	}
	if l%finest == 0 {
		return Show(l, u, finest)
	}
	fine := Round(l, thousandth)
	size := max(fine, -fine)
	if u != Feet || size < Foot {
		return plainDecimal(l, Inches, plainInch) + " in"
	}
	feet := appendMinus(nil, l)
	feet = strconv.AppendInt(feet, int64(size/Foot), 10)
	return string(feet) + " ft " + (size%Foot).Decimal(Inches, plainInch) + " in"
}

// PlainNumber prints what [Plain] prints without the unit. Feet and inches keep
// their units.
func PlainNumber(l Length, u Unit, step Length) string {
	text := Plain(l, u, step)
	if u == Feet {
		return text
	}
	return text[:strings.LastIndexByte(text, ' ')]
}

// plainDecimal has more than the given decimals where all of them would be 0.
func plainDecimal(l Length, u Unit, places int) string {
	for l != 0 && 2*magnitude(l)*powersOfTen[places] < uint64(u.Size()) {
		places++
	}
	return l.Decimal(u, places)
}
