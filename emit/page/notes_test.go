package page

import (
	"strings"
	"testing"

	"barwright/compile/model"
)

// Test pieces are told from the recesses of the build.
func TestTestPiecesAreNamed(t *testing.T) {
	m := bar()
	m.Programs = m.Programs[:1]
	if text := piece(m, writer.programs); !strings.Contains(text, "<caption>Programs for the router: one for each recess</caption>") || strings.Contains(text, "scrap</td>") {
		t.Error(text)
	}
	test := m.Programs[0]
	test.Test = true
	m.Programs = []model.Program{test, m.Programs[0]}
	text := piece(m, writer.programs)
	for _, want := range []string{"one for each recess, and before them test pieces in scrap</caption>", ">as support 1, in scrap</td>", ">support 1</td>"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %s", want, text)
		}
	}
}
