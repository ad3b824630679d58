package record

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"testing"

	"barwright/compile/model"
)

// large is an example over and over, until it has 15 000 parts as a build of 1000
// cabinets has, and as many values and places on boards to them.
func large(b *testing.B) *model.Model {
	b.Helper()
	one := example(b, "boatshed")
	m := *one
	m.Runs, m.Values, m.Parts, m.Cuts, m.Layouts = nil, nil, nil, nil, nil
	for n := 0; len(m.Parts) < 15_000; n++ {
		named := func(name string) string { return fmt.Sprintf("%s.%d", name, n) }
		for _, p := range one.Parts {
			p.ID, p.Label = named(p.ID), named(p.Label)
			m.Parts = append(m.Parts, p)
		}
		for _, v := range one.Values {
			v.Name = named(v.Name)
			m.Values = append(m.Values, v)
		}
		for _, l := range one.Layouts {
			l.Blanks = slices.Clone(l.Blanks)
			for i := range l.Blanks {
				l.Blanks[i].Placed = slices.Clone(l.Blanks[i].Placed)
				for j := range l.Blanks[i].Placed {
					l.Blanks[i].Placed[j].Part = named(l.Blanks[i].Placed[j].Part)
				}
			}
			m.Layouts = append(m.Layouts, l)
		}
	}
	m.Parts = append(m.Parts, one.Parts...) // for the runs, knee walls, slabs and programs, which stay one
	m.Runs = one.Runs
	return &m
}

func BenchmarkWrite(b *testing.B) {
	m := large(b)
	var out bytes.Buffer
	if err := Write(&out, m); err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(out.Len()))
	for b.Loop() {
		if err := Write(io.Discard, m); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	var out bytes.Buffer
	if err := Write(&out, large(b)); err != nil {
		b.Fatal(err)
	}
	b.SetBytes(int64(out.Len()))
	for b.Loop() {
		if _, _, err := Read(bytes.NewReader(out.Bytes())); err != nil {
			b.Fatal(err)
		}
	}
}
