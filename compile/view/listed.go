package view

import (
	"sync"

	"barwright/compile/model"
)

// Pictures draws views of a build one by one, when they are asked for. Views and Sheets list them,
// in their order, as those of the functions Views and Sheets but without notes and with nothing in
// them.
type Pictures struct {
	Views, Sheets []model.View
	draw          map[string]func() model.View // by name; lookup only
}

// Listed lists the pictures of a model that has its layouts.
func Listed(m *model.Model) *Pictures {
	p := &Pictures{draw: map[string]func() model.View{}}
	p.Views, p.Sheets = p.listed(Drawings(m)), p.listed(SheetDrawings(m))
	for i := range m.Sticks {
		p.draw[m.Sticks[i].Name] = func() model.View { return m.Sticks[i] }
	}
	return p
}

// listed lists drawings, each of which is drawn once.
func (p *Pictures) listed(all []Titled) []model.View {
	views := make([]model.View, len(all))
	for i := range all {
		views[i] = all[i].view()
		p.draw[all[i].Name] = sync.OnceValue(func() model.View { return all[i].Draw(Type{}) })
	}
	return views
}

// Draw draws the view of a name, false where there is none. It may be called at any time and by many.
func (p *Pictures) Draw(name string) (v model.View, ok bool) {
	draw, ok := p.draw[name]
	if !ok {
		return model.View{}, false
	}
	return draw(), true
}
