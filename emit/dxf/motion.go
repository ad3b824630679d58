package dxf

import (
	"barwright/compile/geom"
	"barwright/lang/length"
)

// motion takes a part to where it lies: a matrix of 0, 1 and -1, and a shift.
type motion struct {
	xx, xy, yx, yy length.Length
	by             geom.Point
}

var (
	still   = motion{xx: 1, yy: 1}
	mirror  = motion{xx: -1, yy: 1} // in x
	quarter = motion{xy: -1, yx: 1} // a turn counter-clockwise
)

// then returns the motion that does m first and n after it.
func (m motion) then(n motion) motion {
	return motion{
		xx: n.xx*m.xx + n.xy*m.yx, xy: n.xx*m.xy + n.xy*m.yy,
		yx: n.yx*m.xx + n.yy*m.yx, yy: n.yx*m.xy + n.yy*m.yy,
		by: n.point(m.by),
	}
}

func (m motion) shifted(by geom.Point) motion {
	m.by = m.by.Add(by)
	return m
}

func (m motion) point(p geom.Point) geom.Point {
	return geom.Point{X: m.xx*p.X + m.xy*p.Y, Y: m.yx*p.X + m.yy*p.Y}.Add(m.by)
}

// contour moves a contour. A mirrored one runs the other way round.
func (m motion) contour(c geom.Contour) geom.Contour {
	if m == still {
		return c
	}
	return m.appendContour(make(geom.Contour, 0, len(c)), c)
}

func (m motion) appendContour(dst, c geom.Contour) geom.Contour {
	sense := float64(m.xx*m.yy - m.xy*m.yx)
	for _, v := range c {
		dst = append(dst, geom.Vertex{Point: m.point(v.Point), Bulge: sense * v.Bulge})
	}
	return dst
}
