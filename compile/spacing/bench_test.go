package spacing_test

import (
	"fmt"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/spacing"
	"barwright/lang/length"
)

// BenchmarkPlace places supports, battens and holes of bars of a few sizes:
// with nothing in the way, and with an outlet on every second of their places.
func BenchmarkPlace(b *testing.B) {
	for _, size := range []struct {
		name   string
		length geom.Length
		count  int
	}{
		{"home bar, 4 of 2 m", 2 * length.Metre, 4},
		{"pub, 20 of 12 m", 12 * length.Metre, 20},
		{"hall, 100 of 60 m", 60 * length.Metre, 100},
	} {
		a := spacing.Ask{Stretch: geom.Span{Hi: size.length}, Count: size.count, HalfEnds: true, Mark: length.Inch / 32}
		b.Run(size.name+", free", func(b *testing.B) { place(b, a) })
		for i := 0; i < size.count; i += 2 {
			at := size.length * geom.Length(2*i+1) / geom.Length(2*size.count)
			a.Closed = append(a.Closed, spacing.Closed{Span: geom.Span{Lo: at, Hi: at}.Grow(2 * length.Inch), By: fmt.Sprint("outlet ", i)})
		}
		b.Run(size.name+", closed", func(b *testing.B) { place(b, a) })
	}
}

func place(b *testing.B, a spacing.Ask) {
	b.ReportAllocs()
	for b.Loop() {
		if _, refusal := spacing.Place(a); refusal != nil {
			b.Fatal(refusal)
		}
	}
}
