// Package worklist writes the order of work as a list in plain text, to be printed
// anywhere: 78 columns, boxes to tick, and a blank for what is found; and so how all is set,
// and the ways of cables, cords and drains. The same model gives the same bytes. What is said
// of a step is shared with the page.
package worklist

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// Fact is one thing that is said of a step.
type Fact struct{ Name, Text string }

// Numbers tells the number of each step in its list, from 1, by its key; lookup only.
func Numbers(m *model.Model) map[string]int {
	out := make(map[string]int, len(m.Work))
	for i := range m.Work {
		out[m.Work[i].Key] = i + 1
	}
	return out
}

// fewLabels is how many labels of parts are still read one by one.
const fewLabels = 24

// Facts lists what is said of a step beside its title and its checks: the way of what is set,
// who looks at it, what it waits for, how long it cures, parts, screws, tools, weight and
// people, cautions.
func Facts(m *model.Model, numbers map[string]int, t *model.Task) (out []Fact) {
	add := func(name, text string) {
		if text != "" {
			out = append(out, Fact{name, text})
		}
	}
	add("way", t.Way)
	add("hold", hold(m, numbers, t))
	add("after", after(numbers, t))
	if t.Cure > 0 {
		add("cures", fmt.Sprintf("%g hours before it is loaded; the tube goes before that", t.Cure))
	}
	switch n := len(t.Parts); {
	case n > fewLabels:
		add("parts", finding.Counted(n, "piece")+", as the cut list has them")
	default:
		add("parts", strings.Join(t.Parts, ", "))
	}
	add("screws", screws(t))
	add("tools", tools(m, numbers, t))
	add("lift", lift(m, t))
	add("caution", cautions(m, numbers, t))
	return out
}

// hold tells who looks at a step, and what waits for that.
func hold(m *model.Model, numbers map[string]int, t *model.Task) string {
	if t.Hold == "" {
		return ""
	}
	var waiting []int
	for i := range m.Work {
		if slices.ContainsFunc(m.Work[i].After, func(b model.Before) bool { return b.Key == t.Key }) {
			waiting = append(waiting, numbers[m.Work[i].Key])
		}
	}
	text := t.Hold
	if len(waiting) > 0 {
		text += "; until then not " + spans(waiting)
	}
	return text + ". Local code decides"
}

// phaseOf is where a step and the first of its phase stand in the list.
func phaseOf(m *model.Model, numbers map[string]int, t *model.Task) (first, n int) {
	n = numbers[t.Key] - 1
	for first = n; first > 0 && m.Work[first-1].Phase == t.Phase; {
		first--
	}
	return first, n
}

// tools are those of a step; where an earlier step of the phase has the same, they are told
// there.
func tools(m *model.Model, numbers map[string]int, t *model.Task) string {
	first, n := phaseOf(m, numbers, t)
	i := first + slices.IndexFunc(m.Work[first:n+1], func(u model.Task) bool { return slices.Equal(u.Tools, t.Tools) })
	if i < n && len(t.Tools) > 0 {
		return "as at " + strconv.Itoa(i+1)
	}
	return strings.Join(t.Tools, "; ")
}

// cautions are those of a step; one that an earlier step of the phase has too is told
// there.
func cautions(m *model.Model, numbers map[string]int, t *model.Task) string {
	first, n := phaseOf(m, numbers, t)
	var texts []string
	var told []int
	for _, c := range t.Cautions {
		i := first + slices.IndexFunc(m.Work[first:n+1], func(u model.Task) bool { return slices.Contains(u.Cautions, c) })
		if i < n {
			told = append(told, i+1)
		} else {
			texts = append(texts, c)
		}
	}
	if len(told) > 0 {
		texts = append(texts, "As at "+spans(told)+".")
	}
	return strings.Join(texts, " ")
}

// after groups the steps that one waits for by the reason.
func after(numbers map[string]int, t *model.Task) string {
	var reasons []string
	by := map[string][]int{} // lookup only
	for _, b := range t.After {
		if by[b.Why] == nil {
			reasons = append(reasons, b.Why)
		}
		by[b.Why] = append(by[b.Why], numbers[b.Key])
	}
	texts := make([]string, len(reasons))
	for i, why := range reasons {
		texts[i] = spans(by[why]) + " (" + why + ")"
	}
	return strings.Join(texts, "; ")
}

// spans writes numbers, rising, with neighbours drawn together: "3, 5 to 8".
func spans(n []int) string {
	slices.Sort(n)
	n = slices.Compact(n)
	var out []string
	for i := 0; i < len(n); {
		j := i
		for j+1 < len(n) && n[j+1] == n[j]+1 {
			j++
		}
		switch {
		case j == i:
			out = append(out, strconv.Itoa(n[i]))
		case j == i+1:
			out = append(out, strconv.Itoa(n[i]), strconv.Itoa(n[j]))
		default:
			out = append(out, strconv.Itoa(n[i])+" to "+strconv.Itoa(n[j]))
		}
		i = j + 1
	}
	return strings.Join(out, ", ")
}

func screws(t *model.Task) string {
	texts := make([]string, len(t.Screws))
	for i, s := range t.Screws {
		name := s.Text
		if name == "" {
			name = s.Screw
		}
		texts[i] = fmt.Sprintf("%d of %s, %s", s.Count, name, s.Use)
	}
	return strings.Join(texts, "; ")
}

// light is what nobody asks the weight of, in kg.
const light = 10

func lift(m *model.Model, t *model.Task) string {
	people := finding.Counted(t.People, "person")
	if t.People != 1 {
		people = strconv.Itoa(t.People) + " people"
	}
	if t.People == 1 && t.WeightKg < light {
		return ""
	}
	if t.WeightKg == 0 {
		return people
	}
	weight := strconv.FormatFloat(t.WeightKg, 'f', 1, 64) + " kg"
	if m.Build.Unit.Imperial() {
		weight = model.Pounds(t.WeightKg)
	}
	return people + ": " + t.Lifted + ", " + weight
}
