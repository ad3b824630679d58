package ask_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/source"
)

const shed = `
build "shed" { unit = "in" }
given { wide = 24 }
sheet "ply" {
  size      = [96, 48]
  thickness = 0.75
}
room {
  wall "back" {
    length = 60
    outlet "tea" { at = [12, 18] }
  }
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.ply
  back   = { board = sheet.ply }
}
run "back" {
  along   = wall.back
  carcass = carcass.base
  cabinet "tea" { width = given.wide }
  cabinet "cups" { width = rest }
}
`

func open(t *testing.T) *ask.Book {
	t.Helper()
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(shed)}})
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	return ask.Open(values.Explain(src), m)
}

func names(r model.Reply) []string {
	var out []string
	for _, a := range r.Answers {
		out = append(out, a.Name)
	}
	return out
}

func TestAsk(t *testing.T) {
	book := open(t)
	for _, c := range []struct {
		asked string
		lists bool
		want  string
	}{
		{"cabinet.tea.width", false, "cabinet.tea.width given.wide"},
		{"cabinet.cups.right", false, "cabinet.cups.right cabinet.cups.left cabinet.tea.width given.wide " +
			"cabinet.cups.width run.back.length wall.back.length run.back.start"},
		{"cabinet.tea.placed.u", false, "cabinet.tea.placed.u cabinet.tea.left cabinet.tea.right cabinet.tea.width given.wide"},
		{"cabinet", true, "cabinet.tea cabinet.cups"},
		{"cabinet.", true, "cabinet.tea cabinet.cups"},
		{"given.", true, "given.wide"},
		{"given.wide.", false, "given.wide"},
		{"carcass.base.toe_kick", false, "carcass.base.toe_kick"},
		{"carcass.base.toe_kick.", true, "carcass.base.toe_kick carcass.base.toe_kick.height carcass.base.toe_kick.setback"},
		{"outlet.tea.placed.", true, "outlet.tea.placed.room outlet.tea.placed.through"},
		{"part.TEA-TK", true, "part.TEA-TK part.TEA-TK.size part.TEA-TK.thickness part.TEA-TK.stock part.TEA-TK.face " +
			"part.TEA-TK.grain part.TEA-TK.u part.TEA-TK.v part.TEA-TK.z part.TEA-TK.room part.TEA-TK.good"},
		{"", true, "build given.wide sheet.ply room wall.back outlet.tea carcass.base run.back cabinet.tea cabinet.cups " +
			"part.TEA-L part.TEA-R part.TEA-BT part.TEA-BK part.TEA-SF part.TEA-SR part.TEA-TK " +
			"part.CUPS-L part.CUPS-R part.CUPS-BT part.CUPS-BK part.CUPS-SF part.CUPS-SR part.CUPS-TK"},
	} {
		r, ok := book.Ask(c.asked)
		if have := strings.Join(names(r), " "); !ok || r.Lists != c.lists || have != c.want {
			t.Errorf("%q is answered with lists %v, %s\nwant %v, %s", c.asked, r.Lists, have, c.lists, c.want)
		}
	}
	byLabel, _ := book.Ask("TEA-TK")
	whole, _ := book.Ask("part.TEA-TK")
	if !slices.Equal(names(byLabel), names(whole)) {
		t.Error("a label alone is not answered with its part")
	}
}

func TestMeant(t *testing.T) {
	book := open(t)
	for asked, want := range map[string]string{
		"cabinet.cup":          "cabinet.cups",
		"cabinte.cups.width":   "cabinet.cups.width",
		"cabinet.cups.widht":   "cabinet.cups.width",
		"cups.width":           "cabinet.cups.width",
		"tea.width":            "cabinet.tea.width",
		"part.TAE-TK":          "part.TEA-TK",
		"cabinet.cups.width.x": "",
		"zzzzzzzz":             "",
		"":                     "",
		"...":                  "",
	} {
		if _, ok := book.Ask(asked); ok && asked != "" {
			t.Errorf("%q has an answer", asked)
		}
		if have := book.Meant(asked); have != want {
			t.Errorf("%q meant %q, want %q", asked, have, want)
		}
	}
}

// TestWhateverIsListedIsKnown asks on from every list: each name in it has an
// answer that begins with that name.
func TestWhateverIsListedIsKnown(t *testing.T) {
	book := open(t)
	seen := map[string]bool{}
	var walk func(asked string)
	walk = func(asked string) {
		r, ok := book.Ask(asked)
		if !ok {
			t.Fatalf("%q was listed, and has no answer", asked)
		}
		for _, a := range r.Answers {
			if !seen[a.Name] {
				seen[a.Name] = true
				walk(a.Name)
			}
		}
	}
	walk("")
	if len(seen) < 200 {
		t.Errorf("only %d names were reached", len(seen))
	}
}

// TestAnyName asks whatever: nothing panics, and what was meant has an answer.
func TestAnyName(t *testing.T) {
	book := open(t)
	word := rapid.OneOf(rapid.SampledFrom([]string{"cabinet", "tea", "cups", "width", "part", "TEA-L", "placed", "u", "given", ""}), rapid.String())
	rapid.Check(t, func(t *rapid.T) {
		asked := strings.Join(rapid.SliceOfN(word, 0, 5).Draw(t, "words"), ".")
		if _, ok := book.Ask(asked); ok {
			return
		}
		if meant := book.Meant(asked); meant != "" {
			if _, ok := book.Ask(meant); !ok {
				t.Errorf("%q meant %q, which has no answer", asked, meant)
			}
		}
	})
}
