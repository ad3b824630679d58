package revise

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// mostErrors is how many lines of a list are complained of.
const mostErrors = 10

// ReadMade reads the list of the pieces that have been cut for the old build, one a
// line: a label, with the size over all where it differs, banding included, and a comment
// after # (SPEC.md 12.5). Amounts without a unit are in that of the build. The error has a
// line for each wrong one: `line 3: no part of the old build has the label "CUP-L"; did you
// mean "CUPS-L"?`.
func ReadMade(r io.Reader, old *model.Model) ([]Made, error) {
	list := list{old: old, parts: map[string]*model.Part{}, seen: map[string]int{}}
	for i := range old.Parts {
		p := &old.Parts[i]
		list.parts[p.Label] = p
		list.labels = append(list.labels, p.Label)
	}
	made := []Made{} // none cut is not the same as no list
	var wrong []error
	lines := bufio.NewScanner(r)
	n := 0
	for lines.Scan() && len(wrong) < mostErrors {
		n++
		text, _, _ := strings.Cut(lines.Text(), "#")
		if text = strings.TrimSpace(strings.TrimPrefix(text, "\ufeff")); text == "" {
			continue
		}
		m, err := list.read(text, n)
		if err != nil {
			wrong = append(wrong, fmt.Errorf("line %d: %w", n, err))
			continue
		}
		made = append(made, m)
	}
	switch err := lines.Err(); {
	case errors.Is(err, bufio.ErrTooLong):
		wrong = append(wrong, fmt.Errorf("line %d is far longer than a label and a size", n+1))
	case err != nil:
		wrong = append(wrong, fmt.Errorf("after line %d: %w", n, err))
	}
	if len(wrong) > 0 {
		return nil, errors.Join(wrong...)
	}
	return made, nil
}

// list is what is known while one is read. Its maps are for lookup only.
type list struct {
	old    *model.Model
	parts  map[string]*model.Part // by label
	labels []string
	seen   map[string]int // the line of a label
}

func (l *list) read(text string, line int) (Made, error) {
	label, size := text, ""
	if at := strings.IndexAny(text, " \t"); at >= 0 {
		label, size = text[:at], strings.TrimSpace(text[at:])
	}
	part, ok := l.parts[label]
	if !ok {
		hint := ""
		if near := finding.Nearest(strings.ToUpper(label), l.labels); near != "" {
			hint = fmt.Sprintf("; did you mean %q?", near)
		}
		return Made{}, fmt.Errorf("no part of the old build has the label %q%s", label, hint)
	}
	if before := l.seen[label]; before > 0 {
		return Made{}, fmt.Errorf("%q stands in line %d already; each label is one piece", label, before)
	}
	l.seen[label] = line
	m := Made{Label: label}
	if size == "" {
		return m, nil
	}
	var err error
	if m.X, m.Y, err = l.size(size); err != nil {
		return Made{}, err
	}
	x, y := part.OverAll()
	wide, high, ok := drawn(part, m.X, m.Y)
	if !ok {
		return Made{}, fmt.Errorf("%q is %s in the old build, and %s thick; neither %s nor %s is a side of its section",
			label, l.by(x, y), l.old.Build.Show(part.Thickness), l.old.Build.Show(m.X), l.old.Build.Show(m.Y))
	}
	m.X, m.Y = wide, high
	if _, ok := m.of(part); !ok {
		return Made{}, fmt.Errorf("%q is %s in the old build; at %s it would lack what is cut in it or along its edges, "+
			"and be another piece", label, l.by(x, y), l.by(m.X, m.Y))
	}
	return m, nil
}

// section is how far a stick may be off the section that it has, measured.
const section = length.Inch / 16

// drawn gives a measured size as the part is drawn. Of a stick the length may stand first or
// second, beside either side of its section; ok is false where neither is one.
func drawn(part *model.Part, x, y model.Length) (wide, high model.Length, ok bool) {
	if part.Kind != model.Lumber {
		return x, y, true
	}
	wide, high = part.Size()
	long, across := &wide, &high
	if part.Grain == model.GrainY {
		long, across, x, y = &high, &wide, y, x
	}
	for _, way := range [...]struct{ long, across model.Length }{{x, y}, {y, x}} {
		switch {
		case length.Apart(way.across, *across) <= section:
			*long, *across = way.long, way.across
			return wide, high, true
		case length.Apart(way.across, part.Thickness) <= section:
			*long = way.long
			return wide, high, true
		}
	}
	return 0, 0, false
}

func (l *list) by(x, y model.Length) string {
	return l.old.Build.Show(x) + " x " + l.old.Build.Show(y)
}

// size reads a size over all: "23 1/4 x 34 1/2".
func (l *list) size(text string) (x, y model.Length, err error) {
	sides := strings.FieldsFunc(text, func(c rune) bool { return c == 'x' || c == 'X' || c == '×' })
	if len(sides) != 2 {
		return 0, 0, fmt.Errorf("%q is no size over all; write x and y as drawn, as in %q", text, l.example())
	}
	for i, to := range []*model.Length{&x, &y} {
		side := strings.TrimSpace(sides[i])
		amount, wrong := length.Parse(side, l.old.Build.Unit)
		switch {
		case wrong != nil:
			return 0, 0, fmt.Errorf("%q is no length: %s", side, wrong.Reason)
		case amount <= 0:
			return 0, 0, fmt.Errorf("%q is no size: a piece is longer than 0", side)
		}
		*to = amount
	}
	return x, y, nil
}

func (l *list) example() string {
	if l.old.Build.Unit.Imperial() {
		return "23 1/4 x 34 1/2"
	}
	return "590 x 876"
}

// of is the piece as it was cut: its right and its top edge lie where they were measured,
// less their banding, with the notches and recesses that reach them; all else counts from the
// left and the lower one. ok is false where something of it would lie beyond.
func (m Made) of(part *model.Part) (piece *model.Part, ok bool) {
	bounds := part.Outline.Bounds()
	e := edges{x: edge{at: bounds.X.Hi}, y: edge{at: bounds.Y.Hi}}
	x, y := part.OverAll()
	if m.X > 0 {
		e.x.by = m.X - x
	}
	if m.Y > 0 {
		e.y.by = m.Y - y
	}
	if e.x.by == 0 && e.y.by == 0 {
		return part, true
	}
	p := *part
	p.Placement.Box = p.Placement.Box.Onward(p.Placement.X, e.x.by).Onward(p.Placement.Y, e.y.by)
	p.Outline = e.moved(p.Outline)
	p.Openings = slices.Clone(p.Openings)
	for i := range p.Openings {
		p.Openings[i].Shape = e.moved(p.Openings[i].Shape)
	}
	p.Recesses = slices.Clone(p.Recesses)
	for i := range p.Recesses {
		p.Recesses[i].Shape = e.moved(p.Recesses[i].Shape)
	}
	for i := range p.Bores {
		e.x.moved(p.Bores[i].At.X, false)
		e.y.moved(p.Bores[i].At.Y, false)
	}
	return &p, !e.x.lost && !e.y.lost
}

// edges are the right and the top edge of a part.
type edges struct{ x, y edge }

// moved moves what a contour has on the edges, and the round corners that begin or end
// there as they are.
func (e *edges) moved(c geom.Contour) geom.Contour {
	out := slices.Clone(c)
	for i, v := range c {
		before, after := c[(i+len(c)-1)%len(c)], c[(i+1)%len(c)]
		ends := []geom.Point{v.Point}
		if before.Bulge != 0 {
			ends = append(ends, before.Point)
		}
		if v.Bulge != 0 {
			ends = append(ends, after.Point)
		}
		out[i].X = e.x.moved(v.X, slices.ContainsFunc(ends, func(p geom.Point) bool { return p.X >= e.x.at }))
		out[i].Y = e.y.moved(v.Y, slices.ContainsFunc(ends, func(p geom.Point) bool { return p.Y >= e.y.at }))
	}
	return out
}

// edge is where an edge lay and by how much it moved; lost where something that stays
// is not inside of it any more.
type edge struct {
	at, by model.Length
	lost   bool
}

func (e *edge) moved(place model.Length, along bool) model.Length {
	if along {
		return place + e.by
	}
	e.lost = e.lost || e.by < 0 && place >= e.at+e.by
	return place
}
