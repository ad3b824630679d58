package main

import (
	"fmt"
	"io"
	"path"
	"testing"

	"barwright/cmd/barwright/folder"
	"barwright/compile"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang"
)

// BenchmarkEmitters times what writes each kind of file of a build of many cabinets, papers
// laid out and programs simulated. compile.BenchmarkStages times the stages before; -short
// leaves out all but the smallest build.
func BenchmarkEmitters(b *testing.B) {
	for _, n := range []int{100, 1000, 10_000} {
		if n > 100 && testing.Short() {
			continue
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			src, _ := lang.Read(manybuild.Files(n, "in", 1))
			m, found := compile.Compile(src)
			if m == nil {
				b.Fatal("the build has errors: ", len(found))
			}
			emitters(b, m, n)
		})
	}
}

func emitters(b *testing.B, m *model.Model, cabinets int) {
	var files []folder.File
	timed := func(name string, do func() error) {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := do(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(cabinets), "cabinets")
			b.ReportMetric(float64(len(m.Parts)), "parts")
		})
	}
	timed("listed", func() (err error) {
		files, err = outputs(m, view.Drawings(m), "")
		return err
	})
	var kinds []string
	by := map[string][]folder.File{} // lookup only
	for _, f := range files {
		kind := f.Name
		if dir := path.Dir(f.Name); dir != "." {
			kind = dir + "_" + path.Ext(f.Name)[1:]
		}
		if by[kind] == nil {
			kinds = append(kinds, kind)
		}
		by[kind] = append(by[kind], f)
	}
	for _, kind := range kinds {
		timed(kind, func() error {
			for _, f := range by[kind] {
				if err := f.Write(io.Discard); err != nil {
					return err
				}
			}
			return nil
		})
	}
}
