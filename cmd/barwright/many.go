package main

import (
	"runtime"
	"sync/atomic"
)

// inOrder does n things, as many at once as there are processors for, and hands on what
// comes of each in their order, one after another.
func inOrder[T any](n int, do func(i int) T, then func(i int, came T)) {
	came := make([]chan T, n)
	for i := range came {
		came[i] = make(chan T, 1)
	}
	var next atomic.Int64
	for range min(n, runtime.GOMAXPROCS(0)) {
		go func() {
			for i := int(next.Add(1)) - 1; i < n; i = int(next.Add(1)) - 1 {
				came[i] <- do(i)
			}
		}()
	}
	for i := range came {
		then(i, <-came[i])
	}
}
