package dxf

import (
	"io"
	"runtime"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// bored is a part with many bores of each kind, and countersinks, rounded recesses and
// marks.
func bored(entities int) *model.Part {
	p := perforated(0)
	for i := range entities {
		x, y := length.Length(i%400*20), length.Length(i/400*20)
		at := point(x+10, y+10)
		switch i % 8 {
		case 0:
			p.Recesses = append(p.Recesses, model.Recess{Depth: 4 * mm, Shape: geom.RoundedContour(geom.R(at.X, at.Y, at.X+5*mm, at.Y+5*mm), mm)})
		case 1:
			p.Marks = append(p.Marks, model.Mark{From: at, To: point(x+15, y+15)})
		case 2:
			p.Bores = append(p.Bores, model.Bore{At: at, Diameter: 6 * mm, Slot: 8 * mm})
		case 3, 4:
			p.Bores = append(p.Bores, model.Bore{At: at, Diameter: 5 * mm, Sink: 9 * mm, Far: i%2 == 0})
		default:
			p.Bores = append(p.Bores, model.Bore{At: at, Diameter: 5 * mm, Depth: 12 * mm, Far: i%2 == 0})
		}
	}
	p.Thickness, p.Outline = 18*mm, rect(0, 0, 8000, length.Length(entities/400+1)*20)
	return p
}

// What is allocated in all while a file is written, and so what is held at once, does not
// grow with it: for three times as much on a part it is less than a quarter more, as more of
// it lies along the outline, and never a megabyte.
func TestWritePartAllocatesNoMore(t *testing.T) {
	const few, many = 100_000, 300_000
	every := Options{Version: R2000, Inch: true, Text: true, Depths: true, Mirrored: true, Origin: Middle, Flatten: mm / 20}
	for _, test := range []struct {
		name string
		part func(int) *model.Part
		opt  Options
	}{
		{"openings", perforated, Options{}},
		{"of all kinds, with every option", bored, every},
	} {
		less, more := allocated(t, test.part(few), test.opt), allocated(t, test.part(many), test.opt)
		if more > less+less/4 || more > 1<<20 {
			t.Errorf("%s: %d entities allocate %d bytes, %d of them %d", test.name, few, less, many, more)
		}
	}
}

// allocated is how many bytes are allocated while a part is written.
func allocated(t *testing.T, p *model.Part, opt Options) int {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	if err := WritePart(io.Discard, p, opt); err != nil {
		t.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	return int(after.TotalAlloc - before.TotalAlloc)
}
