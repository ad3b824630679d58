package view

import (
	"reflect"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// drawnParts returns the parts that need a drawing, those together that look the
// same in it.
func drawnParts(m *model.Model) (groups [][]*model.Part) {
	type size struct {
		stock                          string
		x, y                           Length
		openings, recesses, bores, all int
		marksAt                        Length
	}
	at := map[size][]int{} // groups of that size; lookup only
	var looks []model.Part // of each group
	for i := range m.Parts {
		p := &m.Parts[i]
		if !moreThanRectangle(p) {
			continue
		}
		look := looksOf(p)
		x, y := p.Size()
		key := size{p.Stock, x, y, len(p.Openings), len(p.Recesses), len(p.Bores), len(p.Outline), marksAt(p)}
		same := func(n int) bool {
			return slices.Equal(p.Sides(), groups[n][0].Sides()) && reflect.DeepEqual(look, looks[n])
		}
		if n := slices.IndexFunc(at[key], same); n >= 0 {
			g := at[key][n]
			groups[g] = append(groups[g], p)
			continue
		}
		at[key] = append(at[key], len(groups))
		groups, looks = append(groups, []*model.Part{p}), append(looks, look)
	}
	return groups
}

// marksAt is a number of where things are on a part: the same for parts that look the same, and seldom for others.
func marksAt(p *model.Part) (sum Length) {
	along := func(c geom.Contour) {
		for _, v := range c {
			sum += v.X + 3*v.Y
		}
	}
	along(p.Outline)
	for i := range p.Openings {
		along(p.Openings[i].Shape)
	}
	for i := range p.Recesses {
		along(p.Recesses[i].Shape)
	}
	for i := range p.Bores {
		sum += p.Bores[i].At.X + 3*p.Bores[i].At.Y
	}
	for i := range p.Marks {
		sum += p.Marks[i].From.X + 3*p.Marks[i].From.Y + 5*p.Marks[i].To.X + 7*p.Marks[i].To.Y
	}
	return sum
}

// looksOf returns a part without what its drawing does not show: what it is called,
// where it stands and why.
func looksOf(p *model.Part) model.Part {
	q := *p
	q.ID, q.Label, q.Name, q.Owner, q.Why, q.Placement = "", "", "", "", model.Why{}, geom.Placement{}
	q.Openings, q.Recesses = slices.Clone(p.Openings), slices.Clone(p.Recesses)
	q.Bores, q.Marks = slices.Clone(p.Bores), slices.Clone(p.Marks)
	for i := range q.Openings {
		q.Openings[i].Why = model.Why{}
	}
	for i := range q.Recesses {
		q.Recesses[i].ID, q.Recesses[i].Why = "", model.Why{}
	}
	for i := range q.Bores {
		q.Bores[i].Why = model.Why{}
	}
	for i := range q.Marks {
		q.Marks[i].Why = model.Why{}
	}
	return q
}
