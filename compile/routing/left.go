package routing

import (
	"fmt"

	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// Left is a work that is left out.
type Left struct {
	Cause string // what has the same one is told together
	Drill bool   // a drill makes it as well
	Text  string // "The opening outlet urn of URN-B, the bottom of cabinet urn, is left out …"
	Mend  string
	At    source.Range // of what asks for it
	tabs  bool         // there is no room for tabs
}

func (b *board) leave(w model.Work, cause, mend, text string) *Left {
	return &Left{
		Cause: w.Kind + " " + cause, Text: b.called(&w) + " is left out of the router's programs. " + text,
		Mend: mend, At: b.part.Why.At,
	}
}

// called names a work in a sentence.
func (b *board) called(w *model.Work) string {
	what := "The " + w.Name
	switch w.Kind {
	case "opening":
		what = "The opening " + w.Name
	case "pin":
		what = "The hole for a " + w.Name
	}
	return fmt.Sprintf("%s of %s, %s of %s,", what, b.part.Label, b.part.Named(), b.part.Owner)
}

// bit says what the bit needs, with the wood that its last pass takes.
func (b *board) bit() string { return b.show(2 * (b.radius + b.tool.Finish)) }

func (b *board) narrow(kind, name string) *Left {
	text := fmt.Sprintf("It is narrower somewhere than %s, which the bit and its last pass need, or turns in and out too closely.", b.bit())
	return b.leave(model.Work{Kind: kind, Name: name}, "narrow", "a smaller bit, or other means", text)
}

func (b *board) noTabs(kind, name string) *Left {
	t := b.leave(model.Work{Kind: kind, Name: name}, "tabs", "fewer or narrower tabs", fmt.Sprintf(
		"It has no room for %s: each takes %s of an edge, its own %s and two bits.", finding.Counted(b.also.Tabs.Least, "tab"),
		b.show(b.also.Tabs.Width+2*b.tool.Diameter), b.show(b.also.Tabs.Width)))
	t.tabs = true
	return t
}

func (b *board) noRelief(kind, name string) *Left {
	return b.leave(model.Work{Kind: kind, Name: name}, "relief", `relief = "none", and a chisel`, fmt.Sprintf(
		"A corner cannot be relieved by a bit of %s: it would cut into something else, or the edges are too short.", b.show(b.tool.Diameter)))
}

func (b *board) tooLong(kind, name string) *Left {
	return b.leave(model.Work{Kind: kind, Name: name}, "long", "a steeper ramp, or a deeper step-down", fmt.Sprintf(
		"It would take more than %d moves.", maxMoves))
}

func (b *board) notRectangular(w model.Work) *Left {
	return b.leave(w, "shape", "other means", "It is to be cleared, but is neither a rectangle nor round.")
}

func (b *board) tooDeep(w model.Work) *Left {
	return b.leave(w, "deep", "a depth less than the board's thickness", fmt.Sprintf(
		"It is %s deep, and the board %s thick.", b.show(w.Depth), b.show(b.thick)))
}

func (b *board) leftToDrill(w model.Work, diameter Length) *Left {
	return &Left{Cause: w.Kind + " drill", Drill: true, At: b.part.Why.At, Text: fmt.Sprintf(
		"%s is %s wide, and the bit %s: it is left to the drill.", b.called(&w), b.show(diameter), b.show(b.tool.Diameter))}
}

// refused tells what a plan for a recess was refused for.
func (b *board) refused(w model.Work, r *router.Refusal) *Left {
	return b.leave(w, r.Kind, "a smaller bit, or other means", r.Text)
}

// report tells what is left out for a router, what has one cause together.
func report(block *lang.Block, left []Left, findings *finding.List) {
	var causes []string
	first, count := map[string]*Left{}, map[string]int{} // by cause; lookup only
	for i := range left {
		l := &left[i]
		if first[l.Cause] == nil {
			causes, first[l.Cause] = append(causes, l.Cause), l
		}
		count[l.Cause]++
	}
	at := block.Attr("also").Expr.At
	for _, cause := range causes {
		l, others := first[cause], count[cause]-1
		if l.Drill {
			findings.Notef("left-to-drill", at, "%s%s", l.Text, finding.Others(others, " So is another one.", " So are %d others.")).
				Also(l.At, "its part is asked for here")
			continue
		}
		findings.Warnf("not-routed", at, l.Mend, "%s%s", l.Text, finding.Others(others, " So it is with another one.", " So it is with %d others.")).
			Also(l.At, "its part is asked for here")
	}
}
