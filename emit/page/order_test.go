package page

import (
	"strings"
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"
)

// TestOrder: what a step does, how, after what, with how many hands, and through the doorway where
// there is one.
func TestOrder(t *testing.T) {
	m := &model.Model{Build: model.Build{Unit: length.Inches, Marks: length.Inch / 32}}
	if got := piece(m, writer.order); !strings.Contains(got, "There is none: nothing is to be set") {
		t.Error(got)
	}
	m.Setting.Steps = []model.SettingStep{
		{What: "knee wall bar", Does: model.FramedInPlace},
		{What: "cabinet dry", Does: model.MovedAside, Slides: []model.Slide{{To: "to the right", By: 7 * length.Inch / 2}}},
		{
			What: "cabinet sink", Block: "cabinet.sink", WeightKg: 30, People: 2,
			Slides: []model.Slide{{To: "to the rear", By: 9 * length.Inch}, {To: "to the left", By: 7 * length.Inch / 2, Over: []string{"stub drain", "stub cold"}}},
			After:  []model.Ahead{{What: "base of cabinet sink", Why: "it stands on it"}, {What: "cabinet a", Why: "it would stand in the way"}, {What: "cabinet b", Why: "it would stand in the way"}},
		},
	}
	m.Work = make([]model.Task, 41)
	m.Work[40].Key = "set.cabinet.sink"
	for _, want := range []string{
		">41<", "frame knee wall bar", "framed where it stands", "move aside cabinet dry", "3 1/2 in to the right",
		"in from the front, then 3 1/2 in to the left, over stub drain and stub cold",
		"base of cabinet sink (it stands on it); cabinet a, cabinet b (it would stand in the way)", "30.0 (66.1 lb)", "2 people",
	} {
		if got := piece(m, writer.order); !strings.Contains(got, want) {
			t.Errorf("there is no %q in %s", want, got)
		}
	}
	if got := piece(m, writer.order); strings.Contains(got, "doorway") {
		t.Error("a doorway that the room has not")
	}
	m.Setting.Steps[2].Door, m.Setting.Steps[2].Through = true, []string{"an end", "its top or bottom"}
	for _, want := range []string{"from the doorway 9 in to the rear", "an end or its top or bottom first"} {
		if got := piece(m, writer.order); !strings.Contains(got, want) {
			t.Errorf("there is no %q in %s", want, got)
		}
	}
}
