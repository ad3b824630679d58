package page

import (
	_ "embed"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/markup"
	"barwright/lang/finding"
)

// foldScript unfolds, in the page of a large build, what holds what is looked for.
//
//go:embed fold.js
var foldScript string

// foldLook is the style of lists that fold.
//
//go:embed fold.css
var foldLook string

// shown is how a page shows what a large build has too much of.
type shown int

const (
	whole  shown = iota // all of it, and at once
	beside              // lists folded; pictures are files beside the page
	asked               // lists folded; pictures are asked for when they come in sight
)

// said tells how, below the title.
var said = [...]string{
	beside: "This is a large build: its lists are folded, and its drawings stand in files beside this page.",
	asked:  "This is a large build: its lists are folded, and its drawings are made as they come in sight.",
}

// fold writes a list, which the page of a large build folds: what it is of and what it holds stand over
// it. One that is asked for stays with the writer.
func (p writer) fold(section, title, holds string, list func(writer)) {
	if p.shown == whole {
		list(p)
		return
	}
	name := p.free("fold-" + section + "-" + title)
	p.lists[name] = list
	attrs := []string{"class", "fold", "id", name}
	if p.shown == asked {
		attrs = append(attrs, "data-asks", name)
	}
	p.Start("details", attrs...)
	p.El("summary", title+": "+holds)
	if p.shown == beside {
		list(p)
	}
	p.End()
}

// free is a name that no list has, of ASCII letters, digits, hyphens and underscores.
func (p writer) free(text string) string {
	name := strings.Map(func(r rune) rune {
		if r == '-' || r < utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsDigit(r)) {
			return r
		}
		return '_'
	}, text)
	for bare, n := name, 2; p.lists[name] != nil; n++ {
		name = bare + "-" + strconv.Itoa(n)
	}
	return name
}

// drawing writes a view: its picture, or where the script is to put it. Pictures beside the page are
// linked where they are named.
func (p writer) drawing(v *model.View, class string) {
	switch {
	case p.shown == whole, p.shown == beside && p.files[v.Name] == "":
		drawing(p.Writer, v, class)
	case p.shown == asked:
		p.Start("figure", "class", class, "id", v.Name, "data-asks", v.Name)
		p.Start("figcaption")
		p.El("h3", v.Title)
		attrs := []string{"class", "hint"}
		if v.Part != "" {
			attrs = append(attrs, "data-part", v.Part)
		}
		if len(v.Alike) > 0 {
			attrs = append(attrs, "data-alike", strings.Join(v.Alike, " "))
		}
		p.El("p", "Drawn when it comes in sight.", attrs...)
		p.End()
		p.End()
	}
}

// at is where a view is to be seen.
func (p writer) at(name string) string {
	if file := p.files[name]; p.shown == beside && file != "" {
		return file
	}
	return "#" + name
}

// views lists views by their titles.
func (p writer) views(views []model.View, listed func(*model.View) bool) {
	p.Start("ul", "class", "views")
	for i := range views {
		if v := &views[i]; listed(v) {
			p.Start("li")
			p.El("a", v.Title, "href", p.at(v.Name))
			p.End()
		}
	}
	p.End()
}

// Lists are the folded lists of the page of a large build that are asked for; none where it has them.
type Lists struct{ p writer }

// Write writes the list of a name, and reports whether there is one. The error is the writer's.
func (l Lists) Write(w io.Writer, name string) (found bool, err error) {
	list, found := l.p.lists[name]
	if !found {
		return false, nil
	}
	p := l.p
	p.Writer = markup.New(w)
	list(p)
	return true, p.Close()
}

// WritePicture writes a view as the page has it, for one that asks for it. The error is the writer's.
func WritePicture(w io.Writer, v *model.View) error {
	class := "drawing"
	if v.Part != "" {
		class += " part"
	}
	m := markup.New(w)
	drawing(m, v, class)
	return m.Close()
}

// lot is some of the parts of a build, by their indices, and the views that show them.
type lot struct {
	title string
	parts []int
	views []*model.View
}

// lots are the parts as they are folded, by the runs and knee walls whose frames they lie in; those of a
// page that folds nothing are one.
func (p writer) lots() []lot {
	all := make([]lot, 1)      // last of those that lie in no such frame
	at := map[geom.Frame]int{} // of all; lookup only
	of := map[string]int{}     // by the ID of a part; lookup only
	add := func(f geom.Frame, what string) {
		if n, ok := at[f]; ok {
			all[n].title += " and " + what
			return
		}
		at[f] = len(all)
		all = append(all, lot{title: finding.Capital(what)})
	}
	if p.shown != whole {
		all[0].title = "Other parts"
		for i := range p.m.Runs {
			add(p.m.Runs[i].Frame, "run "+p.m.Runs[i].Name)
		}
		for i := range p.m.KneeWalls {
			add(p.m.KneeWalls[i].Frame, "knee wall "+p.m.KneeWalls[i].Name)
		}
	}
	for i := range p.m.Parts {
		n := at[p.m.Parts[i].Placement.Frame]
		all[n].parts = append(all[n].parts, i)
		of[p.m.Parts[i].ID] = n
	}
	for i := range p.m.Views {
		if v := &p.m.Views[i]; v.Part != "" {
			all[of[v.Part]].views = append(all[of[v.Part]].views, v)
		}
	}
	all = append(all[1:], all[0])
	return slices.DeleteFunc(all, func(l lot) bool { return len(l.parts) == 0 })
}

// byStock parts a cut list as it is folded, by stocks, which follow each other in it.
func (p writer) byStock(cuts []model.Cut) (all [][]model.Cut) {
	if p.shown == whole {
		return [][]model.Cut{cuts}
	}
	for len(cuts) > 0 {
		n := slices.IndexFunc(cuts, func(c model.Cut) bool { return c.Stock != cuts[0].Stock })
		if n < 0 {
			n = len(cuts)
		}
		all, cuts = append(all, cuts[:n]), cuts[n:]
	}
	return all
}
