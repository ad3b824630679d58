package ngc

import (
	"slices"
	"testing"

	"barwright/compile/model"
)

// A line of the control's own may switch coolant: nobody here knows.
func TestControlSaysWhoSwitchesCoolant(t *testing.T) {
	const none = "No coolant is switched."
	if got := control(model.Dialect{}); !slices.Contains(got, none) {
		t.Errorf("without lines of its own: %q", got)
	}
	for _, d := range []model.Dialect{{Start: []string{"M7"}}, {End: []string{"M9"}}} {
		got := control(d)
		if slices.Contains(got, none) || !slices.Contains(got, "No coolant is switched but by lines of the control's own, if these do so.") {
			t.Errorf("%v: %q", d, got)
		}
	}
}
