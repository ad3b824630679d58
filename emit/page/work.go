package page

import (
	"regexp"
	"strconv"

	"barwright/emit/worklist"
	"barwright/lang/finding"
)

// work writes the order of work, with boxes to tick that are printed too.
func (p writer) work() {
	p.section("work")
	if len(p.m.Work) == 0 {
		p.none("Nothing to do.")
		p.End()
		return
	}
	p.El("p", worklist.Opening, "class", "caution")
	numbers := worklist.Numbers(p.m)
	for from, to := 0, 0; from < len(p.m.Work); from = to {
		for to < len(p.m.Work) && p.m.Work[to].Phase == p.m.Work[from].Phase {
			to++
		}
		title := finding.Capital(p.m.Work[from].Phase)
		if p.shown == whole {
			p.El("h3", title)
		}
		p.fold("work", title, finding.Counted(to-from, "step"), func(p writer) {
			p.Start("ol", "class", "work", "start", strconv.Itoa(from+1))
			for i := from; i < to; i++ {
				p.task(i, numbers)
			}
			p.End()
		})
	}
	p.End()
}

// task writes a step of the order of work, by its index.
func (p writer) task(i int, numbers map[string]int) {
	t := &p.m.Work[i]
	p.Start("li", "id", "work-"+strconv.Itoa(i+1))
	p.tick(t.Title)
	if len(t.Checks) > 0 {
		p.Start("ul", "class", "checks")
		for _, c := range t.Checks {
			p.Start("li")
			p.tick(c.What + ": " + c.Figure)
			p.End()
		}
		p.End()
	}
	if facts := worklist.Facts(p.m, numbers, t); len(facts) > 0 {
		p.Start("dl")
		for _, f := range facts {
			p.fact(f.Name, f.Text)
		}
		p.End()
	}
	p.End()
}

// mixed is a number with a fraction.
var mixed = regexp.MustCompile(`(\d) (\d+/\d)`)

// unbroken keeps whole numbers and their fractions on one line: what is left of 105 1/2 at the end
// of one reads as 105.
func unbroken(text string) string { return mixed.ReplaceAllString(text, "$1\u00a0$2") }

// tick writes a box to tick before a text.
func (p writer) tick(text string) {
	p.Start("label")
	p.Void("input", "type", "checkbox")
	p.Text(" " + unbroken(text))
	p.End()
}
