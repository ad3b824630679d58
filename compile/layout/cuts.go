package layout

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// Cuts groups the parts into the lines of a cut list. Parts share a line that
// are the same piece of wood or steel: same kind, stock, thickness, grain,
// outline, openings and recesses, whatever these are called. Lines are ordered
// by kind, stock, falling thickness, length and width, and label; the parts of
// a line keep their order. Names that differ in more than a number at their end
// are joined with commas.
func Cuts(parts []model.Part) []model.Cut {
	var cuts []model.Cut
	line := map[string]int{} // of a piece its index in cuts; lookup only
	for i := range parts {
		p := &parts[i]
		id := identity(p)
		at, known := line[id]
		if !known {
			at = len(cuts)
			line[id] = at
			long, wide, _ := along(p)
			thick := p.Thickness
			if p.Kind == model.Lumber { // as it is sold, whichever face is drawn
				wide, thick = max(wide, thick), min(wide, thick)
			}
			cuts = append(cuts, model.Cut{
				Stock: p.Stock, Kind: p.Kind, Length: long, Width: wide, Thickness: thick, Grain: p.Grain,
				Banded: p.Banded(), Good: p.Good, Face: p.Face,
			})
		}
		c := &cuts[at]
		c.Count++
		c.Parts = append(c.Parts, p.Label)
		c.Name = Joined(c.Name, p.Name)
		if !slices.Contains(c.Where, p.Owner) {
			c.Where = append(c.Where, p.Owner)
		}
	}
	slices.SortStableFunc(cuts, func(a, b model.Cut) int {
		return cmp.Or(cmp.Compare(a.Kind, b.Kind), cmp.Compare(a.Stock, b.Stock),
			cmp.Compare(b.Thickness, a.Thickness), cmp.Compare(b.Length, a.Length),
			cmp.Compare(b.Width, a.Width), cmp.Compare(a.Parts[0], b.Parts[0]))
	})
	return cuts
}

// Joined adds a part's name to a list of names, once. A number at its end is
// dropped: "stud 3" is a stud.
func Joined(names, name string) string {
	if kind := strings.TrimRight(name, "0123456789"); strings.HasSuffix(kind, " ") {
		name = strings.TrimSpace(kind)
	}
	if names == "" || slices.Contains(strings.Split(names, ", "), name) {
		return cmp.Or(names, name)
	}
	return names + ", " + name
}

// identity spells out all that makes a part the piece it is.
func identity(p *model.Part) string {
	b := []byte(strconv.Quote(p.Stock))
	b = appendInts(b, int64(p.Kind), int64(p.Grain), int64(p.Thickness), int64(p.Good))
	b = appendContour(b, p.Outline)
	var features []string
	for _, o := range p.Openings {
		if !o.Notch { // the outline tells of a notch
			features = append(features, string(appendContour([]byte("opening"), o.Shape)))
		}
	}
	for _, r := range p.Recesses {
		f := appendInts([]byte("recess"), int64(r.Depth), int64(r.Radius))
		features = append(features, string(appendContour(f, r.Shape)))
	}
	for i := range p.Bores {
		bore := &p.Bores[i]
		what := "bore"
		if bore.Behind() {
			what = "far bore"
		}
		f := appendInts([]byte(what), int64(bore.Depth), int64(bore.Sink))
		features = append(features, string(appendContour(f, bore.Shape())))
	}
	for _, band := range p.Bands {
		f := appendInts([]byte("band"), int64(band.Edge), int64(band.Thickness))
		features = append(features, strconv.Quote(band.Stock)+string(f))
	}
	slices.Sort(features)
	return string(b) + strings.Join(features, "")
}

func appendInts(b []byte, ns ...int64) []byte {
	for _, n := range ns {
		b = strconv.AppendInt(append(b, ' '), n, 10)
	}
	return b
}

// appendContour spells a contour from its lowest, then leftmost corner on, so
// that it does not matter where it was begun.
func appendContour(b []byte, c geom.Contour) []byte {
	first := c.Lowest()
	b = append(b, " ("...)
	for i := range c {
		v := c[(first+i)%len(c)]
		b = appendInts(b, int64(v.X), int64(v.Y))
		if v.Bulge != 0 { // a reversed contour has negative zeros
			b = strconv.AppendFloat(append(b, ' '), v.Bulge, 'f', -1, 64)
		}
		b = append(b, ',')
	}
	return append(b, ')')
}
