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
	}
	at := map[size][]int{} // groups of that size; lookup only
	for i := range m.Parts {
		p := &m.Parts[i]
		if !moreThanRectangle(p) {
			continue
		}
		x, y := p.Size()
		key := size{p.Stock, x, y, len(p.Openings), len(p.Recesses), len(p.Bores), len(p.Outline)}
		if n := slices.IndexFunc(at[key], func(n int) bool { return drawnAlike(p, groups[n][0]) }); n >= 0 {
			g := at[key][n]
			groups[g] = append(groups[g], p)
			continue
		}
		at[key] = append(at[key], len(groups))
		groups = append(groups, []*model.Part{p})
	}
	return groups
}

// drawnAlike reports whether the drawings of two parts show the same. Lists that are long in many parts are
// compared first.
func drawnAlike(a, b *model.Part) bool {
	bores := func(a, b model.Bore) bool {
		a.Why, b.Why = model.Why{}, model.Why{}
		return a == b
	}
	marks := func(a, b model.Mark) bool {
		a.Why, b.Why = model.Why{}, model.Why{}
		return a == b
	}
	return slices.EqualFunc(a.Bores, b.Bores, bores) && slices.Equal(a.Outline, b.Outline) &&
		slices.EqualFunc(a.Marks, b.Marks, marks) && slices.Equal(a.Sides(), b.Sides()) &&
		reflect.DeepEqual(looksOf(a), looksOf(b))
}

// looksOf returns a part without what drawnAlike has compared, and without what its drawing does not show:
// what it is called, where it stands and why.
func looksOf(p *model.Part) model.Part {
	q := *p
	q.Bores, q.Outline, q.Marks = nil, nil, nil
	q.ID, q.Label, q.Name, q.Owner, q.Why, q.Placement = "", "", "", "", model.Why{}, geom.Placement{}
	q.Openings, q.Recesses = slices.Clone(p.Openings), slices.Clone(p.Recesses)
	for i := range q.Openings {
		q.Openings[i].Why = model.Why{}
	}
	for i := range q.Recesses {
		q.Recesses[i].ID, q.Recesses[i].Why = "", model.Why{}
	}
	return q
}
