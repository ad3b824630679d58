package layout_test

import (
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang"
)

// built is an example, edited.
func built(t *testing.T, name string, edit ...string) *model.Model {
	t.Helper()
	files := edittest.Folder(t, "../../examples/"+name)
	for i := range files {
		files[i].Text = []byte(strings.NewReplacer(edit...).Replace(string(files[i].Text)))
	}
	src, findings := lang.Read(files)
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	var parts []model.Part
	for _, p := range m.Parts {
		if p.Kind != model.SlabPiece {
			parts = append(parts, p)
		}
	}
	if err := layout.Checked(parts, m.Stock, layout.Shop{Saw: m.Saw, Table: m.Table}, m.Layouts); err != nil {
		t.Fatal(err)
	}
	return m
}

// The layouts of the examples can be cut, and buy no more than was found when they were first
// searched.
func TestExamples(t *testing.T) {
	for name, most := range map[string]map[string]int{
		"boatshed": {"sheet.birch": 7, "sheet.thin": 4, "sheet.half": 1},
		"servery":  {"sheet.birch": 5, "sheet.thin": 3},
	} {
		for _, l := range built(t, name).Layouts {
			t.Logf("%s: %s: %d bought, at least %d, least %v, waste %.1f %%", name, l.Stock, l.Bought, l.AtLeast, l.Least, 100*l.Waste)
			if l.Kind == model.Panel && l.Bought > most[l.Stock] {
				t.Errorf("%s: %d of %s, want %d at most", name, l.Bought, l.Stock, most[l.Stock])
			}
		}
	}
}

// A description says how boards are laid out: on other sizes, on what is there, for a table, in
// stages, with matched grain.
func TestDescribed(t *testing.T) {
	const birch = "sheet \"birch\" {\n"
	bought := func(m *model.Model) (l model.Layout, own int) {
		for _, l = range m.Layouts {
			if l.Stock == "sheet.birch" {
				break
			}
		}
		for _, b := range l.Blanks {
			if b.Own {
				own++
			}
		}
		return l, own
	}
	l, own := bought(built(t, "servery", birch, birch+"also {\n size = [3050, 1525]\n price = 1\n}\n"))
	if l.Bought < 3 || l.Bought > 4 || own != 0 || l.Blanks[0].Length.MM() != 3050 || !l.Least {
		t.Errorf("large sheets for nearly nothing: %d bought, least %v", l.Bought, l.Least)
	}
	if l, own = bought(built(t, "servery", birch, birch+"offcut {\n size = [2440, 1220]\n count = 3\n}\n")); own == 0 || l.Bought > 2 {
		t.Errorf("with three offcuts as large as a sheet: %d used, %d bought", own, l.Bought)
	}
	if l, _ = bought(built(t, "servery", birch, "table \"shop\" {\n way = \"free\"\n spacing = 9\n margin = 6\n}\n"+birch)); !l.Free || len(l.Blanks[0].Cuts) > 0 {
		t.Error("for a table it has cuts")
	}
	if l, _ = bought(built(t, "servery", "saw {\n", "saw {\n  stages = 2\n")); stages(l) > 2 {
		t.Errorf("cut in %d stages", stages(l))
	}
}

// stages is how often cuts change their direction, the first one counted: that of a cut is one
// more than that of the cut across it which left what it parts.
func stages(l model.Layout) (most int) {
	for _, b := range l.Blanks {
		of := make([]int, len(b.Cuts))
		for i, c := range b.Cuts {
			of[i] = 1
			for k, before := range b.Cuts[:i] {
				if before.Of.Contains(c.Of) {
					of[i] = of[k]
					if before.Along != c.Along {
						of[i]++
					}
				}
			}
			most = max(most, of[i])
		}
	}
	return most
}
