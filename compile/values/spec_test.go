package values

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// TestSolvedValuesAreListed compares the table in section 3.2 of SPEC.md with
// the solved values, both ways.
func TestSolvedValuesAreListed(t *testing.T) {
	text, err := os.ReadFile("../../SPEC.md")
	if err != nil {
		t.Fatal(err)
	}
	_, section, found := strings.Cut(string(text), "\n### 3.2 ")
	section, _, ended := strings.Cut(section, "\n### 3.3 ")
	if !found || !ended {
		t.Fatal("SPEC.md has no section 3.2")
	}
	listed := map[string]bool{}
	for _, m := range regexp.MustCompile("(?m)^\\| `([a-z_]+)\\.[a-z_]+\\.([a-z_]+)` \\|").FindAllStringSubmatch(section, -1) {
		listed[m[1]+"."+m[2]] = true
	}
	for kind, values := range solvedValues() {
		for _, value := range values {
			name := kind + "." + value.name
			if !listed[name] {
				t.Errorf("SPEC.md does not list %s", name)
			}
			delete(listed, name)
		}
	}
	for name := range listed {
		t.Errorf("SPEC.md lists %s, which is not solved", name)
	}
}
