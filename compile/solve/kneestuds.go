package solve

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/spacing"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// placeStuds sets studs on centres, clear of what is in their way.
func (s *solver) placeStuds(k *knee, steel *steelwork) bool {
	ask := spacing.Studs{
		Stretch: k.wall.Framing.U, Spacing: s.Length(k.block, "spacing"), Thickness: k.thick,
		FromRight: s.Text(k.block, "studs_from") == "right", Mark: s.Marks,
	}
	bare, _ := spacing.OnCentres(ask)
	if steel != nil {
		for i, c := range steel.centres {
			ask.Closed = append(ask.Closed, spacing.Closed{Span: steel.about(c).Grow(k.thick / 2), By: "support " + strconv.Itoa(i+1)})
		}
	}
	ask.Closed = append(ask.Closed, k.outlets(k.thick/2)...)
	placed, refusal := spacing.OnCentres(ask)
	if refusal != nil {
		s.Findings.Errorf("no-place-for-stud", k.block.Head, "a wider spacing, or what is in the way further apart",
			"Studs cannot keep to %s between centres. %s", s.Show(ask.Spacing), refusal.Text(s.Show))
		return false
	}
	k.wall.Studs = placed.Centres
	s.tellUneven(k, "studs-moved", k.block.Head, "stud", placed.Forced, len(placed.Centres)-len(bare.Centres))
	return true
}

// outlets are closed to what reaches so far to either side of its centre.
func (k *knee) outlets(half length.Length) []spacing.Closed {
	var out []spacing.Closed
	for _, o := range k.wall.Outlets {
		span := o.Box.U
		if o.Clear.U.Size() > 0 {
			span = span.Union(o.Clear.U)
		}
		out = append(out, spacing.Closed{Span: span.Grow(half), By: "outlet " + o.Name})
	}
	return out
}

// mostTold bounds how many moved things one finding lists.
const mostTold = 6

// tellUneven notes what stands elsewhere than the rule alone would put it.
func (s *solver) tellUneven(k *knee, slug string, at source.Range, what string, forced []spacing.Forced, more int) {
	if len(forced) == 0 {
		return
	}
	text, by := "Not where even spacing alone would put them", ""
	for i, f := range forced {
		k.wall.Uneven = append(k.wall.Uneven, model.Uneven{What: what + " " + strconv.Itoa(f.Index+1), By: f.By, Off: f.Off})
		switch {
		case i == mostTold:
			text += fmt.Sprintf(", and %d more", len(forced)-i)
		case i > mostTold:
		case f.By != by:
			text += fmt.Sprintf("; because of %s: %s %d by %s to the %s", f.By, what, f.Index+1, s.Show(max(f.Off, -f.Off)), side(f.Off))
		default:
			text += fmt.Sprintf(", %s %d by %s to the %s", what, f.Index+1, s.Show(max(f.Off, -f.Off)), side(f.Off))
		}
		by = f.By
	}
	text = strings.Replace(text, ";", ",", 1) + "."
	if more > 0 {
		text += fmt.Sprintf(" That takes %s more.", finding.Counted(more, what))
	}
	s.Findings.Notef(slug, at, "%s", text)
}

func side(off length.Length) string {
	if off < 0 {
		return "left"
	}
	return "right"
}

func (s *solver) studParts(k *knee) {
	f, z := k.wall.Framing, k.studSpan()
	for i, c := range k.wall.Studs {
		n := strconv.Itoa(i + 1)
		s.lumber(k.block, k.stick, k.wall.Frame, geom.Box{U: k.stud(c), V: f.V, Z: z},
			piece{id: "stud-" + n, code: "S" + n, name: "stud " + n, out: front, face: "work side"})
	}
}

// screwLines tells where screws from inside the cabinets find the studs, and
// draws each on the cabinet's back. Beside a side no driver gets at one.
func (s *solver) screwLines(k *knee) {
	for i, c := range k.wall.Studs {
		for _, box := range k.run.Boxes {
			if box.Kind != model.Cabinet || !box.Inside.U.Grow(-driver).Holds(c) {
				continue
			}
			z := box.Inside.Z.Intersect(k.studSpan())
			if z.Size() <= 0 {
				continue
			}
			k.wall.Lines = append(k.wall.Lines, model.ScrewLine{Stud: i + 1, Box: box.Name, FromLeft: c - box.Inside.U.Lo, Z: z})
			s.markLine(s.partOf(s.Block("cabinet."+box.Name), "back"), "stud "+strconv.Itoa(i+1), c, z, k.wall.Why)
		}
	}
}

// markLine draws an upright line on the face of a part, as far as the part
// reaches.
func (s *solver) markLine(part int, name string, u length.Length, z geom.Span, w model.Why) {
	p := &s.m.Parts[part]
	z = z.Intersect(p.Placement.Box.Z)
	p.Marks = append(p.Marks, model.Mark{Name: name, From: on(p, u, 0, z.Lo), To: on(p, u, 0, z.Hi), Why: w})
}
