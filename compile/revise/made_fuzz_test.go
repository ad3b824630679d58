package revise

import (
	"bytes"
	"testing"

	"barwright/compile/reuse"
	"barwright/lang/length"
)

// FuzzReadMade reads any list: what is taken from it are pieces of the build, each once,
// and the build can be compared with itself by them.
func FuzzReadMade(f *testing.F) {
	for _, seed := range []string{
		"CUPS-L\n", "CUPS-L  23 1/4 x 34 1/2 # cut on Monday\n\nSINK-DL", "END-A 25 1/2 x 3 1/2", "KETTLE-DL 378mm x 771 mm",
		"CUPS-L\nCUPS-L", "CUP-L", "CUPS-L 0 x -1", "CUPS-L 9999999999m x 1", "CUPS-L 1 x 1", "\ufeffCUPS-L\r\n", "x x x x", "#",
	} {
		f.Add([]byte(seed))
	}
	old := mustBuild(f, example(f, "boatshed"))
	f.Fuzz(func(t *testing.T, text []byte) {
		made, err := ReadMade(bytes.NewReader(text), old)
		if err != nil {
			return
		}
		seen := map[string]bool{}
		for _, m := range made {
			if seen[m.Label] {
				t.Errorf("%s is taken twice", m.Label)
			}
			seen[m.Label] = true
		}
		within := length.Inch / 64
		all, _ := fates(reuse.Open(old, old, within), Options{Within: within, Cut: made})
		if len(all) < len(old.Parts) {
			t.Errorf("%d fates of %d parts", len(all), len(old.Parts))
		}
	})
}
