package ngc

import (
	"bufio"
	"fmt"
	"io"

	"barwright/compile/model"
)

// WriteHandSetup writes the setup sheet for the templates of a model as plain text: what
// the person who leads a router by hand needs beside them. Lengths are in the build's unit.
// Without templates it writes nothing.
func WriteHandSetup(w io.Writer, m *model.Model) error {
	if len(m.Templates) == 0 {
		return nil
	}
	s := sheet{buf: bufio.NewWriter(w), model: m, parts: m.PartsByID()}
	s.text("TEMPLATES FOR A ROUTER LED BY HAND")
	s.text(m.Build.Titled())
	s.section("Cautions", byHand[:])
	s.section("How a template is laid", laying[:])
	for i := range m.Templates {
		s.template(&m.Templates[i])
	}
	s.section("After the first recess, before the next", append([]string{inPlace}, after[1:]...))
	return s.buf.Flush()
}

// The texts below are common practice of the trade, not a standard.

var byHand = [...]string{
	"The manuals of the router and of the bit come first: how fast the bit turns, how deep it cuts, how the bush is centred.",
	"Eye and ear protection, dust extraction. No gloves, no loose sleeves near a turning bit. Both hands on the router; unplug it before the bit is touched.",
	"Cut in levels no deeper than half the bit is wide. Lower a flat bit on a slope while the router moves, or start beyond an open side; plunge straight only with a bit that is ground to do so.",
	"Go round the opening clockwise as seen from above, with the wall to the left, so that the bit pulls the guide against it: a bit that is led the other way runs off.",
	"A bearing has to run on the template at every level: lower the bit only so far at first, and never so far that the bearing leaves the board.",
	"Start and stop the router inside the opening, with the guide clear of its walls, and lift it out only when the bit stands.",
}

var laying = [...]string{
	"Write \"run side\" on it beside the edge line where the drawing has these words, and \"up\", before it leaves the table.",
	"Lay it as it is drawn, seen from above: its centre line on the mark on the wood, its edge lines on the wood's two edges, its arrow and the words \"run side\" to the edge that looks to the run. Turned half round it lies on the same lines, and the recess would be open on the wrong side.",
	"Left is left as one faces the wall from the run.",
	"Screw a batten under it against the wood's edge as a fence, in two pieces that stay clear of the opening by more than the bit is wide: the bit runs out over an open side.",
	"Clamp wood and template to the bench beside the router's base, not within its way. A strip of the same thickness as the wood under the rim keeps the board from tipping.",
	"Measure bit, bush and board: if one is not the figure below, put the measured one into the description and build again. Run it once in scrap, and lay the steel in.",
}

// inPlace stands for what the list after a program says of zero.
const inPlace = "[ ] Wood, template and fence have not moved, the bit stands out as it was set, and the wall of the opening is not worn."

func (s *sheet) template(t *model.Template) {
	show, g := s.model.Build.Plain, t.Guide
	fmt.Fprintf(s.buf, "\n%s\n", t.Name+".dxf")
	led := "bush, outside " + show(g.Bush)
	if g.Bearing > 0 {
		led = "bearing above the bit, " + show(g.Bearing)
	}
	outer := t.Outline.Bounds()
	s.row("board", fmt.Sprintf("%s, %s thick, %s x %s; no part of the build: an offcut does, and no list counts it",
		g.Board, show(t.Thickness), show(outer.X.Size()), show(outer.Y.Size())))
	s.row("guide", led)
	if g.Collar > 0 {
		s.row("", fmt.Sprintf("it stands %s out of the base; %s stay above the wood", show(g.Collar), show(t.Thickness-g.Collar)))
	}
	s.row("bit", fmt.Sprintf("flat end, diameter %s; cutting length above %s", show(g.Bit), show(t.Depth)))
	s.row("setting", fmt.Sprintf("the bit stands %s out of the base: %s of template and %s of recess", show(t.Setting()), show(t.Thickness), show(t.Depth)))
	s.row("offset", fmt.Sprintf("the opening is %s larger than the recess at each closed side", show((g.Round()-g.Bit)/2)))
	if t.Corner > 0 {
		s.row("corners", s.leftByHand(t))
	}
	for _, p := range t.Places {
		label := ""
		if part, found := s.parts[p.Part]; found {
			label = part.Label
		}
		s.row("mark", fmt.Sprintf("%s: %s from the left end, seen from the run", label, show(p.Mark)))
	}
}

// leftByHand says how round the bit leaves the corners of a recess, and what the steel
// needs there. Square ones are relieved by a machine, which no template does.
func (s *sheet) leftByHand(t *model.Template) string {
	show := s.model.Build.Plain
	kept := fmt.Sprintf("the recess keeps a radius of %s in its corners", show(t.Corner))
	recess := s.recess(t.Places[0])
	if recess.Radius > 0 {
		return kept + ", as the steel is shaped for"
	}
	text := kept + "; no template relieves them as the programs do: square them with a chisel"
	if round := t.Corner - recess.Fit; round > 0 {
		text += fmt.Sprintf(", or round the steel's corners by %s or more", show(round))
	}
	return text
}

// recess is what a template is laid on; a zero value where the model lacks it.
func (s *sheet) recess(at model.TemplatePlace) (of model.Recess) {
	if part, found := s.parts[at.Part]; found {
		for _, of = range part.Recesses {
			if of.ID == at.Recess {
				return of
			}
		}
	}
	return model.Recess{}
}
