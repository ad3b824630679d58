package solve_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/solve"
	"barwright/lang"
	"barwright/lang/source"
)

// TestProposedPlaces follows what is proposed for a sink that leaves too little
// rail or hangs over a stretcher, and for a tap that stands too near to
// something: once moved, it is not answered so again.
func TestProposedPlaces(t *testing.T) {
	place := regexp.MustCompile(`from_(front|rear) = .*`)
	drawing := rapid.Custom(func(t *rapid.T) string {
		depth, front, rear := rapid.IntRange(200, 480).Draw(t, "depth"), rapid.IntRange(0, 300).Draw(t, "front"), rapid.IntRange(10, 250).Draw(t, "rear")
		return fmt.Sprintf("  overhang = { front = %d }\n  sink \"s\" {\n    in = cabinet.a\n    cut = { width = 400, depth = %d }\n    from_front = %d\n  }\n  tap \"t\" {\n    behind = sink.s\n    from_rear = %d\n  }\n",
			rapid.IntRange(0, 40).Draw(t, "overhang"), depth, front, rear)
	})
	follow := func(t rapid.TB, counter string) (followed []string) {
		slugs := func(text string) map[string]string { // mends by slug; lookup only
			src, findings := lang.Read(source.Files{counterOf("", "  cabinet \"a\" { width = 800 }\n", text)})
			out := map[string]string{}
			for _, f := range append(findings, solve.Solve(src).Findings...) {
				out[f.Slug] = f.Mend
			}
			return out
		}
		before := slugs(counter)
		for _, slug := range []string{"rail-too-narrow", "cut-out-over-board", "tap-too-near"} {
			mend := before[slug]
			if !strings.HasPrefix(mend, "from_") {
				continue
			}
			word, _, _ := strings.Cut(mend, " = ")
			mended := place.ReplaceAllStringFunc(counter, func(line string) string {
				if strings.HasPrefix(line, word) {
					return mend
				}
				return line
			})
			if _, still := slugs(mended)[slug]; still {
				t.Fatalf("%s, mended by %s, is answered the same:\n%s", slug, mend, mended)
			}
			followed = append(followed, slug)
		}
		return followed
	}
	rapid.Check(t, func(t *rapid.T) { follow(t, drawing.Draw(t, "counter")) })
	// What is followed is counted where the same are drawn each time.
	followed := map[string]int{}
	for seed := range 100 {
		for _, slug := range follow(t, drawing.Example(seed)) {
			followed[slug]++
		}
	}
	if len(followed) < 3 {
		t.Errorf("only these were followed: %v", followed)
	}
}
