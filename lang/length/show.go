package length

import "strconv"

// tapeStep is the mark that a common tape carries.
const tapeStep = Inch / 16

// Show prints a length for people, in the way of a build's unit.
//
// In Inches it is whole inches and a fraction in lowest terms, at the nearest
// step: "39 5/8 in", "5/8 in", "-1/4 in", "0 in". In Feet it is the same after
// whole feet, which are left out where there are none: "7 ft 0 in",
// "7 ft 11 1/2 in", "11 1/2 in". Where l is not on the step, what is left over
// follows in inches, signed, so that nothing is hidden and the sum is l:
// "39 5/8 in + 0.012", "-1/4 in - 0.003". It has three decimals, or as many as
// it takes to show a digit other than 0.
//
// In a metric unit it is millimetres in full, "490 mm" or "490.5 mm"; the step
// does not matter.
//
// A step is an inch, or 1/2, 1/4, … 1/64 of one. Any other step counts as the
// next finer of these (at the finest, 1/64 in), and none at all (step <= 0) as
// 1/16 in.
func Show(l Length, u Unit, step Length) string {
	switch u {
	case Feet:
		return feetAndInches(l, step)
	case Inches:
		return inches(l, step, " in")
	}
	return l.Decimal(Millimetres, MaxPlaces) + " mm"
}

// Number prints what [Show] prints without the unit, for dimension lines:
// "39 5/8", "490.5". Feet and inches keep their units, for without them
// "7 11 1/2" is no length.
func Number(l Length, u Unit, step Length) string {
	switch u {
	case Feet:
		return feetAndInches(l, step)
	case Inches:
		return inches(l, step, "")
	}
	return l.Decimal(Millimetres, MaxPlaces)
}

// Round returns the multiple of step that is nearest to l, halves away from
// zero. A step of zero or less leaves l as it is.
func Round(l, step Length) Length {
	if step <= 0 {
		return l
	}
	over := l % step
	near := l - over
	switch {
	case over >= step-over:
		return near + step
	case -over >= step+over:
		return near - step
	}
	return near
}

// Down returns the multiple of a step over zero that is at or before l.
func Down(l, step Length) Length { return l - (l%step+step)%step }

// Up returns the multiple of a step over zero that is at or after l.
func Up(l, step Length) Length { return -Down(-l, step) }

func inches(l, step Length, unit string) string {
	step = inchFraction(step)
	near := Round(l, step)
	dst := appendMinus(nil, near)
	dst = appendInches(dst, max(near, -near), step)
	dst = append(dst, unit...)
	return string(appendLeftover(dst, l-near))
}

func feetAndInches(l, step Length) string {
	step = inchFraction(step)
	near := Round(l, step)
	size := max(near, -near)
	dst := appendMinus(nil, near)
	if size >= Foot {
		dst = strconv.AppendInt(dst, int64(size/Foot), 10)
		dst = append(dst, " ft "...)
	}
	dst = appendInches(dst, size%Foot, step)
	dst = append(dst, " in"...)
	return string(appendLeftover(dst, l-near))
}

// inchFraction returns the step that Show rounds to when asked for step.
func inchFraction(step Length) Length {
	if step <= 0 {
		return tapeStep
	}
	fraction := Inch
	for fraction > step && fraction > Inch/64 {
		fraction /= 2
	}
	return fraction
}

func appendMinus(dst []byte, l Length) []byte {
	if l < 0 {
		dst = append(dst, '-')
	}
	return dst
}

// appendInches prints size, a multiple of step that is not negative.
func appendInches(dst []byte, size, step Length) []byte {
	whole, above, below := size/Inch, size%Inch/step, Inch/step
	if whole > 0 || above == 0 {
		dst = strconv.AppendInt(dst, int64(whole), 10)
	}
	if above == 0 {
		return dst
	}
	if whole > 0 {
		dst = append(dst, ' ')
	}
	for above%2 == 0 {
		above, below = above/2, below/2
	}
	dst = strconv.AppendInt(dst, int64(above), 10)
	dst = append(dst, '/')
	return strconv.AppendInt(dst, int64(below), 10)
}

func appendLeftover(dst []byte, rest Length) []byte {
	switch {
	case rest == 0:
		return dst
	case rest < 0:
		dst, rest = append(dst, " - "...), -rest
	default:
		dst = append(dst, " + "...)
	}
	places := 3
	for 2*uint64(rest)*powersOfTen[places] < uint64(Inch) { // it would round to 0
		places++
	}
	return appendFixed(dst, rest, Inches, places)
}
