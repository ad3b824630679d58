package model

import (
	"barwright/compile/geom"
	"barwright/compile/survey"
	"barwright/lang/length"
)

// WallReading is how far a wall's face stands out of the straight plumb plane through
// its line, negative where it stands back. Height counts from the datum, see [Floor].
type WallReading struct {
	Along, Height Length
	Off           Length
	Why           Why
}

// Face is how far a wall's face stands out of its straight plane at each point along it
// and up.
func (w *Wall) Face() survey.Surface {
	readings := make([]survey.Reading, len(w.Read))
	for i, r := range w.Read {
		readings[i] = survey.Reading{At: geom.Point{X: r.Along, Y: r.Height}, Value: r.Off}
	}
	return survey.New(readings)
}

// Peaks are where a wall's face can be extreme within a rectangle, against any plane: a
// surface that is linear over triangles is so at a reading or where it bends on the
// rectangle's edge.
func (w *Wall) Peaks(within geom.Rect) []survey.Reading {
	x, y, face := within.X, within.Y, w.Face()
	corners := [...]geom.Point{{X: x.Lo, Y: y.Lo}, {X: x.Hi, Y: y.Lo}, {X: x.Hi, Y: y.Hi}, {X: x.Lo, Y: y.Hi}}
	var out []survey.Reading
	for i, c := range corners {
		out = append(out, face.Along(c, corners[(i+1)%len(corners)])...)
	}
	for _, r := range w.Read {
		if x.Holds(r.Along) && y.Holds(r.Height) {
			out = append(out, survey.Reading{At: geom.Point{X: r.Along, Y: r.Height}, Value: r.Off})
		}
	}
	return out
}

// Reach is between what a wall's face lies over its straight plane within a rectangle, and
// where it stands out most.
func (w *Wall) Reach(within geom.Rect) (off geom.Span, at geom.Point) {
	peaks := w.Peaks(within)
	off, at = geom.Span{Lo: peaks[0].Value, Hi: peaks[0].Value}, peaks[0].At
	for _, p := range peaks[1:] {
		if p.Value > off.Hi {
			at = p.At
		}
		off = off.Union(geom.Span{Lo: p.Value, Hi: p.Value})
	}
	return off, at
}

// bySide is how far from the sides of a box its screws go into a wall that holds them anywhere.
const bySide = 50 * length.Millimetre

// WallLines are where the screws of a box go into its wall, along that: on the studs behind
// its clear width, or by its two sides where the wall holds a screw anywhere.
func (r *Run) WallLines(box *Box, wall *Wall) (lines []Length) {
	along := func(u Length) Length {
		at, _ := wall.Frame.Local(r.Frame.At(u, 0))
		return at
	}
	if wall.Backing != "studs" || len(wall.Studs) == 0 {
		in := min(bySide, box.Inside.U.Size()/2)
		return []Length{along(box.Inside.U.Lo + in), along(box.Inside.U.Hi - in)}
	}
	for _, stud := range wall.Studs {
		if u, _ := r.Frame.Local(wall.Frame.At(stud, 0)); box.Inside.U.Holds(u) {
			lines = append(lines, stud)
		}
	}
	return lines
}
