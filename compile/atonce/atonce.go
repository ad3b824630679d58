// Package atonce spreads work over the processors of a machine. What is done is the same, and what
// comes of it stands in the same order, on however many.
package atonce

import (
	"fmt"
	"runtime"
	"runtime/debug"
	"sync"
	"sync/atomic"
)

// Each does n things, on as many processors as there are, in no order, and returns when all are
// done. None may lean on another, nor change what another reads. A panic in one comes out of Each, with
// where it was, when those that were begun have ended.
func Each(n int, do func(i int)) {
	var busy sync.WaitGroup
	var next atomic.Int64
	var failed sync.Once
	broken := ""
	for range min(n, runtime.GOMAXPROCS(0)) {
		busy.Go(func() {
			defer func() {
				if r := recover(); r != nil {
					failed.Do(func() { broken = fmt.Sprintf("%v\n\n%s", r, debug.Stack()) })
					next.Store(int64(n))
				}
			}()
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				do(i)
			}
		})
	}
	busy.Wait()
	if broken != "" {
		panic(broken)
	}
}

// All does some things so.
func All(do ...func()) { Each(len(do), func(i int) { do[i]() }) }
