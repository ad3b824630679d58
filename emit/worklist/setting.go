package worklist

import (
	"bufio"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/model"
)

// Step is the number in the order of work of the task that does a step of the order of
// setting, by the numbers of all; empty where there is no such order, as no part is made.
func Step(numbers map[string]int, s *model.SettingStep) string {
	for _, key := range s.Tasks() {
		if n := numbers[key]; n > 0 {
			return strconv.Itoa(n)
		}
	}
	return ""
}

// Setting writes what is under and behind things, what is cut to fit, and in which order all
// is set, as text. The error is the writer's.
func Setting(w io.Writer, m *model.Model) error {
	out := sheet{bufio.NewWriter(w)}
	out.wrapped("", "Setting: "+m.Build.Titled(), 0)
	out.shims(m)
	out.gaps(m)
	out.scribes(m)
	out.order(m)
	return out.Flush()
}

func (s sheet) heading(text string) {
	s.line("")
	s.line(strings.ToUpper(text))
	s.line("")
}

// entry prints what is told of one thing.
func (s sheet) entry(name string, texts []string) {
	s.wrapped("  "+name+": ", strings.Join(texts, ", "), 4)
}

func (s sheet) shims(m *model.Model) {
	f, b := &m.Room.Floor, m.Build
	s.heading("Shims")
	if len(m.Setting.Shims) == 0 {
		s.wrapped("  ", "The floor is not read: all is drawn on a level one.", 2)
		return
	}
	s.wrapped("  ", fmt.Sprintf("The datum is the highest point: under %s, %s along the first wall and %s out from it.", f.Bears, b.Near(f.Datum.X), b.Near(f.Datum.Y)), 2)
	for _, of := range grouped(m.Setting.Shims, func(s model.Shim) string { return s.Of }) {
		var texts []string
		for i := range of {
			texts = append(texts, of[i].Under+": "+thick(b, of[i].Thick, of[i].Winds, of[i].Height))
		}
		s.wrapped("  "+of[0].Words()+": ", strings.Join(texts, "; "), 4)
	}
}

// thick tells a shim, or how far something is wound out.
func thick(b model.Build, shim model.Length, winds bool, height model.Length) string {
	switch {
	case winds:
		return "wound out to " + b.Near(height)
	case shim == 0:
		return "none"
	}
	return b.Plain(shim)
}

// grouped parts a list where what it is about changes.
func grouped[T any](all []T, about func(T) string) (out [][]T) {
	for i := 0; i < len(all); {
		n := i + 1
		for n < len(all) && about(all[n]) == about(all[i]) {
			n++
		}
		out = append(out, all[i:n])
		i = n
	}
	return out
}

func (s sheet) gaps(m *model.Model) {
	if len(m.Setting.Gaps) == 0 {
		return
	}
	s.heading("Packed behind boxes, along their wall")
	for _, of := range grouped(m.Setting.Gaps, func(g model.Gap) string { return g.Box }) {
		var texts []string
		for _, g := range of {
			texts = append(texts, thick(m.Build, g.Shim, false, 0)+" at "+m.Build.Near(g.Along))
		}
		s.entry(model.BlockWords(of[0].Box), texts)
	}
}

func (s sheet) scribes(m *model.Model) {
	if !slices.ContainsFunc(m.Parts, func(p model.Part) bool { return len(p.Scribes) > 0 }) {
		return
	}
	s.heading("Cut off on site, and how far along the edge")
	for i := range m.Parts {
		for _, c := range m.Parts[i].Scribes {
			texts := make([]string, len(c.Stations))
			for k, at := range c.Stations {
				texts[k] = m.Build.Near(at.Cut) + " at " + m.Build.Near(at.Along)
			}
			s.entry(fmt.Sprintf("%s, %s edge, to the %s, from the %s edge", m.Parts[i].Label, c.Edge, strings.Replace(c.To, ".", " ", 1), c.From), texts)
		}
	}
}

// NoOrder is said where there are no steps of setting.
const NoOrder = "There is none: nothing is to be set, or no order was found or looked for."

func (s sheet) order(m *model.Model) {
	s.heading("Order of setting")
	if len(m.Setting.Steps) == 0 {
		s.wrapped("  ", NoOrder, 2)
		return
	}
	s.wrapped("", "Numbers are those of the order of work; left and right are as one faces the run or the wall.", 0)
	s.line("")
	numbers := Numbers(m)
	for i := range m.Setting.Steps {
		step := &m.Setting.Steps[i]
		text := step.Title() + ": " + step.Way(m.Build.Near)
		if first := step.First(); first != "" {
			text += "; through the doorway " + first
		}
		if step.People > 1 {
			text += "; " + strconv.Itoa(step.People) + " people"
		}
		s.numbered(Step(numbers, step), "", text)
	}
}
