package atonce_test

import (
	"strings"
	"sync/atomic"
	"testing"

	"barwright/compile/atonce"
)

func TestEachIsDoneOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 1000} {
		done := make([]atomic.Int32, n)
		atonce.Each(n, func(i int) { done[i].Add(1) })
		for i := range done {
			if got := done[i].Load(); got != 1 {
				t.Errorf("%d of %d was done %d times", i, n, got)
			}
		}
	}
}

func TestPanicComesOut(t *testing.T) {
	defer func() {
		if text, _ := recover().(string); !strings.HasPrefix(text, "broken\n") || !strings.Contains(text, "atonce_test.go:") {
			t.Errorf("what comes out is %q", text)
		}
	}()
	atonce.Each(100, func(i int) {
		if i == 7 {
			panic("broken")
		}
	})
	t.Error("nothing came out")
}
