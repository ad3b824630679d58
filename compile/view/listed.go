package view

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/filename"
)

// Pictures draws views of a build one by one, when they are asked for. Views and Sheets list them,
// in their order, as those of the functions Views and Sheets but without notes and with nothing in
// them: names, titles and parts take no drawing.
type Pictures struct {
	Views, Sheets []model.View
	draw          map[string]func() model.View // by name; lookup only
}

// Listed lists the pictures of a model that has its layouts.
func Listed(m *model.Model) *Pictures {
	p := &Pictures{Views: titled(m), draw: map[string]func() model.View{}}
	var names filename.Names
	drawings := sync.OnceValue(func() []Drawing { return Drawings(m) })
	for i := range p.Views {
		p.Views[i].Name = names.Of(strings.ToLower(p.Views[i].Name))
		p.add(p.Views[i].Name, func() model.View { return drawings()[i](Type{}) })
	}
	names = filename.Names{}
	eachSheet(m, func(l *model.Layout, k int, draw Drawing) {
		name := "sheet-" + names.Free(sheetName(l, k))
		p.Sheets = append(p.Sheets, model.View{Name: name, Title: sheetTitle(l, k)})
		p.add(name, func() model.View { return draw(Type{}) })
	})
	for i := range m.Sticks {
		p.add(m.Sticks[i].Name, func() model.View { return m.Sticks[i] })
	}
	return p
}

// add remembers what draws a view of a name. It is drawn once.
func (p *Pictures) add(name string, draw func() model.View) {
	p.draw[name] = sync.OnceValue(func() model.View {
		v := draw()
		v.Name = name
		return v
	})
}

// Draw draws the view of a name, false where there is none. It may be called at any time and by many.
func (p *Pictures) Draw(name string) (v model.View, ok bool) {
	draw, ok := p.draw[name]
	if !ok {
		return model.View{}, false
	}
	return draw(), true
}

// titled are the views of a build as Drawings lists them, each with its title and what it is called.
func titled(m *model.Model) (all []model.View) {
	add := func(name, title string) { all = append(all, model.View{Name: name, Title: title}) }
	if len(m.Room.Walls)+len(m.Runs) > 0 {
		add("plan", "Plan")
	}
	for i := range m.Runs {
		r := &m.Runs[i]
		add("elevation-"+r.Name, "Run "+r.Name)
		if slices.ContainsFunc(r.Boxes, func(b model.Box) bool { return len(b.Fronts) > 0 }) {
			add("fronts-"+r.Name, "Fronts of run "+r.Name)
		}
	}
	for i := range m.KneeWalls {
		k := &m.KneeWalls[i]
		add("knee-wall-"+k.Name, "Knee wall "+k.Name)
		for j := range kneeWallFaces {
			if f := &kneeWallFaces[j]; len(skinsOn(k, f.name)) > 0 {
				add("knee-wall-"+k.Name+"-"+f.name, "Knee wall "+k.Name+", "+f.name+" face")
			}
		}
	}
	for i := range m.KneeWalls {
		add("section-"+m.KneeWalls[i].Name, "Section through "+m.KneeWalls[i].Name)
	}
	if len(hulls(m)) > 0 {
		add("axonometric", "The whole, seen from the room")
		if !beyondReading(m) {
			all = append(all, model.View{Name: "exploded", Title: "Taken apart", Apart: true})
		}
		for _, g := range groupsOf(m) {
			all = append(all, model.View{Name: g.name, Title: g.title, Apart: true})
		}
	}
	for _, like := range drawnParts(m) {
		all = append(all, partTitled(like[0], like[1:]))
	}
	return all
}

// partTitled is the view of a part, and of those that are like it.
func partTitled(p *model.Part, alike []*model.Part) model.View {
	v := model.View{Name: "part-" + p.Label, Title: p.Label + ", " + p.Name, Part: p.ID}
	labels, names := p.Label, layout.Joined("", p.Name)
	for _, a := range alike {
		labels += ", " + a.Label
		names = layout.Joined(names, a.Name)
		v.Alike = append(v.Alike, a.ID)
		v.Title = labels + ": " + names
	}
	return v
}

func sheetTitle(l *model.Layout, k int) string {
	return fmt.Sprintf("%s, no. %d of %d", l.Stock, k+1, len(l.Blanks))
}

func sheetName(l *model.Layout, k int) string {
	return filename.With(strings.TrimPrefix(l.Stock, "sheet."), fmt.Sprintf("-%d", k+1))
}
