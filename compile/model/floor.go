package model

import (
	"barwright/compile/geom"
	"barwright/compile/survey"
)

// Floor is the floor as surveyed from one level line. Heights count from the datum: the
// level plane through the highest point that anything bears on, once what is laid on the
// floor before the boxes are set lies there. Without readings the floor is level at 0.
type Floor struct {
	Readings []FloorReading
	Laid     Length     // on the floor, after the readings
	ReadTo   Length     // how well they are known, up or down
	Line     Length     // height of the level line; 0 without readings
	Datum    geom.Point // the highest bearing point
	Bears    string     // what bears there: "cabinet urn, rear left corner"; empty where nothing does
	Why      Why
}

// Zero names what heights count from: "the floor", or of one that was read "the datum".
func (f *Floor) Zero() string {
	if len(f.Readings) > 0 {
		return "the datum"
	}
	return "the floor"
}

// FloorReading is one point of the floor, in the room's plan.
type FloorReading struct {
	At    geom.Point
	Below Length // below the line, as read
	Z     Length // above the datum, with what is laid on it
}

// Surface is the height of the floor above the datum at each point of the room's plan,
// with what is laid on it.
func (f *Floor) Surface() survey.Surface {
	readings := make([]survey.Reading, len(f.Readings))
	for i, r := range f.Readings {
		readings[i] = survey.Reading{At: r.At, Value: r.Z}
	}
	return survey.New(readings)
}
