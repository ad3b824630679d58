package work

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// bring has things ordered, cut to be carried, and measured as they came.
func (o *order) bring() {
	o.do(model.Task{Key: "order", Phase: bringing, Title: "Change the description to what was measured, build again, and order by the bill",
		After: each("what is ordered is cut to these figures", o.in(measuring)...)})
	o.roughCuts()
	t := model.Task{Key: "measured", Phase: bringing, Title: "Measure what came, in three places each; where it differs, change the description and build again",
		Tools: []string{"calliper", "tape"}, After: each("it must be there", "order", "rough")}
	for i := range o.Layouts {
		l := &o.Layouts[i]
		t.About = append(t.About, l.Stock)
		block := o.Block(l.Stock)
		what, figure := "thickness", o.plain(o.Length(block, "thickness"))
		if l.Width == 0 {
			what = "thickness and width"
			figure += " by " + o.plain(o.Length(block, "width"))
		}
		t.Checks = append(t.Checks, model.Check{What: what + " of " + o.sold(l.Stock), Figure: figure})
	}
	for i := range o.Slabs {
		s := &o.Slabs[i]
		t.About = append(t.About, s.Key())
		t.Checks = append(t.Checks, model.Check{What: "thickness of " + s.Words(), Figure: o.plain(s.Box.Z.Size())})
	}
	o.do(t)
}

func (o *order) roughCuts() {
	t := model.Task{
		Key: "rough", Phase: bringing,
		Title: "Have sheets and sticks cut where they are bought, so that they can be carried in; the saw's cut lies beyond the line",
		Tools: []string{"the yard's panel saw, or a circular saw along a rail"}, Cautions: []string{sawing},
		After: each("it is cut where it is bought", "order"),
	}
	for i := range o.Rough {
		r := &o.Rough[i]
		if !slices.Contains(t.About, r.Stock) {
			t.About = append(t.About, r.Stock)
		}
		for n, c := range r.Cuts {
			from := "across, from the left end"
			if c.Along {
				from = "along, from the lower edge"
			}
			t.Checks = append(t.Checks, model.Check{What: fmt.Sprintf("%s, no. %d, cut %d, %s", o.sold(r.Stock), r.Blank, n+1, from), Figure: o.near(c.At)})
		}
	}
	if len(t.Checks) > 0 {
		o.do(t)
	}
}

// cut has the parts of each stock cut, in the order of the layouts.
func (o *order) cut() {
	for i := range o.Layouts {
		l := &o.Layouts[i]
		parts := o.which(func(p *model.Part) bool { return p.Stock == l.Stock })
		t := model.Task{
			Key: "cut." + l.Stock, Phase: cutting, About: []string{l.Stock}, Parts: labels(parts),
			Title: fmt.Sprintf("Cut %s from %s of %s, and label each", finding.Counted(l.Pieces, "piece"), finding.Counted(len(l.Blanks), bought(l)), o.sold(l.Stock)),
			After: each("thicknesses may change what is cut", "measured"), Cautions: []string{sawing},
		}
		switch {
		case l.Kind == model.Panel:
			t.Tools = []string{"table saw, or circular saw along a rail", "tape", "square", "labels"}
			if l.Free {
				t.Tools = []string{"cutting table", "labels"}
			}
			o.lift(&t, o.weight(l.Stock, l.Length, l.Width, o.Length(o.Block(l.Stock), "thickness")), "a whole sheet")
		case l.Kind == model.Steel:
			t.Title += "; drill it and file its edges"
			t.Tools = []string{"metal saw, or angle grinder", "drill press", "centre punch", "cutting oil", "file"}
			t.Cautions = []string{steel}
			o.pieces(&t, parts)
			o.lift(&t, o.weight(l.Stock, l.Length, o.Length(o.Block(l.Stock), "width"), o.Length(o.Block(l.Stock), "thickness")), "a whole bar")
		default:
			t.Tools = []string{"mitre saw", "tape", "labels"}
			o.pieces(&t, parts)
		}
		o.do(t)
	}
}

// sold is what a stock is asked for as.
func (o *order) sold(stock string) string {
	for _, s := range o.Stock.Sheets {
		if s.Name == stock {
			return s.Text
		}
	}
	for _, s := range o.Stock.Sticks {
		if s.Name == stock {
			return s.Text
		}
	}
	return stock
}

func bought(l *model.Layout) string {
	switch l.Kind {
	case model.Panel:
		return "sheet"
	case model.Steel:
		return "bar"
	}
	return "stick"
}

// panels has panels grooved, opened and bored, and their edges banded.
func (o *order) panels() {
	worked := o.which(func(p *model.Part) bool {
		return p.Kind == model.Panel && (len(p.Openings)+len(p.Recesses)+len(p.Bores) > 0)
	})
	t := model.Task{Key: "panels", Phase: making, Title: "Cut grooves, openings and holes in the panels", Parts: labels(worked),
		Tools: []string{"router", "jigsaw", "drill, with stops"}, Cautions: []string{sawing}, Checks: o.bored(),
		After: append(each("from the edges that were cut", cutOf(worked)...), each("the ways are agreed to", "site.ways")...)}
	if len(o.Routings) > 0 {
		t.Tools = append([]string{"router bench, with the programs of its table"}, t.Tools...)
	}
	if len(worked) > 0 {
		o.do(t)
	}
	banded := o.which(func(p *model.Part) bool { return len(p.Bands) > 0 })
	if len(banded) > 0 {
		o.do(model.Task{Key: "bands", Phase: making, Title: "Band the edges that are seen", Parts: labels(banded),
			Tools: []string{"iron or edge bander", "edge trimmer", "sanding block"},
			After: append(each("its bare edge is what is banded", cutOf(banded)...), each("openings and notches end at bare edges", "panels")...)})
	}
}

// recesses has recesses for steel routed, the test piece first.
func (o *order) recesses() {
	var parts []*model.Part
	test := false
	for i := range o.Programs {
		p := &o.Programs[i]
		test = test || p.Test
		if part := o.Part(p.Part); !p.Test && !slices.Contains(parts, part) {
			parts = append(parts, part)
		}
	}
	if len(parts) == 0 {
		return
	}
	tools := []string{"router bench, with its programs"}
	if len(o.Templates) > 0 {
		tools = append(tools, "or hand router, with the templates")
	}
	if test {
		steel := o.which(func(p *model.Part) bool { return p.Kind == model.Steel })
		o.do(model.Task{Key: "recess.test", Phase: cutting, Title: "Rout the test piece in scrap and try the steel in it: flush, and no play",
			Tools: tools, Cautions: []string{sawing},
			After: append(each("scrap of the same wood", cutOf(parts)...), each("the steel is tried in it", cutOf(steel)...)...)})
	}
	o.do(model.Task{Key: "recess", Phase: cutting, Title: "Rout the recesses for the steel", Parts: labels(parts), Tools: tools, Cautions: []string{sawing},
		After: append(each("what is routed must be cut", cutOf(parts)...), each("depth and fit are tried in scrap", "recess.test")...)})
}

// assemble has boxes and drawers made, and finished before they are mounted.
func (o *order) assemble() {
	drivers := []string{"drill driver", "clamps", "square", "glue"}
	for _, box := range o.Boxes(model.Cabinet) {
		made := o.made[box.Key()]
		parts := made.parts
		t := model.Task{Key: "box." + box.Key(), Phase: making, Title: title("make " + box.Words() + ", square: both diagonals alike"),
			About: []string{box.Key()}, Parts: labels(parts), Tools: drivers,
			After:  append(each("its parts", cutOf(parts)...), each("its parts are worked before they are joined", "panels", "bands")...),
			Screws: o.screws("to make "+box.Words(), "to hold the back of "+box.Words())}
		o.lift(&t, made.kg, box.Words()+", without fronts and loose shelves")
		o.do(t)
		drawers := slices.DeleteFunc(slices.Clone(o.PartsOf(box.Key())), func(p *model.Part) bool { return !p.Is("cabinet", "drawer") })
		if len(drawers) > 0 {
			o.do(model.Task{Key: "drawers." + box.Key(), Phase: making, Title: "Make the drawers of " + box.Words(), About: []string{box.Key()},
				Parts: labels(drawers), Tools: drivers,
				After: append(each("their parts", cutOf(drawers)...), each("their parts are worked before they are joined", "panels", "bands")...)})
		}
	}
	o.finish()
}

// finish has what is seen finished while all its faces can be reached.
func (o *order) finish() {
	const why = "what is joined, banded and bored is finished last"
	seen := o.which(func(p *model.Part) bool { return p.Kind == model.Panel && p.Good != model.GoodNone })
	before := o.in(making)
	if len(seen) > 0 {
		o.do(model.Task{Key: "finish", Phase: making, Title: "Sand and finish what is seen, edges too, and let it dry as the can says", Parts: labels(seen),
			Tools: []string{"sander", "brush or roller"}, After: each(why, before...)})
	}
	wood := o.which(func(p *model.Part) bool {
		return p.Kind == model.SlabPiece && strings.HasPrefix(p.Stock, "slab.") && o.Text(o.Block(p.Stock), "material") == "wood"
	})
	if len(wood) > 0 {
		t := model.Task{Key: "finish.slabs", Phase: making, Title: "Finish the slabs, with as many coats below as above, or they bow", Parts: labels(wood),
			Tools: []string{"sander", "brush or cloth"}, After: each("they are measured first", "measured"), Cautions: []string{lifting}}
		o.pieces(&t, wood)
		o.do(t)
	}
}

// position tells where a thing begins.
func (o *order) position(what string, at length.Length) model.Check {
	return model.Check{What: what, Figure: o.near(at)}
}
