package routing

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/length"
)

// asWide is how much the diameters of a bit and of a hole may differ for it to be drilled
// straight down.
const asWide = length.Millimetre / 10

// hole makes a round hole; a depth of 0 goes through. One as wide as the bit is drilled in
// pecks; a wider one is cut round a helix, once round at its floor, as long as the bit
// leaves nothing in its middle, and cleared as a pocket beyond.
func (b *board) hole(work model.Work, at geom.Point, diameter Length) (*cut, *Left) {
	depth := work.Depth
	if depth == 0 {
		depth = b.through()
	}
	wider := diameter - 2*b.radius
	switch {
	case depth >= b.thick && work.Depth > 0:
		return nil, b.tooDeep(work)
	case wider < -asWide:
		return nil, b.leftToDrill(work, diameter)
	case wider > b.tool.Diameter*9/10:
		c, refused := b.pocket(work, geom.R(at.X-diameter/2, at.Y-diameter/2, at.X+diameter/2, at.Y+diameter/2), diameter/2, nil)
		if c != nil {
			c.work.Shape = geom.CircleContour(at, diameter/2)
		}
		return c, refused
	case wider <= asWide:
		work.Shape, work.Levels = geom.CircleContour(at, b.radius), levels(0, depth, min(b.tool.Diameter/2, b.tool.Stepdown))
		return &cut{b.pecks(at, work.Levels), work}, nil
	}
	radius := wider / 2
	around := 2 * math.Pi * float64(radius)
	if d := b.tool.Dialect; d.Chords { // which are shorter, by this at most: they part a turn in four at least
		around *= max(0.9, 1-float64(d.Chord)/float64(radius))
	}
	turns := math.Ceil(max(rampRun(depth+approach, &b.tool)/around, float64(depth+approach)/float64(b.tool.Stepdown)))
	if 2*turns > maxMoves {
		return nil, b.tooLong(work.Kind, work.Name)
	}
	work.Shape, work.Levels = geom.CircleContour(at, radius+b.radius), []Length{depth}
	return &cut{b.helix(at, radius, depth, int(turns)), work}, nil
}

func (b *board) pecks(at geom.Point, levels []Length) []model.Move {
	r := rider{}
	r.over(at, b.tool.Clearance)
	for _, z := range levels {
		r.down(-z)
		r.rapid(approach)
	}
	r.rapid(b.tool.Clearance)
	return r.moves
}

// helix goes down in turns of a radius and once round at the floor, and lifts the bit in
// the middle.
func (b *board) helix(at geom.Point, radius, depth Length, turns int) []model.Move {
	right, left := at.Add(geom.Point{X: radius}), at.Sub(geom.Point{X: radius})
	halves := []piece{
		{from: right, to: left, centre: at, turn: math.Pi, long: 1},
		{from: left, to: right, centre: at, turn: math.Pi, long: 1},
	}
	r := rider{}
	r.over(right, b.tool.Clearance)
	for i := range turns {
		r.follow(halves, approach-(depth+approach)*Length(i+1)/Length(turns))
	}
	r.follow(halves, -depth)
	r.line(at)
	r.rapid(b.tool.Clearance)
	return r.moves
}
