package work

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/place"
	"barwright/compile/rule"
	"barwright/compile/rule/ruletest"
)

func boatshed(t testing.TB) *rule.Build {
	t.Helper()
	return ruletest.Build(t, edittest.Folder(t, "../../examples/boatshed"))
}

// at tells where each step stands in a list; lookup only.
func at(tasks []model.Task) map[string]int {
	out := map[string]int{}
	for i := range tasks {
		out[tasks[i].Key] = i
	}
	return out
}

// TestAnyOrder draws orders of setting in which anything may have to come after anything, but
// framing after skins, and what lies on something after that. Each is kept to: every step waits for all before it that it
// names, no screw and no part is lost, and phases do not come back.
func TestAnyOrder(t *testing.T) {
	b := boatshed(t)
	usual := place.Usual(b)
	count := func(tasks []model.Task) (screws, parts int) {
		for i := range tasks {
			for _, s := range tasks[i].Screws {
				screws += s.Count
			}
			parts += len(tasks[i].Parts)
		}
		return screws, parts
	}
	screws, parts := count(Order(b))
	rapid.Check(t, func(t *rapid.T) {
		left := slices.Clone(usual)
		b.Setting.Steps = nil
		set := map[string]bool{} // lookup only
		for len(left) > 0 {
			i := rapid.IntRange(0, len(left)-1).Draw(t, "next")
			for slices.ContainsFunc(left[i].After, func(a model.Ahead) bool { return !set[a.What] }) {
				i = (i + 1) % len(left)
			}
			s := left[i]
			s.After = slices.Clone(s.After)
			s.Slides = []model.Slide{{To: "to the rear", By: 100 * mm}}
			if n := len(b.Setting.Steps); n > 0 && rapid.Bool().Draw(t, "blocked") {
				by := b.Setting.Steps[rapid.IntRange(0, n-1).Draw(t, "by")].What
				if s.Does != model.FramedInPlace || !strings.HasPrefix(by, "skin ") && !strings.HasPrefix(by, "corner ") {
					s.After = append(s.After, model.Ahead{What: by, Why: "it could not come in afterwards"})
				}
			}
			set[s.What] = true
			b.Setting.Steps = append(b.Setting.Steps, s)
			left = slices.Delete(left, i, i+1)
		}
		tasks := Order(b)
		where := at(tasks)
		for i := range b.Setting.Steps {
			s := &b.Setting.Steps[i]
			for _, a := range s.After {
				k := slices.IndexFunc(b.Setting.Steps, func(o model.SettingStep) bool { return o.What == a.What })
				before, after := b.Setting.Steps[k].Task(), s.Task()
				if tells := slices.ContainsFunc(tasks[where[after]].After, func(b model.Before) bool { return b.Key == before }); !tells && !dryFirst(tasks, after, before) {
					t.Fatalf("%s does not say that it waits for %s", after, before)
				}
			}
			if i > 0 {
				if last := &b.Setting.Steps[i-1]; !isEarly(s) && !isEarly(last) && where[last.Task()] > where[s.Task()] {
					t.Fatalf("%s comes after %s", last.Task(), s.Task())
				}
			}
		}
		var phases []string
		for i := range tasks {
			if p := tasks[i].Phase; len(phases) == 0 || phases[len(phases)-1] != p {
				if slices.Contains(phases, p) {
					t.Fatalf("phase %s comes back", p)
				}
				phases = append(phases, p)
			}
		}
		if s, p := count(tasks); s != screws || p != parts {
			t.Fatalf("%d screws and %d parts, not %d and %d", s, p, screws, parts)
		}
	})
}

// dryFirst reports whether a counter's step waits for another through that which lays it dry.
func dryFirst(tasks []model.Task, key, before string) bool {
	const fix = "fix."
	i := slices.IndexFunc(tasks, func(t model.Task) bool { return key == fix+t.Key[min(len("dry."), len(t.Key)):] && t.Key != key })
	return i >= 0 && slices.ContainsFunc(tasks[i].After, func(b model.Before) bool { return b.Key == before })
}

// TestLateFraming: where boxes could not come in past a knee wall, it is framed, wired and looked
// at once they stand, and before the boxes on it.
func TestLateFraming(t *testing.T) {
	b := boatshed(t)
	b.Setting.Steps = place.Usual(b)
	steps := b.Setting.Steps
	wall := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "knee wall bar" })
	late := steps[wall]
	late.After = []model.Ahead{{What: "cabinet beans", Why: "it could not come in afterwards"}}
	steps = slices.Delete(steps, wall, wall+1)
	beans := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "cabinet beans" })
	b.Setting.Steps = slices.Insert(steps, beans+1, late)
	tasks := Order(b)
	where := at(tasks)
	line := []string{"finish", "set.cabinet.beans", "frame.bar", "steel.bar", "wire.bar", "wire.seen.bar", "set.cabinet.sink", "hold.bar", "skin.room"}
	for i := 1; i < len(line); i++ {
		if where[line[i-1]] >= where[line[i]] {
			t.Errorf("%s is step %d, %s step %d", line[i-1], where[line[i-1]], line[i], where[line[i]])
		}
	}
	if p := tasks[where["frame.bar"]].Phase; p != setting {
		t.Errorf("it is framed %s", p)
	}
}

// TestCoveredBeforeWired: a skin that has to go on before a cable can be pulled through the boxes
// says so.
func TestCoveredBeforeWired(t *testing.T) {
	b := boatshed(t)
	cable := slices.IndexFunc(b.Ways, func(w model.Way) bool { return w.Name == "scale" })
	b.Ways[cable].Past = append(b.Ways[cable].Past, "cabinet.mugs")
	steps := place.Usual(b)
	told := func() bool {
		b.Setting.Steps = steps
		tasks := Order(b)
		return slices.ContainsFunc(tasks[at(tasks)["skin.room"]].Cautions, func(c string) bool { return strings.Contains(c, "before cable scale is pulled") })
	}
	if told() {
		t.Error("it is pulled before")
	}
	skin := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "skin room" })
	first := steps[skin]
	kegs := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "cabinet kegs" })
	steps = slices.Insert(slices.Delete(steps, skin, skin+1), kegs, first)
	if !told() {
		t.Error("nobody is told that the wall is covered before a cable is pulled")
	}
}

// TestSkinRoundSteel: framing does not wait for a skin that no slide brings past its steel.
func TestSkinRoundSteel(t *testing.T) {
	b := boatshed(t)
	steps := place.Usual(b)
	skin := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "skin room" })
	first := steps[skin]
	steps = slices.Insert(slices.Delete(steps, skin, skin+1), 0, first)
	wall := slices.IndexFunc(steps, func(s model.SettingStep) bool { return s.What == "knee wall bar" })
	steps[wall].After = []model.Ahead{{What: "skin room", Why: "it could not come in afterwards"}}
	b.Setting.Steps = steps
	tasks := Order(b)
	where := at(tasks)
	line := []string{"frame.bar", "wire.seen.bar", "set.cabinet.sink", "hold.bar", "skin.room", "fix.counter.work"}
	for i := 1; i < len(line); i++ {
		if where[line[i-1]] >= where[line[i]] {
			t.Errorf("%s is step %d, %s step %d", line[i-1], where[line[i-1]], line[i], where[line[i]])
		}
	}
	if p := tasks[where["frame.bar"]].Phase; p != rough {
		t.Errorf("it is framed %s", p)
	}
}

// TestNotFound: where no order was found the usual one stands, and the list says so.
func TestNotFound(t *testing.T) {
	b := boatshed(t)
	tasks := Order(b)
	where := at(tasks)
	if i, ok := where["sequence"]; !ok || i > where["set.cabinet.kettle"] {
		t.Error("it is not told that no order was found")
	}
	var sets []string
	for i := range tasks {
		if tasks[i].Way != "" {
			t.Errorf("%s has a way, %s", tasks[i].Key, tasks[i].Way)
		}
		if tasks[i].Phase == setting {
			sets = append(sets, tasks[i].Key)
		}
	}
	want := []string{"sequence", "set.cabinet.kettle", "set.cabinet.cups", "set.cabinet.beans", "fit.filler.corner", "blocks.cooler",
		"set.cabinet.sink", "set.cabinet.bins", "set.cabinet.mugs", "set.cabinet.kegs", "hold.bar", "fit.filler.wall"}
	if diff := cmp.Diff(want, sets); diff != "" {
		t.Error(diff)
	}
	place.Order(b)
	if _, told := at(Order(b))["sequence"]; told {
		t.Error("an order was found, and the list says that none was")
	}
}

// TestStanding: what stands is made, held against its figures before anything is set, and nothing
// of it is lost.
func TestStanding(t *testing.T) {
	files := edittest.Edited(t, edittest.Folder(t, "../../examples/boatshed"), `-   bay "cooler" {
+   bay "cooler" {
+     stands = true

-   cabinet "kegs" {
+   cabinet "kegs" {
+     stands = true
`)
	b := ruletest.Build(t, files)
	tasks := Order(b)
	where := at(tasks)
	for _, c := range [][2]string{
		{"fix.anchor.end", "frame.bar"}, {"finish", "set.cabinet.kegs"}, {"set.cabinet.kegs", "set.cabinet.kettle"}, {"appliance.cooler", "set.cabinet.kettle"},
		{"set.cabinet.mugs", "hold.bar"},
	} {
		before, one := where[c[0]]
		after, other := where[c[1]]
		if !one || !other || before > after {
			t.Errorf("%s is step %d, %s step %d", c[0], before, c[1], after)
		}
	}
	for _, key := range []string{"set.cabinet.kegs", "appliance.cooler"} {
		if title := tasks[where[key]].Title; !strings.Contains(title, "stands already: hold it against") {
			t.Errorf("%s: %s", key, title)
		}
	}
	screws, parts := 0, map[string]bool{} // lookup only
	for i := range tasks {
		for _, s := range tasks[i].Screws {
			screws += s.Count
		}
		if tasks[i].Phase != cutting {
			for _, label := range tasks[i].Parts {
				parts[label] = true
			}
		}
	}
	for _, f := range b.Fastening {
		screws -= f.Count
	}
	if screws != 0 || len(parts) != len(b.Parts) {
		t.Errorf("%d screws too many; %d parts of %d", screws, len(parts), len(b.Parts))
	}
}

// TestFollows holds the list of every build to its order of setting: the same sequence, ways,
// weights and people.
func TestFollows(t *testing.T) {
	for _, folder := range []string{"boatshed", "servery"} {
		b := ruletest.Build(t, edittest.Folder(t, "../../examples/"+folder))
		place.Order(b)
		if len(b.Setting.Steps) == 0 {
			t.Fatal(folder, *b.Findings)
		}
		tasks := Order(b)
		where := at(tasks)
		last := 0
		for i := range b.Setting.Steps {
			s := &b.Setting.Steps[i]
			key := s.Task()
			if dry, ok := where["dry."+s.Block]; ok {
				key = tasks[dry].Key
			}
			task := tasks[where[key]]
			if task.WeightKg != s.WeightKg || task.People != s.People {
				t.Errorf("%s: %s weighs %g kg for %d, %s %g kg for %d", folder, key, task.WeightKg, task.People, s.What, s.WeightKg, s.People)
			}
			if len(s.Slides) > 0 && task.Way != s.Way(b.Model.Build.Near) {
				t.Errorf("%s: %s goes %q, not %q", folder, key, task.Way, s.Way(b.Model.Build.Near))
			}
			if !isEarly(s) {
				if where[key] < last {
					t.Errorf("%s: %s comes before what is set before it", folder, key)
				}
				last = where[key]
			}
		}
	}
}
