package revision

import (
	"strconv"

	"barwright/emit/markup"
	"barwright/lang/finding"
)

// legend shows what the lines of drawings mean, and the hatching of pieces.
func (p sheet) legend(hatched bool) {
	p.Start("div", "class", "legend")
	entry := func(class, says string) {
		p.Start("span")
		p.Start("svg", "viewBox", "0 0 48 20", "aria-hidden", "true")
		if class == "missing" || class == "spare" {
			p.hatch(class, "legend-"+class, 7)
			p.El("path", "", "class", class, "d", "M2 2L46 2L46 18L2 18Z", "style", "fill:url(#legend-"+class+")")
		} else {
			p.El("path", "", "class", class, "d", "M2 10L46 10")
		}
		p.End()
		p.Text(says)
		p.End()
	}
	entry("old", "only "+p.names.Old)
	entry("new", "only "+p.names.New)
	entry("same", "both")
	if hatched {
		entry("missing", "is missing")
		entry("spare", "is to be cut away")
	}
	p.End()
}

// hatch defines slanting lines at a distance in coordinates: what is missing rises,
// what is spare falls.
func (p sheet) hatch(class, id string, apart int64) {
	side, d := markup.Itoa(apart), "M0 0L"+markup.Itoa(apart)+" "+markup.Itoa(apart)
	line := "hatch-old"
	if class == "missing" {
		line, d = "hatch-new", "M0 "+side+"L"+side+" 0"
	}
	p.Start("defs")
	p.Start("pattern", "id", id, "patternUnits", "userSpaceOnUse", "width", side, "height", side)
	p.El("path", "", "class", line, "d", d)
	p.End()
	p.End()
}

func (p sheet) viewDrawings(views []seen, same int) {
	p.legend(false)
	for _, v := range views {
		p.Start("figure", "class", "drawing", "id", v.name)
		p.Start("figcaption")
		p.El("h3", v.title)
		if v.note != "" {
			p.El("p", v.note)
		}
		p.End()
		p.Start("div", "class", "scroll", "tabindex", "0", "role", "region", "aria-label", v.title)
		v.picture.draw(p.Writer, v.title, nil)
		p.End()
		p.End()
	}
	if same > 0 {
		p.none(finding.Counted(same, "view") + " in which nothing differs: not shown.")
	}
}

func (p sheet) pieceDrawings(pieces []piece, more int) {
	p.El("p", "Each old piece under the new part, as it is to be laid; of a part that is made again, the old one of its name at the same lower left corner.", "class", "hint")
	p.legend(true)
	p.Start("div", "class", "sheets")
	for i := range pieces {
		p.pieceDrawing(&pieces[i], "p"+strconv.Itoa(i+1))
	}
	p.End()
	if more > 0 {
		p.none(finding.Counted(more, "more piece") + " not shown.")
	}
}

func (p sheet) pieceDrawing(of *piece, id string) {
	own := group{kind: of.group.kind, fates: of.fates}
	parts := p.parts(&own)
	title := ranges(parts) + ": " + p.fate(of.group.kind)
	p.Start("figure", "class", "drawing piece", "id", id)
	p.Start("figcaption")
	p.El("h3", title)
	p.El("p", called(parts)+p.from(&own))
	if len(of.group.words) == 1 {
		p.El("p", of.group.words[0], "class", "step")
	} else if len(of.group.words) > 0 {
		p.Start("ol", "class", "steps")
		for _, w := range of.group.words {
			p.El("li", w)
		}
		p.End()
	}
	p.End()
	p.Start("div", "class", "scroll")
	for i := range of.picture.layers {
		if l := &of.picture.layers[i]; l.class == "missing" || l.class == "spare" {
			l.fill = id + "-" + l.class
		}
	}
	apart := max(markup.Units(max(of.picture.bounds.X.Size(), of.picture.bounds.Y.Size()))/60, 1)
	of.picture.draw(p.Writer, title, func() {
		for _, l := range of.picture.layers {
			if l.fill != "" {
				p.hatch(l.class, l.fill, apart)
			}
		}
	})
	p.End()
	p.End()
}
