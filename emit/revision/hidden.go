package revision

import (
	"math/bits"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// covers finds the shapes that cover others. Each is in the cells that it lies in of a
// grid about as coarse as it is large: four at most, whatever its size.
type covers struct {
	grids []scale
	cells map[cell][]int // indices of shapes, rising; lookup only
}

// scale is how wide and how high the cells of a grid are, as powers of two.
type scale struct{ x, y int }

type cell struct {
	in   scale
	x, y int64
}

// hiders are the shapes of a drawing, from back to front, that hide what is behind them.
func hiders(shapes []model.Shape) *covers {
	c := &covers{cells: map[cell][]int{}}
	for i := range shapes {
		if s := &shapes[i]; !s.Fills() || len(s.Lines) != 4 || s.Kind == model.ShapeOpening {
			continue
		}
		at := shapes[i].Lines.Bounds()
		in := scale{bits.Len64(uint64(at.X.Size())), bits.Len64(uint64(at.Y.Size()))}
		if !slices.Contains(c.grids, in) {
			c.grids = append(c.grids, in)
		}
		low, high := in.cell(at.X.Lo, at.Y.Lo), in.cell(at.X.Hi, at.Y.Hi)
		for x := low.x; x <= high.x; x++ {
			for y := low.y; y <= high.y; y++ {
				k := cell{in, x, y}
				c.cells[k] = append(c.cells[k], i)
			}
		}
	}
	return c
}

func (s scale) cell(x, y geom.Length) cell { return cell{s, int64(x) >> s.x, int64(y) >> s.y} }

// hide reports whether a shape before it covers one of the drawing.
func (c *covers) hide(shapes []model.Shape, i int) bool {
	at := shapes[i].Lines.Bounds()
	return slices.ContainsFunc(c.grids, func(in scale) bool {
		of := c.cells[in.cell(at.X.Lo, at.Y.Lo)]
		from, _ := slices.BinarySearch(of, i+1)
		return slices.ContainsFunc(of[from:], func(j int) bool { return shapes[j].Lines.Bounds().Contains(at) })
	})
}
