package ngc

import (
	"fmt"

	"barwright/compile/model"
)

// laying says which setup of its part a program belongs to, and what the person does
// before it. A setup is where the part lies while X's zero stays where it is.
func (s *sheet) laying(e *entry, p, before *model.Program) {
	if p.Test {
		return
	}
	of := fmt.Sprintf("%d of %d for %s: ", p.Setup, s.setups(p.Part), p.PartLabel)
	if sameSetup(before, p) {
		e.own("setup", of+"as for the program before: the part stays as it lies, and so do X0 and Y0; Z0 is set again only after a dry run or another bit")
		return
	}
	on := s.model.Build.Plain(p.MovedOn)
	var how string
	switch zeroOf(p) {
	case onMark:
		if p.MovedOn == 0 {
			e.own("setup", of+"lay the part where the machine reaches the whole recess, and set zero on the mark")
			return
		}
		how = fmt.Sprintf("the mark is %s further to the right on the part than the zero before; set zero on it. "+
			"Where the machine does not reach the recess, move the part on to the left first", on)
	case atEnd:
		how = "clamp a stop to the table and push the part's left end against it, so that the part lies to the right of it; " +
			"X0 is the face that touches the wood"
	case inRecess:
		how = fmt.Sprintf("move the part on to the left, by %s. Let a stop on an arm reach from above into the recess that is "+
			"named below, and push the part to the right until the recess's left wall lies against it; X0 is the face that touches the wood", on)
	}
	e.own("setup", of+how, "clamp the part, and set or check X0, Y0 and Z0 before the program starts")
}

// stop says how high the stop may be, where there is one.
func (s *sheet) stop(e *entry, p *model.Program, u units) {
	if zeroOf(p) != onMark {
		e.own("stop", fmt.Sprintf("lower than %s above the wood, with its clamp: at the end the bit goes to X0 Y0, over or beside it",
			s.both(p.Tool.Clearance, u)))
	}
}

// sameSetup reports whether a program finds the part as the one before it left it.
func sameSetup(before, p *model.Program) bool {
	return before != nil && !before.Test && before.Part == p.Part && before.Setup == p.Setup
}

// setups counts how often a part is laid on the machine for all of its programs.
func (s *sheet) setups(part string) int {
	n := 0
	for i := range s.model.Programs {
		if p := &s.model.Programs[i]; p.Part == part && !p.Test {
			n = max(n, p.Setup)
		}
	}
	return n
}

// zeroKind is what X's zero is set by.
type zeroKind int

const (
	onMark   zeroKind = iota
	atEnd             // a stop at the left end of the wood
	inRecess          // a stop in a recess that is cut already
)

// zeroOf tells what X's zero is set by. Where no stop is in reach it is on a mark at the
// recess's own left wall.
func zeroOf(p *model.Program) zeroKind {
	switch {
	case p.Tool.Datum != "end" && p.Tool.Datum != "last":
		return onMark
	case p.Mark == 0:
		return atEnd
	case p.Test || p.Shape.Bounds().X.Lo == 0:
		return onMark
	}
	return inRecess
}

// zeroPlace says how far X's zero is from the left end of the wood, so that it can be
// checked with a tape; far is that length as it is shown. It is empty where the zero
// is that end.
func zeroPlace(p *model.Program, far string) string {
	switch zeroOf(p) {
	case atEnd:
		return ""
	case inRecess:
		return fmt.Sprintf("that wall is %s from the part's left end; ", far)
	}
	return fmt.Sprintf("the mark of X0 is %s from the left end; ", far)
}
