package programtest

import (
	"math/rand/v2"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/lang/length"
)

// work draws a recess as shops cut them: a bit of 3 to 20 mm, a recess of 1 to 12
// bits and up to 4 times as long, in whatever dialect. What is not special has no
// open side, or one or two at most.
func work(number int) router.Request {
	d := drawer{rand.New(rand.NewPCG(uint64(number), 7))}
	r := routertest.Support()
	r.Tool = d.tool()
	bit := (r.Tool.Diameter+1)/2*2 + 2*r.Tool.Finish
	width := max(bit, d.length(r.Tool.Diameter*13/10, r.Tool.Diameter*12))
	long := max(width, bit+r.Tool.Diameter, d.length(width, 4*width))
	lies := d.IntN(2) == 0
	if kindOf(number) == narrow {
		width = bit + d.length(0, max(0, r.Tool.Diameter*6/5-bit))
	}
	if kindOf(number) == relieved {
		r.Tool.Relief = pick(d, "diagonal", "long_side")
	}
	if r.Shape = geom.R(0, 0, width, long); lies {
		r.Shape = geom.R(0, 0, long, width)
	}
	r.Shape = r.Shape.Shift(geom.Point{X: d.length(-70*mm, 70*mm), Y: d.length(0, 20*mm)})
	r.Open = d.open(kindOf(number), lies)
	r.Stock = routertest.Around(r.Shape, r.Tool.Diameter+d.length(5*mm, 200*mm), r.Open)
	if r.Tool.Relief == "none" {
		r.Corner = min(width/2, pick(d, 0, 0, r.Tool.Diameter/2+mm/10, r.Tool.Diameter))
	}
	r.Depth = d.length(max(3*mm, r.Tool.Floor+mm), min(30*mm, max(8*mm, 2*r.Tool.Diameter)))
	return r
}

// kind is what makes a recess one of the hard third.
type kind int

const (
	plain kind = iota
	openEnded
	relieved
	narrow
	indexed
)

func kindOf(number int) kind {
	if number%3 < 2 {
		return plain
	}
	return openEnded + kind(number/3%4)
}

type drawer struct{ *rand.Rand }

// length draws a length in whole 1/64 in or tenths of a millimetre.
func (d drawer) length(lo, hi router.Length) router.Length {
	grain := pick(d, inch/64, mm/10)
	return lo + grain*router.Length(d.IntN(int((hi-lo)/grain)+1))
}

func pick[T any](d drawer, of ...T) T { return of[d.IntN(len(of))] }

// open draws the open sides.
func (d drawer) open(k kind, lies bool) []model.Edge {
	ends := []model.Edge{model.Bottom, model.Top}
	if lies {
		ends = []model.Edge{model.RightEdge, model.LeftEdge}
	}
	switch {
	case k == openEnded:
		return ends
	case k == relieved:
		return pick(d, nil, ends[:1], ends[1:])
	}
	return pick(d, nil, nil, nil, ends[:1], ends[1:], []model.Edge{model.Bottom}, []model.Edge{model.Bottom, model.LeftEdge})
}

func (d drawer) tool() model.Tool {
	t := routertest.Tool(false)
	t.Diameter = pick(d, 3*mm, 6*mm, 8*mm, 10*mm, 12*mm, 16*mm, 20*mm, inch/8, inch/4, 3*inch/8, inch/2, 3*inch/4, 6_351_237)
	t.Finish = pick(d, 0, mm/5, mm/4, 3*mm/10, inch/64)
	t.Floor = pick(d, 0, 0, 0, mm/5)
	t.Stepover = t.Diameter * router.Length(30+d.IntN(46)) / 100
	t.Stepdown = max(mm, t.Diameter*router.Length(25+d.IntN(51))/100)
	t.Feed = mm * router.Length(1000+d.IntN(3000))
	t.Plunge = t.Feed / 3
	t.Rapid, t.Accelerate = mm*router.Length(3000+d.IntN(9000)), float64(200+d.IntN(1800))
	t.Clearance = d.length(5*mm, 25*mm)
	t.Entry, t.Passes, t.Relief = pick(d, "ramp", "helix"), pick(d, "rings", "parallel"), "none"
	t.RampDegrees = float64(15+d.IntN(86)) / 10
	t.Dialect = d.dialect()
	return t
}

func (d drawer) dialect() model.Dialect {
	out := model.Dialect{
		Inch: d.IntN(2) == 0, Percent: d.IntN(2) == 0, Chords: d.IntN(3) == 0, Chord: pick(d, mm/100, mm/50),
		Numbers: d.IntN(2) == 0, Change: d.IntN(2) == 0, SpinUp: float64(d.IntN(6)),
		Comments: pick(d, "brackets", "semicolon", "none"),
	}
	if out.Decimals = 3 + d.IntN(4); out.Inch {
		out.Decimals = 4 + d.IntN(3)
	}
	return out
}

const (
	mm   = length.Millimetre
	inch = length.Inch
)
