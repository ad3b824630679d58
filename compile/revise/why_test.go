package revise

import (
	"fmt"
	"slices"
	"testing"

	"barwright/compile/ask"
	"barwright/compile/model"
)

// TestWhateverMovesHasItsReason changes each figure that is written, one after the
// other: all that follows or moves must lead to it, and so must every part that is not
// as it was.
func TestWhateverMovesHasItsReason(t *testing.T) {
	for _, c := range []struct {
		name, step string
	}{{"boatshed", `"1/32in"`}, {"servery", `"1mm"`}} {
		files := example(t, c.name)
		old := mustBuild(t, files)
		tried, moved, parts := 0, map[string]bool{}, 0
		figures := written(t, files)
		for i := range figures {
			a := &figures[i]
			by := c.step
			if a.Kind == model.AsNumber {
				by = "1" // also where a count is wanted
			}
			new := built(nudged(files, a, by))
			if new == nil {
				if a.Kind != model.AsNumber {
					continue
				}
				if new = built(nudged(files, a, "0.01")); new == nil {
					continue
				}
			}
			tried++
			changes, w := changes(old, new)
			for _, ch := range changes {
				switch ch.Kind {
				case model.Said:
					if ch.Name != a.Name {
						t.Errorf("%s: %s is told as changed, and %s was", c.name, ch.Name, a.Name)
					}
				case model.Follows, model.Moved:
					moved[ch.Name] = true
					if n := len(ch.Because); n == 0 || ch.Because[n-1] != a.Name {
						t.Errorf("%s: %s %s because of %q, and %s was changed", c.name, ch.Name, ch.Kind, ch.Because, a.Name)
					}
				default:
					t.Errorf("%s: %s %s as %s was changed", c.name, ch.Name, ch.Kind, a.Name)
				}
			}
			r := &model.Revision{Old: old, New: new, Fates: remade(old, new)}
			reasons(r, w)
			for _, f := range r.Fates {
				parts++
				if n := len(f.Because); n == 0 || f.Because[n-1] != a.Name {
					t.Errorf("%s: part %s differs because of %q, and %s was changed", c.name, new.Parts[f.New].Label, f.Because, a.Name)
				}
			}
		}
		t.Logf("%s: %d of %d figures changed, %d names moved, parts %d times", c.name, tried, len(figures), len(moved), parts)
		if tried < 40 || len(moved) < 100 || parts < 100 {
			t.Errorf("%s: too few to tell anything", c.name)
		}
	}
}

// TestEachHasItsOwnReason changes two things at once, one in height and one along the run:
// what moves leads to its own. The skin over the counter begins above it; the outlet is
// half way between counter and bar top.
func TestEachHasItsOwnReason(t *testing.T) {
	files := example(t, "boatshed")
	old := mustBuild(t, files)
	new := mustBuild(t, edited(t, edited(t, files, "counter_top = 36", "counter_top = 36.25"), "    width   = 18\n    doors   = 1", "    width   = 18.25\n    doors   = 1"))
	const up, along = "given.counter_top", "cabinet.bins.width"
	have, w := changes(old, new)
	ends := map[string]string{} // lookup only
	for _, c := range have {
		if n := len(c.Because); n > 0 {
			ends[c.Name] = c.Because[n-1]
		}
	}
	for name, want := range map[string]string{
		"run.back.height": up, "counter.work.top": up, "run.front.length": along, "knee_wall.bar.right": along,
		"cabinet.bins.placed.u": along, "cabinet.bins.placed.z": up, "cabinet.kegs.placed.u": along, "cabinet.kegs.placed.left_door.hinges": up,
		"knee_wall.bar.placed.studs": along, "knee_wall.bar.supports.placed.centres": along, "cabinet.mugs.placed.studs": along,
		"outlet.scale.placed.box.u": along, "outlet.scale.placed.box.z": up, "skin.work.placed.u": along, "skin.work.placed.z": up,
		"skin.room.placed.battens": along, "counter.work.placed.u": along, "counter.work.placed.z": up, "sink.prep.placed.z": up, "bar_top.oak.placed.u": along,
	} {
		if ends[name] != want {
			t.Errorf("%s because of %q, want %s", name, ends[name], want)
		}
	}
	r := &model.Revision{Old: old, New: new, Fates: remade(old, new)}
	reasons(r, w)
	of := map[string]string{} // lookup only
	for _, f := range r.Fates {
		of[new.Parts[f.New].Label] = f.Because[len(f.Because)-1]
	}
	for label, want := range map[string]string{
		"KETTLE-L": up, "SINK-L": up, "BINS-L": up, "BINS-SF": along, "BINS-TK": along, "KEGS-DL": up, "BAR-P2": along, "ROOM-1": along, "WORK-C1": along,
	} {
		if of[label] != want {
			t.Errorf("%s because of %q, want %s", label, of[label], want)
		}
	}
}

// TestALongWayIsCut takes a way from one given to the next: what is told of it grows no
// longer, and still leads from the nearest to the changed text.
func TestALongWayIsCut(t *testing.T) {
	chain := "given {\n  g0 = 1\n"
	for i := range 3 * longestWay {
		chain += fmt.Sprintf("  g%d = given.g%d + 1\n", i+1, i)
	}
	files := oneFile(shed + chain + "}\n")
	changes, _ := changes(mustBuild(t, files), mustBuild(t, edited(t, files, "g0 = 1\n", "g0 = 2\n")))
	if want := 1 + 3*longestWay; len(changes) != want {
		t.Fatalf("%d changes, want %d", len(changes), want)
	}
	for i, c := range changes[1:] {
		n := min(i+1, longestWay)
		if len(c.Because) != n || c.Because[0] != fmt.Sprintf("given.g%d", i) || c.Because[n-1] != "given.g0" {
			t.Errorf("%s because of %d names, %q", c.Name, len(c.Because), c.Because)
		}
	}
}

// TestPlacesFollowFromWhatTheySay changes each figure of an example: a place that says
// what it follows from moves only with one of these, which is in another place then.
func TestPlacesFollowFromWhatTheySay(t *testing.T) {
	files := example(t, "boatshed")
	old := mustBuild(t, files)
	figures, moved := written(t, files), 0
	for i := range figures {
		new := built(nudged(files, &figures[i], `"1/32in"`))
		if new == nil {
			continue
		}
		values := map[string]string{} // lookup only
		for _, v := range new.Values {
			values[v.Name] = v.Text
		}
		was := map[string]string{} // lookup only
		for _, v := range old.Values {
			was[v.Name] = v.Text
		}
		placed := ask.Placed(new)
		for j, a := range ask.Placed(old) {
			if len(a.From) == 0 || slices.Equal(a.Lengths, placed[j].Lengths) {
				continue
			}
			moved++
			if !slices.ContainsFunc(a.From, func(name string) bool { return values[name] != was[name] }) {
				t.Errorf("%s moves with %s, and none of %q does", a.Name, figures[i].Name, a.From)
			}
		}
	}
	if moved < 20 {
		t.Errorf("only %d places moved", moved)
	}
}

// remade lists the parts whose outline, openings or bores differ from those of the part
// of the same name.
func remade(old, new *model.Model) []model.Fate {
	at := map[string]*model.Part{} // lookup only
	for i := range old.Parts {
		at[old.Parts[i].ID] = &old.Parts[i]
	}
	var out []model.Fate
	for i := range new.Parts {
		p, was := &new.Parts[i], at[new.Parts[i].ID]
		if was == nil {
			out = append(out, model.Fate{Kind: model.NewPart, Old: -1, New: i, Offcut: -1})
		} else if !sameShape(was, p) {
			out = append(out, model.Fate{Kind: model.MakeAgain, Old: -1, New: i, Offcut: -1})
		}
	}
	return out
}

func sameShape(a, b *model.Part) bool {
	if len(a.Outline) != len(b.Outline) || len(a.Openings) != len(b.Openings) || len(a.Bores) != len(b.Bores) || a.Thickness != b.Thickness {
		return false
	}
	for i := range a.Outline {
		if a.Outline[i] != b.Outline[i] {
			return false
		}
	}
	for i := range a.Openings {
		if a.Openings[i].Shape.Bounds() != b.Openings[i].Shape.Bounds() {
			return false
		}
	}
	for i := range a.Bores {
		x, y := a.Bores[i], b.Bores[i]
		x.Why, y.Why = model.Why{}, model.Why{}
		if x != y {
			return false
		}
	}
	return true
}
