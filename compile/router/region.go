package router

import (
	"barwright/compile/geom"
	"barwright/compile/model"
)

// region is a rectangle with rounded corners. Sides are numbered as
// model.Edge, counter-clockwise; corner i is where side i begins, the lower
// left one first.
type region struct {
	rect  geom.Rect
	round [4]Length
}

// heading is the way along each side, the inside to its left.
var heading = [4]geom.Point{{X: 1}, {Y: 1}, {X: -1}, {Y: -1}}

func after(i int) int  { return (i + 1) % 4 }
func before(i int) int { return (i + 3) % 4 }

// inset returns the region whose border lies d further inside.
func (g region) inset(d Length) region {
	g.rect = g.rect.Grow(-d)
	for i, q := range g.round {
		g.round[i] = max(0, q-d)
	}
	return g
}

// extended returns the region with its open sides moved out by d.
func (g region) extended(open sides, d Length) region {
	for _, e := range open.edges() {
		g.rect = e.Onward(g.rect, d)
	}
	return g
}

// corner returns the corner where side i begins, as if it were square.
func (g region) corner(i int) geom.Point {
	x, y := g.rect.X, g.rect.Y
	return [4]geom.Point{{X: x.Lo, Y: y.Lo}, {X: x.Hi, Y: y.Lo}, {X: x.Hi, Y: y.Hi}, {X: x.Lo, Y: y.Hi}}[i]
}

// sideStart and sideEnd return the ends of the straight part of a side.
func (g region) sideStart(i int) geom.Point {
	return along(g.corner(i), heading[i], g.round[i])
}

func (g region) sideEnd(i int) geom.Point {
	return along(g.corner(after(i)), heading[i], -g.round[after(i)])
}

// sideMid returns the middle of a side.
func (g region) sideMid(i int) geom.Point {
	a, b := g.corner(i), g.corner(after(i))
	return geom.Point{X: a.X + (b.X-a.X)/2, Y: a.Y + (b.Y-a.Y)/2}
}

// longSide returns the first of the longer sides.
func (g region) longSide() int {
	if g.rect.Y.Size() > g.rect.X.Size() {
		return int(model.RightEdge)
	}
	return int(model.Bottom)
}

// long returns the longer extent.
func (g region) long() Length { return max(g.rect.X.Size(), g.rect.Y.Size()) }

// half returns half of the shorter extent: the largest inset.
func (g region) half() Length { return min(g.rect.X.Size(), g.rect.Y.Size()) / 2 }

// contour returns the region's border, counter-clockwise.
func (g region) contour() geom.Contour { return geom.CornersRounded(g.rect, g.round) }

func along(p, dir geom.Point, d Length) geom.Point {
	return geom.Point{X: p.X + dir.X*d, Y: p.Y + dir.Y*d}
}

// distanceAlong returns how far along a side it is from one point to another one.
func distanceAlong(side int, from, to geom.Point) Length {
	return (to.X-from.X)*heading[side].X + (to.Y-from.Y)*heading[side].Y
}

// lies reports whether the region is longer in X than in Y, or as long.
func (g region) lies() bool { return g.rect.X.Size() >= g.rect.Y.Size() }

// cornerAt returns the corner at a point; it must be one.
func (g region) cornerAt(p geom.Point) int {
	i := 0
	for g.corner(i) != p {
		i++
	}
	return i
}

// onto moves a point straight onto the border at a side.
func (g region) onto(side int, p geom.Point) geom.Point {
	if heading[side].X == 0 {
		p.X = g.corner(side).X
	} else {
		p.Y = g.corner(side).Y
	}
	return p
}

// ends returns the first of the shorter sides.
func (g region) ends() model.Edge {
	if g.lies() {
		return model.LeftEdge
	}
	return model.Bottom
}
