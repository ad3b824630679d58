package routing

import (
	"encoding/binary"
	"math"
	"strconv"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/solve"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/filename"
	"barwright/lang/finding"
)

// Routings plans the programs that each router is asked for, in the order of the routers
// and the panels. What is left out is told.
func Routings(v *values.Values, m *model.Model, findings *finding.List) (all []model.Routing) {
	sheets := map[string]bool{} // lookup only
	for i := range m.Stock.Sheets {
		sheets[m.Stock.Sheets[i].Name] = true
	}
	var names filename.Names
	for i := range m.Programs {
		names.Of(m.Programs[i].Name)
	}
	for _, block := range v.Source.Top("router") {
		r := &Request{Tool: solve.Tool(v, block), Also: alsoOf(v, block), Show: m.Build.Plain}
		if block.Attr("also") == nil || !r.sound(block, findings) {
			continue
		}
		var left []Left
		known := map[string]plan{} // by form; lookup only
		for i := range m.Parts {
			p := &m.Parts[i]
			if p.Kind != model.Panel || !sheets[p.Stock] {
				continue
			}
			form := formOf(p)
			made, ok := known[form]
			if !ok {
				made.routings, made.left = Plan(p, r)
				known[form] = made
			}
			for _, routing := range made.routings {
				routing.Name, routing.Part, routing.PartLabel = names.Of(nameOf(p, routing.Far)), p.ID, p.Label
				all = append(all, routing)
			}
			left = append(left, made.left...)
		}
		report(block, left, findings)
	}
	return all
}

// plan is what Plan returns for panels of one form.
type plan struct {
	routings []model.Routing
	left     []Left
}

// formOf tells apart panels that are not cut alike.
func formOf(p *model.Part) string {
	var form []byte
	number := func(numbers ...Length) {
		for _, n := range numbers {
			form = binary.AppendVarint(form, int64(n))
		}
	}
	flag := func(f bool) { form = strconv.AppendBool(form, f) }
	name := func(s string) {
		number(Length(len(s)))
		form = append(form, s...)
	}
	shape := func(c geom.Contour) {
		number(Length(len(c)))
		for _, v := range c {
			number(v.X, v.Y)
			form = binary.BigEndian.AppendUint64(form, math.Float64bits(v.Bulge))
		}
	}
	number(p.Thickness, Length(len(p.Openings)), Length(len(p.Recesses)))
	shape(p.Outline)
	for i := range p.Openings {
		o := &p.Openings[i]
		flag(o.Notch)
		name(o.Name)
		shape(o.Shape)
	}
	for i := range p.Recesses {
		r := &p.Recesses[i]
		flag(r.Routed)
		name(r.Name)
		shape(r.Shape)
		number(r.Depth, Length(len(r.Open)))
		for _, e := range r.Open {
			number(Length(e))
		}
	}
	for i := range p.Bores {
		b := &p.Bores[i]
		flag(b.Far)
		flag(b.Across)
		name(b.Name)
		number(b.At.X, b.At.Y, b.Diameter, b.Depth, b.Slot)
	}
	return string(form)
}

func alsoOf(v *values.Values, b *lang.Block) model.Also {
	asked := func(name string) bool { return v.Field(b, "also", name).Flag }
	tab := func(name string) Length { return v.FieldLength(b, "tabs", name) }
	return model.Also{
		Openings: asked("openings"), Outlines: asked("outlines"), Cups: asked("cups"), Pins: asked("pins"), Grooves: asked("grooves"),
		Under: v.FieldLength(b, "also", "under"), Room: v.FieldLength(b, "also", "room"),
		Tabs: model.Tabs{Width: tab("width"), Height: tab("height"), Spacing: tab("spacing"), Least: int(v.FieldNumber(b, "tabs", "least"))},
	}
}

// sound refuses settings with which nothing can be cut, by a recess that has room for all
// that can be had.
func (r *Request) sound(block *lang.Block, findings *finding.List) bool {
	tool := r.Tool
	tool.Travel, tool.Relief = model.Travel{}, "none"
	size, depth := 10*tool.Diameter, tool.Floor+tool.Stepdown
	_, refusal := router.Plan(router.Request{
		Shape: geom.R(tool.Diameter, tool.Diameter, size, size), Stock: geom.R(0, 0, size+tool.Diameter, size+tool.Diameter),
		Depth: depth, Thick: 2 * depth, Tool: tool, Show: r.Show,
	})
	if refusal == nil {
		return true
	}
	for _, f := range *findings {
		if f.Slug == refusal.Kind { // as a recess has told
			return false
		}
	}
	findings.Errorf(refusal.Kind, block.Attr("also").Expr.At, "", "%s", refusal.Text)
	return false
}
