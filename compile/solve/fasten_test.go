package solve_test

import (
	"strings"
	"testing"
)

// Every screw through a support plate passes through steel, and no other does.
func TestScrewsThroughSteel(t *testing.T) {
	m, _ := example(t, "servery")
	steel := 0
	for _, f := range m.Fastening {
		if want := strings.Contains(f.Use, "through the support plates"); f.Steel != want {
			t.Errorf("%d screws %s: through steel %v", f.Count, f.Use, f.Steel)
		}
		if f.Steel {
			steel += f.Count
		}
	}
	if steel != 5*8+5*4 { // five plates, eight screws down and four up in each
		t.Errorf("%d screws through steel", steel)
	}
}
