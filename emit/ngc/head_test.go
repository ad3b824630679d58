package ngc_test

import (
	"strings"
	"testing"

	"barwright/compile/router/routertest"
)

// A program says which build it belongs to, below its name, where that is known.
func TestHeadNamesTheBuild(t *testing.T) {
	p, _ := program(t, routertest.Support())
	const line = "(boat shed, revision A)"
	if strings.Contains(string(text(t, p)), line) {
		t.Error("a program without a build names one")
	}
	p.Build = "boat shed, revision A"
	if lines := strings.Fields(strings.ReplaceAll(string(text(t, p)), " ", "_")); !strings.Contains(lines[2], "boat_shed,_revision_A") {
		t.Errorf("the head is %q", lines[:4])
	}
}
