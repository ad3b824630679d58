package replay_test

import (
	"bytes"
	"flag"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc"
	"barwright/emit/ngc/replay"
)

var stride = flag.Int("stride", 31, "damage every n-th motion for the outside checker")

// program plans and writes a recess.
func program(t interface {
	Helper()
	Fatalf(string, ...any)
}, r router.Request) (*model.Program, []byte) {
	t.Helper()
	p, refusal := router.Plan(r)
	if refusal != nil {
		t.Fatalf("refused: %+v", refusal)
	}
	var b bytes.Buffer
	if err := ngc.Write(&b, model.Build{Name: "shed"}, &p); err != nil {
		t.Fatalf("write: %v", err)
	}
	return &p, b.Bytes()
}

func TestCheckPassesWhatIsPlanned(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, text := program(t, routertest.Requests().Draw(t, "request"))
		if err := replay.Check(text, p); err != nil {
			t.Fatalf("%v\n%s", err, text)
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	r := routertest.Support()
	p, text := program(b, r)
	for b.Loop() {
		if err := replay.Check(text, p); err != nil {
			b.Fatal(err)
		}
	}
}
