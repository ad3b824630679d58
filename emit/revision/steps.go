package revision

import (
	"slices"
	"strings"

	"barwright/compile/model"
)

// done is steps of one kind that differ in nothing but what they are done to.
type done struct {
	step          *model.Step
	before, after string
	to            []string
}

// doneSteps tells what is to be done to a piece, alike steps in one line.
func doneSteps(steps []model.Step) []string {
	var all []done
next:
	for i := range steps {
		s := &steps[i]
		before, after, named := strings.Cut(s.Text, s.What)
		for j := range all {
			d := &all[j]
			if named && !counted(s) && s.Kind == d.step.Kind && before == d.before && after == d.after && !slices.Contains(d.to, s.What) {
				d.to = append(d.to, s.What)
				continue next
			}
		}
		all = append(all, done{s, before, after, []string{s.What}})
	}
	out := make([]string, len(all))
	for i := range all {
		out[i] = all[i].String()
	}
	return out
}

// counted reports whether a step counts bores, which two lines tell better.
func counted(s *model.Step) bool { return s.Kind == model.Plug || s.Kind == model.Drill }

func (d *done) String() string {
	if len(d.to) == 1 {
		return d.step.Text
	}
	before, after := d.before, d.after
	if d.step.Kind.Makes() {
		after = strings.Replace(after, "; it would", "; they would", 1)
	}
	if strip, ok := strings.CutPrefix(before, "a strip "); ok {
		before = "strips " + strings.Replace(strip, " is missing", " are missing", 1)
	}
	for _, one := range [...][2]string{{"opening for ", "openings for "}, {"notch for ", "notches for "}} {
		if cut, ok := strings.CutSuffix(before, one[0]); ok {
			before = cut + one[1]
		}
	}
	return before + d.names() + after
}

// names lists what the steps are done to: "bottom and the top edge", "support 1 and
// support 3".
func (d *done) names() string {
	if !strings.HasSuffix(d.before, "the ") {
		return enumerated(d.to)
	}
	last := d.to[0][strings.LastIndexByte(d.to[0], ' ')+1:]
	names := make([]string, len(d.to))
	for i, name := range d.to {
		short, same := strings.CutSuffix(name, " "+last)
		if !same {
			last = ""
			break
		}
		names[i] = short
	}
	if last == "" {
		names = slices.Clone(d.to)
	} else {
		names[len(names)-1] += " " + last
	}
	for i := range names[1:] {
		names[i+1] = "the " + names[i+1]
	}
	return enumerated(names)
}
