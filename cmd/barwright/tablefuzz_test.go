package main

import (
	"io"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/lang/length"
)

// drawTable draws what a block table can ask for, all together.
func drawTable(t *rapid.T) model.Table {
	const mm = length.Millimetre
	flag := func(name string) bool { return rapid.Bool().Draw(t, name) }
	word := func(name string, of ...string) string { return rapid.SampledFrom(of).Draw(t, name) }
	size := func(name string, of ...length.Length) length.Length { return rapid.SampledFrom(of).Draw(t, name) }
	return model.Table{
		R2000: flag("r2000"), Notes: flag("notes"), Stated: flag("stated"), Inch: flag("inch"),
		Layers: model.LayerNames{Edge: "EDGE", Opening: "OPENING", Recess: "RECESS", Bore: "BORE", Through: "HOLE", Mark: "MARK", Note: "NOTE", Sheet: "SHEET", Scribe: "SCRIBE"},
		Files:  word("files", "each", "distinct", "sheets"),
		Write:  model.Written{Openings: flag("openings"), Recesses: flag("recesses"), Bores: flag("bores"), Marks: flag("marks")},
		Depths: flag("depths"), Mirrored: flag("mirrored"), Drawings: flag("drawings"),
		Origin:  word("origin", "lower_left", "lower_right", "upper_left", "upper_right", "middle"),
		Flatten: size("flatten", 0, mm/1000, mm/50, mm/2),
		Relief:  word("relief", "none", "diagonal", "long_side"), Bit: size("bit", mm, 3*mm, 6_350_000, 8*mm),
		Overrun: size("overrun", 0, 5*mm), Small: size("small", 0, 200*mm, 2000*mm),
	}
}

// Whatever a table asks for, all files of both examples are written; what relief cannot
// do has been refused before.
func TestTablesTogether(t *testing.T) {
	tables := rapid.Custom(drawTable)
	for _, name := range examples {
		m := *compiled(t, name)
		for seed := range 12 {
			m.Table = tables.Example(seed)
			for i := range m.Parts {
				if m.Table.Relief != "none" && len(relief.Check(&m.Parts[i], m.Table.Relief, m.Table.Bit)) > 0 {
					m.Table.Relief = "none"
				}
			}
			for _, f := range append(cutFiles(&m), drawings(&m)...) {
				if err := f.Write(io.Discard); err != nil {
					t.Errorf("%s: %+v: %s: %v", name, m.Table, f.Name, err)
				}
			}
		}
	}
}
