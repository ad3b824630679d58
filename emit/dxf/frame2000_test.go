package dxf

import (
	"strings"
	"testing"

	"barwright/compile/model"
)

// The window of an R2000 file is the whole screen in any unit: its corners are shares of it.
func TestWindowIsWholeScreen(t *testing.T) {
	part := model.Part{ID: "p", Name: "side", Outline: rect(0, 0, 900, 500)}
	for _, inch := range []bool{false, true} {
		file := string(written(t, &part, Options{Version: R2000, Inch: inch}))
		_, window, _ := strings.Cut(file, "*Active\r\n")
		if want := " 70\r\n0\r\n 10\r\n0.0\r\n 20\r\n0.0\r\n 11\r\n1.0\r\n 21\r\n1.0\r\n"; !strings.HasPrefix(window, want) {
			t.Errorf("in inches %t: the window is %q", inch, window[:min(len(window), 80)])
		}
	}
}
