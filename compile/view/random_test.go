package view

import (
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/view/viewtest"
)

func TestRandomLayout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := viewtest.Random(t)
		for _, v := range Views(m) {
			for _, f := range faults(&v) {
				t.Error(f)
			}
			for _, f := range untrue(&v, m.Build) {
				t.Error(f)
			}
		}
	})
}
