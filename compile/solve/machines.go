package solve

import (
	"cmp"

	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
)

// table reads how the shop wants its files, or the defaults of the schema where
// no table is described.
func (s *solver) table() {
	all := model.Written{Openings: true, Recesses: true, Bores: true, Marks: true}
	s.m.Table = model.Table{Notes: true, Stated: true, Files: "each", Origin: "lower_left", Relief: "none", Write: all}
	for _, b := range s.Source.Top("table") {
		name := func(kind string) string { return s.Field(b, "layers", kind).Text }
		s.m.Table = model.Table{
			R2000: s.Text(b, "format") == "r2000", Notes: s.Flag(b, "notes"), Stated: s.Flag(b, "unit_stated"),
			Layers: model.LayerNames{
				Edge: name("edge"), Opening: name("opening"), Recess: name("recess"),
				Bore: name("bore"), Through: name("through"), Mark: name("mark"), Note: name("note"), Sheet: name("sheet"), Scribe: name("scribe"),
			},
			Inch: s.Text(b, "unit") == "in", Files: s.Text(b, "files"), Write: all,
			Drawings: s.Flag(b, "drawings"), Depths: s.Flag(b, "depths"), Mirrored: s.Flag(b, "mirrored"), Origin: s.Text(b, "origin"),
			Flatten: s.Length(b, "flatten"), Relief: s.Text(b, "relief"), Bit: s.Length(b, "bit"), Overrun: s.Length(b, "overrun"), Small: s.Length(b, "small"),
			Free: s.Text(b, "way") == "free", Spacing: s.Length(b, "spacing"), Margin: s.Length(b, "margin"),
		}
		if !s.Has(b, "spacing") {
			s.m.Table.Spacing = cmp.Or(s.m.Table.Bit, s.m.Saw.Kerf)
		}
		if !s.Has(b, "margin") {
			s.m.Table.Margin = s.m.Saw.Trim
		}
		if b.Attr("write") != nil {
			flag := func(kind string) bool { return s.Field(b, "write", kind).Flag }
			s.m.Table.Write = model.Written{Openings: flag("openings"), Recesses: flag("recesses"), Bores: flag("bores"), Marks: flag("marks")}
		}
	}
}

// Tool reads a router for who judges it, defaults included.
func Tool(v *values.Values, b *lang.Block) model.Tool { return (&solver{Values: v}).tool(b) }

func (s *solver) tool(b *lang.Block) model.Tool {
	bit, feed := s.Length(b, "bit"), s.Length(b, "feed")
	return model.Tool{
		Router: b.Name, Number: s.Count(b, "tool"), Diameter: bit, Flutes: s.Count(b, "flutes"), RPM: s.Count(b, "rpm"),
		Feed: feed, Plunge: cmp.Or(s.Length(b, "plunge"), feed/3),
		Stepdown: cmp.Or(s.Length(b, "stepdown"), bit/2), Stepover: cmp.Or(s.Length(b, "stepover"), bit*2/5),
		RampDegrees: s.Number(b, "ramp"), Finish: s.Length(b, "finish"), Clearance: s.Length(b, "clearance"),
		Wood: s.Text(b, "wood"), Machine: s.Text(b, "machine"), Entry: s.Text(b, "entry"), Passes: s.Text(b, "passes"),
		Floor: s.Length(b, "floor"), Relief: s.Text(b, "relief"), Datum: s.Text(b, "datum"),
		Travel: model.Travel{X: s.FieldLength(b, "travel", "x"), Y: s.FieldLength(b, "travel", "y"), Z: s.FieldLength(b, "travel", "z")},
		Rapid:  s.Length(b, "rapid"), Accelerate: s.Number(b, "acceleration"), Dialect: s.dialect(b),
	}
}
