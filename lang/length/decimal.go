package length

import "strconv"

// MaxPlaces is the most decimals that a length is printed with. With so many,
// a decimal in any unit is read back as the same nanometre.
const MaxPlaces = 9

var powersOfTen = [MaxPlaces + 1]uint64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9}

// Decimal returns l counted in u as a plain decimal: rounded to places (0 to
// [MaxPlaces]) with halves away from zero, no exponent, no trailing zeros,
// never -0.
func (l Length) Decimal(u Unit, places int) string {
	return string(AppendDecimal(make([]byte, 0, 24), l, u, places))
}

// AppendDecimal appends what [Length.Decimal] returns.
func AppendDecimal(dst []byte, l Length, u Unit, places int) []byte {
	places = min(max(places, 0), MaxPlaces)
	whole, part := split(l, u, places)
	for places > 0 && part%10 == 0 {
		part /= 10
		places--
	}
	return appendSigned(dst, l < 0, whole, part, places)
}

// appendFixed is AppendDecimal with the trailing zeros kept.
func appendFixed(dst []byte, l Length, u Unit, places int) []byte {
	whole, part := split(l, u, places)
	return appendSigned(dst, l < 0, whole, part, places)
}

// split returns the whole units in the size of l, and the rest of it counted
// in 10^-places of a unit, rounded with halves up.
func split(l Length, u Unit, places int) (whole, part uint64) {
	size, power := uint64(u.Size()), powersOfTen[places]
	n := magnitude(l)
	// The rest is under 1e9 nm, so its product with 1e9 fits 64 bits. Every
	// unit is an even number of nanometres, so size/2 is a true half.
	whole, part = n/size, (n%size*power+size/2)/size
	if part == power {
		return whole + 1, 0
	}
	return whole, part
}

func magnitude(l Length) uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}

func appendSigned(dst []byte, negative bool, whole, part uint64, places int) []byte {
	if negative && (whole != 0 || part != 0) {
		dst = append(dst, '-')
	}
	dst = strconv.AppendUint(dst, whole, 10)
	if places == 0 {
		return dst
	}
	dst = append(dst, '.')
	for p := places - 1; p >= 0; p-- {
		dst = append(dst, '0'+byte(part/powersOfTen[p]%10))
	}
	return dst
}
