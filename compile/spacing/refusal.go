package spacing

import (
	"slices"
	"strings"
)

// Refusal says why things cannot stand as asked.
type Refusal struct {
	Cause      Cause
	Need, Have Length // of Crowded and Sparse: what as many need at least, or reach at most; what there is
	Count      int    // of TooFew: the fewest; of TooMany: the most
	By         []string
}

// Cause tells what refusals have in common.
type Cause int

const (
	Barred  Cause = iota // what is closed leaves no places: By names it
	Crowded              // so many do not find room with Least between them
	Sparse               // so few cannot keep Most
	TooFew               // more are fixed than are asked for
	TooMany              // more than any row may have
	Outside              // a fixed one is not in the stretch, or is in a closed one: By names it
)

// Text tells it in a sentence; show prints a length.
func (r *Refusal) Text(show func(Length) string) string {
	switch r.Cause {
	case Crowded:
		return "They need " + show(r.Need) + ", and there is " + show(r.Have) + ": " + show(r.Need-r.Have) + " too little."
	case Sparse:
		return "They reach over " + show(r.Need) + ", and there is " + show(r.Have) + ": " + show(r.Have-r.Need) + " too much."
	case TooFew:
		return "More are fixed than are asked for."
	case TooMany:
		return "They are more than one row may have."
	case Outside:
		if len(r.By) == 0 {
			return "One that is fixed does not stand in the stretch."
		}
		return "One that is fixed would stand in " + r.By[0] + "."
	}
	if len(r.By) == 0 {
		return "There are no marks for as many."
	}
	return "There are no places beside " + strings.Join(r.By, ", ") + "."
}

// sound looks at what is fixed.
func (a *Ask) sound() *Refusal {
	if a.Count > mostThings {
		return &Refusal{Cause: TooMany, Count: mostThings}
	}
	if a.Count > 0 && a.Count < len(a.Fixed) {
		return &Refusal{Cause: TooFew, Count: len(a.Fixed)}
	}
	for i, x := range a.Fixed {
		if x < a.Stretch.Lo || x > a.Stretch.Hi {
			return &Refusal{Cause: Outside}
		}
		for _, c := range a.Closed {
			if c.holds(x) {
				return &Refusal{Cause: Outside, By: []string{c.By}}
			}
		}
		if i > 0 && x-a.Fixed[i-1] < max(a.Least, 1) {
			return &Refusal{Cause: Crowded, Need: max(a.Least, 1), Have: x - a.Fixed[i-1]}
		}
	}
	return nil
}

// refuse says why there is no row: it would not find room whatever is closed, or
// what is closed bars it.
func (a *Ask) refuse() *Refusal {
	bare, gaps := a.Stretch.Size(), Length(a.Count-1)
	if !a.HalfEnds {
		bare -= 2 * a.End
	}
	if need := gaps * max(a.Least, 1); need > bare {
		return &Refusal{Cause: Crowded, Need: need, Have: bare}
	}
	reach := gaps * a.Most
	if a.HalfEnds {
		reach += 2 * a.Most
	}
	if a.Most > 0 && reach < bare {
		return &Refusal{Cause: Sparse, Need: reach, Have: bare}
	}
	r := &Refusal{Cause: Barred}
	for _, c := range a.Closed {
		if c.Span.Overlaps(a.Stretch) && !slices.Contains(r.By, c.By) {
			r.By = append(r.By, c.By)
		}
	}
	return r
}
