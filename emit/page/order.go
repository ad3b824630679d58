package page

import (
	"strconv"
	"strings"

	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/emit/worklist"
)

var orderColumns = []markup.Column{markup.Figures("step"), markup.Words("what"), markup.Words("way"), markup.Words("after"),
	markup.Figures("weight, kg"), markup.Words("hands")}

// doorColumn is a further one, where the room has a doorway.
var doorColumn = markup.Words("through the doorway")

// order tells in which order things are set, and by which slides.
func (p writer) order() {
	p.section("order")
	defer p.End()
	steps := p.m.Setting.Steps
	if len(steps) == 0 {
		p.none(worklist.NoOrder)
		return
	}
	columns, door := orderColumns, false
	for i := range steps {
		door = door || steps[i].Door
	}
	if door {
		columns = append(columns[:len(columns):len(columns)], doorColumn)
	}
	p.El("p", "Left and right are as one faces the run or the wall. Boxes go in without fronts, drawers and loose shelves. "+
		"Steps are numbered as in the order of work. Any other order that keeps to what must stand before is as good.", "class", "hint")
	p.Table("What is set, by which slides, and what must stand before it", columns)
	numbers := worklist.Numbers(p.m)
	for i := range steps {
		s := &steps[i]
		p.Start("tr", "role", "row")
		cells := []string{worklist.Step(numbers, s), s.Title(), s.Way(p.m.Build.Near), afterOf(s.After), p.weight(s.WeightKg), handsOf(s)}
		if door {
			cells = append(cells, s.First())
		}
		p.Cells(columns, cells...)
		p.End()
	}
	p.EndTable()
}

// afterOf tells what must stand before, with each reason once.
func afterOf(ahead []model.Ahead) string {
	var out []string
	for i := 0; i < len(ahead); {
		var names []string
		n := i
		for ; n < len(ahead) && ahead[n].Why == ahead[i].Why; n++ {
			names = append(names, ahead[n].What)
		}
		out = append(out, strings.Join(names, ", ")+" ("+ahead[i].Why+")")
		i = n
	}
	return strings.Join(out, "; ")
}

// weight tells kg, and pounds in a build of inches; nothing where it is not known.
func (p writer) weight(kg float64) string {
	text := kilograms(kg)
	if pounds := p.pounds(kg); pounds != "" {
		text += " (" + pounds + ")"
	}
	return text
}

func handsOf(s *model.SettingStep) string {
	if s.People < 2 {
		return ""
	}
	return strconv.Itoa(s.People) + " people"
}
