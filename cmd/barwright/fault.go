package main

import (
	"fmt"
	"runtime/debug"
)

// fault is a panic as an error: barwright itself went wrong.
type fault struct {
	said  any
	stack []byte // where, for whoever mends it
}

func (f *fault) Error() string {
	return fmt.Sprintf("an internal error: barwright itself went wrong, not the description. Undo what was changed last, or change it otherwise, and save again. It said: %v", f.said)
}

// rescued does what may panic; the error is a *fault where it did.
func rescued(do func()) (err error) {
	defer func() {
		if said := recover(); said != nil {
			err = &fault{said, debug.Stack()}
		}
	}()
	do()
	return nil
}
