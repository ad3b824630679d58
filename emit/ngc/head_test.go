package ngc_test

import (
	"strings"
	"testing"

	"barwright/compile/router/routertest"
	"barwright/compile/routing"
	"barwright/compile/routing/routingtest"
)

// Every program says which build it belongs to, below its name.
func TestHeadNamesTheBuild(t *testing.T) {
	p, _ := program(t, routertest.Support())
	j := routingtest.Side()
	others, _ := routing.Plan(&j.Part, &j.Request)
	for name, text := range map[string][]byte{p.Name: text(t, p), others[0].Name: routingText(t, &others[0])} {
		if !strings.Contains(string(text), "("+name+")\n(tool shed bar, revision B)\n(Cuts: ") {
			t.Errorf("the head is %.200s", text)
		}
	}
}
