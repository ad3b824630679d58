package work

import (
	"cmp"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Carry returns what everything must pass on its way in, and where sheets and sticks are
// cut for that where they are bought. Each cut goes from edge to edge of a piece and
// through no part, until all pieces pass. A part that does not pass whole is found, and so is a
// sheet that has no such cut, as parts may lie on it for a table.
func Carry(b *rule.Build) (way model.Carry, cuts []model.Rough) {
	c := carrier{kerf: b.Saw.Kerf, places: map[string]source.Range{}}
	for _, room := range b.Source.Top("room") {
		for _, door := range room.Inner("doorway") {
			c.way.Doorway = b.Length(door, "height")
			c.places["doorway"] = door.Attr("height").Expr.At
		}
	}
	for _, block := range b.Source.Top("carry") {
		c.way.CarLength, c.way.CarWidth = pair(b.Lengths(block, "car"))
		c.way.StairLength, c.way.StairWidth = pair(b.Lengths(block, "stair"))
		for _, a := range block.Attrs {
			high := b.Length(block, "doorway")
			switch {
			case a.Name != "doorway":
				c.places[a.Name] = a.Expr.At
			case c.way.Doorway == 0 || high < c.way.Doorway:
				c.way.Doorway, c.places[a.Name] = high, a.Expr.At
			}
		}
	}
	tooLarge := c.tooLarge(b)
	for i := range b.Layouts {
		rough := c.layout(&b.Layouts[i], tooLarge)
		stuck := func(r model.Rough) bool {
			return slices.ContainsFunc(r.Pieces, func(p geom.Rect) bool { return !c.passes(p) })
		}
		if first := slices.IndexFunc(rough, stuck); first >= 0 {
			all, uncut := len(rough), rough[first]
			rough = slices.DeleteFunc(rough, stuck)
			c.tellUncut(b, &uncut, all-len(rough)-1)
		}
		cuts = append(cuts, rough...)
	}
	return c.way, cuts
}

// pair is the longer and the shorter of two lengths, in this order.
func pair(l []length.Length) (longer, shorter length.Length) {
	if len(l) != 2 {
		return 0, 0
	}
	return max(l[0], l[1]), min(l[0], l[1])
}

type carrier struct {
	way    model.Carry
	kerf   length.Length
	places map[string]source.Range // where each of them is said; lookup only
}

// most is what a flat piece may measure for one thing that it passes; 0 where any does.
type most struct {
	at              string // "car"
	longer, shorter length.Length
}

func (c *carrier) limits() [3]most {
	return [...]most{{"car", c.way.CarLength, c.way.CarWidth}, {"doorway", 0, c.way.Doorway}, {"stair", c.way.StairLength, c.way.StairWidth}}
}

// over is by how much a piece is too large; 0 where it passes.
func (m most) over(x, y length.Length) (by length.Length) {
	if m.longer > 0 {
		by = max(by, max(x, y)-m.longer)
	}
	if m.shorter > 0 {
		by = max(by, min(x, y)-m.shorter)
	}
	return by
}

// over is by how much a piece is too large for one of them at most; 0 where it passes all.
func (c *carrier) over(r geom.Rect) (by length.Length) {
	for _, m := range c.limits() {
		by = max(by, m.over(r.X.Size(), r.Y.Size()))
	}
	return by
}

func (c *carrier) passes(r geom.Rect) bool { return c.over(r) == 0 }

// tooLarge finds parts that are too large to be brought in whole; each thing that stops
// some is told once, with the part that misses by most. For lookup only, by ID.
func (c *carrier) tooLarge(b *rule.Build) map[string]bool {
	found := map[string]bool{}
	for _, m := range c.limits() {
		worst, over, others := (*model.Part)(nil), length.Length(0), -1
		for i := range b.Parts {
			p := &b.Parts[i]
			by := m.over(flat(p))
			if by <= 0 {
				continue
			}
			found[p.ID] = true
			others++
			if by > over {
				worst, over = p, by
			}
		}
		if worst != nil {
			m.tell(b, c.places[m.at], worst, over, others)
		}
	}
	return found
}

// flat is a part's size as something flat: a stick or a bar has its length only.
func flat(p *model.Part) (x, y length.Length) {
	x, y = p.Size()
	if p.Kind == model.Lumber || p.Kind == model.Steel {
		return max(x, y), 0
	}
	return x, y
}

// lets says what passes: "8 ft 0 in x 4 ft 0 in", "6 ft 8 in on edge".
func (m most) lets(b *rule.Build) string {
	if m.longer == 0 {
		return b.Model.Build.Plain(m.shorter) + " on edge"
	}
	return b.Model.Build.Plain(m.longer) + " x " + b.Model.Build.Plain(m.shorter)
}

func (m most) tell(b *rule.Build, place source.Range, p *model.Part, over length.Length, others int) {
	x, y := flat(p)
	is := b.Model.Build.Plain(max(x, y)) + " x " + b.Model.Build.Plain(min(x, y))
	if y == 0 {
		is = b.Model.Build.Plain(x) + " long"
	}
	f := b.Findings.Warnf("will-not-pass", place, "a seam or a smaller box, so that no piece is larger; or another way in",
		"%s, %s of %s, is %s; the %s lets %s through: %s too much. No rough cut helps, for it would go through the part.%s",
		p.Label, p.Named(), p.Owner, is, m.at, m.lets(b), b.Model.Build.Plain(over), finding.Others(others, " So is another part.", " So are %d other parts."))
	f.Also(p.Why.At, "the part is asked for here")
}

// tellUncut finds a sheet that still does not pass, with the piece that misses by most, and so many
// others. None of them is cut.
func (c *carrier) tellUncut(b *rule.Build, first *model.Rough, others int) {
	worst := slices.MaxFunc(first.Pieces, func(p, q geom.Rect) int { return cmp.Compare(c.over(p), c.over(q)) })
	limits, x, y := c.limits(), worst.X.Size(), worst.Y.Size()
	m := slices.MaxFunc(limits[:], func(p, q most) int { return cmp.Compare(p.over(x, y), q.over(x, y)) })
	show := b.Model.Build.Plain
	b.Findings.Warnf("will-not-pass", c.places[m.at], `way = "guillotine" in the table, or another way in`,
		"Sheet %d of %s, as it is laid out for the table, has a piece of %s x %s that no cut from edge to edge parts; the %s lets %s through: %s too much.%s",
		first.Blank, first.Stock, show(max(x, y)), show(min(x, y)), m.at, m.lets(b), show(m.over(x, y)),
		finding.Others(others, " So it is with another sheet.", " So it is with %d other sheets."))
}

// layout parts the blanks of a layout that are bought and do not pass. A blank with a part that is
// too large itself is left: that is told of the part.
func (c *carrier) layout(l *model.Layout, tooLarge map[string]bool) (out []model.Rough) {
	for i := range l.Blanks {
		blank := &l.Blanks[i]
		var parts []geom.Rect
		stuck := false
		for _, p := range blank.Placed {
			parts, stuck = append(parts, p.At), stuck || tooLarge[p.Part]
		}
		whole := geom.R(0, 0, blank.Length, blank.Width)
		if stuck || blank.Own || c.passes(whole) {
			continue
		}
		r := model.Rough{Stock: l.Stock, Blank: i + 1}
		c.part(&r, whole, parts)
		out = append(out, r)
	}
	return out
}

// part cuts a piece until all that has a part in it passes. What is left over without a
// part may be cut anywhere, or left there.
func (c *carrier) part(r *model.Rough, of geom.Rect, parts []geom.Rect) {
	if len(parts) == 0 {
		return
	}
	if c.passes(of) {
		r.Pieces = append(r.Pieces, of)
		return
	}
	cut, ok := c.best(of, parts)
	if !ok {
		r.Pieces = append(r.Pieces, of)
		return
	}
	r.Cuts = append(r.Cuts, cut)
	near, far := c.halves(of, cut)
	here, there := parted(near, parts)
	c.part(r, near, here)
	c.part(r, far, there)
}
