package solve

import (
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang/length"
)

// stagger is how far apart splices of two plates on one another are at least:
// the figure of the residential code for double top plates, 24 in, from memory.
const stagger = 24 * length.Inch

// spliced holds where the plates are parted: of the lower ones and of the upper
// ones, from the floor up.
type spliced struct{ lower, upper [][]length.Length }

// splices parts plates that are longer than the longest stick: over inner
// studs, into as few pieces as can be, staggered from plate to plate, those of
// upper plates clear of supports by the width of a plate.
func (s *solver) splices(k *knee, steel *steelwork) (spliced, bool) {
	longest := slices.Max(s.Lengths(k.stick, "lengths")) - 2*s.Length(k.stick, "ends")
	inner := k.wall.Studs[1 : len(k.wall.Studs)-1]
	clear := inner
	if steel != nil {
		clear = slices.DeleteFunc(slices.Clone(inner), func(x length.Length) bool {
			return slices.ContainsFunc(steel.centres, func(c length.Length) bool {
				near := steel.about(c).Grow(k.wall.Framing.V.Size())
				return near.Lo < x && x < near.Hi
			})
		})
	}
	lower, okLower := layers(k.wall.Framing.U, longest, k.lower, inner)
	upper, okUpper := layers(k.wall.Framing.U, longest, k.upper, clear)
	if !okLower || !okUpper {
		which, over := "upper", ", clear of supports by "+s.Show(k.wall.Framing.V.Size())
		if !okLower {
			which, over = "lower", ""
		}
		s.Findings.Errorf("no-place-for-splice", k.block.Head, "longer sticks, or studs closer to one another",
			"The plates are %s long and the longest stick %s, but there is no choice of studs for the splices of the %s ones: none further apart than a stick, those of two plates on one another %s apart or more%s.",
			s.Show(k.wall.Framing.U.Size()), s.Show(longest), which, s.Show(stagger), over).Also(k.stick.Head, "the sticks")
		return spliced{}, false
	}
	slices.Reverse(upper) // the uppermost was chosen first
	return spliced{lower, upper}, true
}

// layers parts n plates on one another at some of the places, each clear of the
// splices of the one before.
func layers(long geom.Span, longest length.Length, n int, at []length.Length) ([][]length.Length, bool) {
	out := make([][]length.Length, n)
	for i := range out {
		free := at
		if i > 0 {
			free = slices.DeleteFunc(slices.Clone(at), func(x length.Length) bool {
				return slices.ContainsFunc(out[i-1], func(y length.Length) bool { return length.Apart(x, y) < stagger })
			})
		}
		var ok bool
		if out[i], ok = spacing.Split(long, longest, free); !ok {
			return nil, false
		}
	}
	return out, true
}

func (s *solver) lowerPlates(k *knee, at spliced) {
	for i, cuts := range at.lower {
		s.plate(k, "lower", i, k.lower, i+1, length.Length(i)*k.thick, cuts)
	}
}

// upperPlates returns the pieces of the uppermost plate, as indices of parts.
func (s *solver) upperPlates(k *knee, at spliced) []int {
	var top []int
	for i, cuts := range at.upper {
		first := len(s.m.Parts)
		s.plate(k, "upper", i, k.upper, k.lower+i+1, k.studSpan().Hi+length.Length(i)*k.thick, cuts)
		top = top[:0]
		for j := first; j < len(s.m.Parts); j++ {
			top = append(top, j)
		}
	}
	return top
}

// plate adds the pieces of one plate; those of one that is parted have letters.
func (s *solver) plate(k *knee, which string, i, of, n int, z length.Length, cuts []length.Length) {
	f := k.wall.Framing
	id, name := "plate-"+which, which+" plate"
	if of > 1 {
		id, name = id+"-"+strconv.Itoa(i+1), name+" "+strconv.Itoa(i+1)
	}
	for j, u := range spacing.Pieces(f.U, cuts) {
		p := piece{id: id, code: "P" + strconv.Itoa(n), name: name, out: above, face: "top"}
		if len(cuts) > 0 {
			letter := letters(j)
			p.id, p.code, p.name = p.id+"-"+strings.ToLower(letter), p.code+letter, p.name+", piece "+letter
		}
		s.lumber(k.block, k.stick, k.wall.Frame, geom.Box{U: u, V: f.V, Z: geom.Span{Lo: z, Hi: z + k.thick}}, p)
	}
}

// letters counts A, B … Z, AA, AB …
func letters(i int) string {
	last := string(rune('A' + i%26))
	if i < 26 {
		return last
	}
	return letters(i/26-1) + last
}
