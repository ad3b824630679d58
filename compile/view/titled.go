package view

import (
	"strings"

	"barwright/compile/model"
	"barwright/lang/filename"
)

// Head is what is known of a view before it is drawn, as model.View has it.
type Head struct {
	Name, Title, Part string
	Alike             []string
	Apart             bool
}

// view is one with this head and nothing in it.
func (h *Head) view() model.View { return h.over(model.View{}) }

// over puts the head over what is drawn.
func (h *Head) over(v model.View) model.View {
	v.Name, v.Title, v.Part, v.Alike, v.Apart = h.Name, h.Title, h.Part, h.Alike, h.Apart
	return v
}

// Titled is what draws a view, which then has its head.
type Titled struct {
	Head
	Draw Drawing
}

func titled(h Head, draw Drawing) Titled {
	return Titled{h, func(as Type) model.View { return h.over(draw(as)) }}
}

// titles are the views of a build as they come, with names that differ.
type titles struct {
	all   []Titled
	names filename.Names
}

func (t *titles) add(h Head, draw Drawing) {
	h.Name = t.names.Of(strings.ToLower(h.Name))
	t.all = append(t.all, titled(h, draw))
}
