package values_test

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/source"
)

// leaning adds to the examples what they lack: a rest beside a wall that leans
// in at either end, two that share, insets, objects and flags that come by a
// name, and a choice between two values of which one counts.
const leaning = `
build "t" { unit = "mm" }
given {
  deep = true
  kick = { height = 120 }
}
sheet "ply" {
  size      = [2440, 1220]
  thickness = 18
}
stick "cls" {
  thickness = 38
  width     = 89
  lengths   = [2400, 4800]
}
slab "oak" { thickness = 40 }
carcass "base" {
  height   = 870 - counter.top.thickness
  depth    = given.deep ? slab.oak.thickness * 14 : 12 * stick.cls.thickness
  board    = sheet.ply
  back     = { board = sheet.ply }
  toe_kick = given.kick
}
room {
  wall "one" {
    length = 3000
    corner = 80
  }
  wall "two" {
    length = 4000
    corner = 70
  }
  wall "three" { length = 3000 }
}
run "back" {
  along   = wall.two
  start   = 10
  carcass = carcass.base
  cabinet "a" { width = rest }
  bay "b" {
    appliance = { width = 600, height = 800, depth = 500 }
    gap       = 5
  }
  cabinet "c" { width = rest }
}
run "right" {
  along   = wall.three
  from    = "right"
  start   = 20
  carcass = carcass.base
  cabinet "d" { width = min(700, cabinet.a.width - 1) }
  cabinet "e" { width = rest }
}
run "out" {
  out_from = wall.one
  at       = 1000
  carcass  = carcass.base
  cabinet "f" { width = 800 }
}
counter "top" {
  over = run.out
  slab = slab.oak
}
knee_wall "bar" {
  behind      = run.out
  lumber      = stick.cls
  left_inset  = 15
  right_inset = 25
}
bar_top "oak" {
  over   = knee_wall.bar
  slab   = slab.oak
  height = 1100
}
`

// descriptions are what the tests below look at.
func descriptions(t *testing.T) map[string]source.Files {
	t.Helper()
	out := map[string]source.Files{"leaning": {{Name: "bar.hcl", Text: []byte(leaning)}}}
	for _, name := range []string{"boatshed", "servery"} {
		files := edittest.Folder(t, filepath.Join("..", "..", "examples", name))
		if len(files) == 0 {
			t.Fatalf("there is no example %s", name)
		}
		out[name] = files
	}
	return out
}

func explained(t *testing.T, files source.Files) (*lang.Source, []model.Answer) {
	t.Helper()
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	return src, values.Explain(src)
}

func byName(answers []model.Answer) map[string]*model.Answer {
	out := map[string]*model.Answer{}
	for i := range answers {
		out[answers[i].Name] = &answers[i]
	}
	return out
}

// askedAs is the name of a block: one without a name of its own is named below its
// parent, and counted where there may be several.
func askedAs(b *lang.Block) string {
	switch {
	case b.Spec.Kind == "build":
		return "build"
	case b.Name != "" || b.Parent == nil:
		return b.Key()
	case b.Spec.Once:
		return askedAs(b.Parent) + "." + b.Spec.Kind
	}
	return fmt.Sprintf("%s.%s.%d", askedAs(b.Parent), b.Spec.Kind, 1+slices.Index(b.Parent.Inner(b.Spec.Kind), b))
}

// TestExplainIsWhole demands an answer for each block, for each attribute that
// the schema gives it and for each field, each once; that what an answer follows
// from has an answer too; and that no chain comes back to itself.
func TestExplainIsWhole(t *testing.T) {
	for name, files := range descriptions(t) {
		src, answers := explained(t, files)
		known := byName(answers)
		if len(known) != len(answers) {
			t.Errorf("%s: %d answers have %d names", name, len(answers), len(known))
		}
		tried := 0
		src.Each(func(b *lang.Block) {
			if b.Spec.Kind == "given" || b.Spec.Kind == "include" {
				return
			}
			block := askedAs(b)
			for _, spec := range b.Spec.Attrs {
				tried++
				a := known[block+"."+spec.Name]
				switch {
				case a == nil:
					t.Errorf("%s: no answer for %s.%s", name, block, spec.Name)
					continue
				case a.Kind == model.InError:
					t.Errorf("%s: %s is in error", name, a.Name)
				case a.Kind == model.NoAnswer && (b.Attr(spec.Name) != nil || spec.Default != ""):
					t.Errorf("%s: %s has a value, and no answer", name, a.Name)
				case (a.Origin == model.FromText) != (b.Attr(spec.Name) != nil) && a.Kind != model.NoAnswer && a.Origin != model.FromSolving:
					t.Errorf("%s: %s is %s", name, a.Name, a.Origin)
				}
				for _, field := range spec.Fields {
					if a.Kind == model.AsObject && known[a.Name+"."+field.Name] == nil {
						t.Errorf("%s: no answer for the field %s.%s", name, a.Name, field.Name)
					}
				}
			}
		})
		if tried < 100 {
			t.Errorf("%s: only %d attributes were tried", name, tried)
		}
		for i := range answers {
			checkChain(t, name, known, &answers[i], nil)
		}
	}
}

func checkChain(t *testing.T, where string, known map[string]*model.Answer, a *model.Answer, way []string) {
	t.Helper()
	if slices.Contains(way, a.Name) {
		t.Fatalf("%s: %s follows from itself: %q", where, a.Name, way)
	}
	for _, from := range a.From {
		if known[from] == nil {
			t.Errorf("%s: %s follows from %s, which has no answer", where, a.Name, from)
			continue
		}
		checkChain(t, where, known, known[from], append(slices.Clip(way), a.Name))
	}
}

// TestChainsAreWhole changes each length and number that is written, one after
// the other: whatever changes with it must have it in its chain.
func TestChainsAreWhole(t *testing.T) {
	for name, files := range descriptions(t) {
		src, answers := explained(t, files)
		known := byName(answers)
		changed, moved := 0, map[string]bool{}
		for i := range answers {
			leaf := &answers[i]
			written := leaf.Kind == model.AsLength || leaf.Kind == model.AsNumber
			if leaf.Origin != model.FromText || !written || leaf.Written == "rest" {
				continue
			}
			after, ok := nudged(src.Files, leaf)
			if !ok {
				continue
			}
			changed++
			for j := range after {
				a := &after[j]
				was := known[a.Name]
				same := was != nil && slices.Equal(was.Lengths, a.Lengths) && (len(a.Lengths) > 0 || was.Text == a.Text)
				if was == nil || same || a.Kind == model.AsObject {
					continue
				}
				moved[a.Name] = true
				if !follows(known, was, leaf.Name) {
					t.Errorf("%s: %s changes with %s, which is not in its chain", name, a.Name, leaf.Name)
				}
			}
		}
		if changed < 20 || len(moved) < 30 {
			t.Errorf("%s: %d values were changed, and %d moved: too few to tell anything", name, changed, len(moved))
		}
		t.Logf("%s: changed %d values, %d moved", name, changed, len(moved))
	}
}

// nudged explains a description in which one value is a little larger.
func nudged(files source.Files, leaf *model.Answer) ([]model.Answer, bool) {
	by := "0.25"
	if leaf.Kind == model.AsNumber {
		by = "1" // also where a count is wanted
	}
	files = slices.Clone(files)
	for i, f := range files {
		if f.Name == leaf.At.File {
			from, to := leaf.At.Start.Byte, leaf.At.End.Byte
			text := fmt.Sprintf("%s(%s) + %s%s", f.Text[:from], f.Text[from:to], by, f.Text[to:])
			files[i].Text = []byte(text)
		}
	}
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		return nil, false
	}
	return values.Explain(src), true
}

// follows reports whether a name is in the chain of an answer.
func follows(known map[string]*model.Answer, a *model.Answer, name string) bool {
	if a.Name == name {
		return true
	}
	return slices.ContainsFunc(a.From, func(from string) bool { return follows(known, known[from], name) })
}

// TestExplainBesideErrors shows what is sound where something else is not.
func TestExplainBesideErrors(t *testing.T) {
	text := strings.Replace(leaning, "left_inset  = 15", "left_inset  = nowhere.at_all", 1)
	_, answers := explained(t, source.Files{{Name: "bar.hcl", Text: []byte(text)}})
	known := byName(answers)
	for name, kind := range map[string]model.AnswerKind{
		"knee_wall.bar.left_inset": model.InError, "knee_wall.bar.left": model.InError,
		"knee_wall.bar.right": model.AsLength, "cabinet.a.width": model.AsLength,
	} {
		if known[name].Kind != kind {
			t.Errorf("%s is %s, want %s", name, known[name].Kind, kind)
		}
	}
}

// TestSharedRest works the widths of "leaning" out by hand. The run along wall
// two is 560 deep (14 * 40). At its left wall one leans in at 80 degrees, by
// 560 / tan 80 = 98.743 mm, more than its start of 10; at its right wall three at
// 70 degrees, by 560 / tan 70 = 203.823 mm. 4000 - 98.743 - 203.823 - (600 + 2 * 5)
// leaves 3087.434, half of it 1543.717.
func TestSharedRest(t *testing.T) {
	_, answers := explained(t, descriptions(t)["leaning"])
	known := byName(answers)
	for name, want := range map[string]string{"cabinet.a.width": "1543.717", "cabinet.c.width": "1543.717", "run.back.length": "3697.434"} {
		if have := fmt.Sprintf("%.3f", known[name].Lengths[0].MM()); have != want {
			t.Errorf("%s is %s, want %s", name, have, want)
		}
	}
	for name, want := range map[string]string{
		"cabinet.a.width": "what run.back has left, 3087.43",
		"run.back.length": "; the wall at its left leans in by 98.74",
	} {
		if have := known[name].Says; !strings.Contains(have, want) {
			t.Errorf("%s says %q, want %q", name, have, want)
		}
	}
	want := []string{"wall.two.length", "run.back.start", "wall.one.corner", "run.back.depth", "wall.two.corner"}
	if have := known["run.back.length"].From; !slices.Equal(have, want) {
		t.Errorf("run.back.length follows from %q, want %q", have, want)
	}
	if have := known["carcass.base.depth"].From; !slices.Equal(have, []string{"given.deep", "slab.oak.thickness"}) {
		t.Errorf("carcass.base.depth follows from %q: of a choice the part that counts", have)
	}
}

// TestHostileChains bounds what text without measure may cost: many boxes, each
// after all that stand before it.
func TestHostileChains(t *testing.T) {
	var text strings.Builder
	text.WriteString("build \"t\" { unit = \"mm\" }\nsheet \"ply\" {\n size = [2440, 1220]\n thickness = 18\n}\n" +
		"carcass \"c\" {\n height = 800\n depth = 500\n board = sheet.ply\n back = { board = sheet.ply }\n}\n" +
		"room {\n wall \"w\" { length = 900000 }\n}\nrun \"r\" {\n along = wall.w\n carcass = carcass.c\n")
	const boxes = 3000
	for i := range boxes {
		fmt.Fprintf(&text, " cabinet \"c%d\" { width = 300 }\n", i)
	}
	text.WriteString("}\n")
	_, answers := explained(t, source.Files{{Name: "bar.hcl", Text: []byte(text.String())}})
	for i := range answers {
		if n := len(answers[i].From); n > 50 {
			t.Fatalf("%s follows from %d names", answers[i].Name, n)
		}
	}
}
