package rule

import (
	"barwright/compile/model"
	"barwright/compile/survey"
	"barwright/lang/length"
)

// Above says what heights count from: "above the floor", or "above the datum" of one that
// was read.
func (b *Build) Above() string { return "above " + b.Room.Floor.Zero() }

// Level shows a height, and on a floor that was read that it is one above the datum.
func (b *Build) Level(z length.Length) string {
	if len(b.Room.Floor.Readings) > 0 {
		return b.Show(z) + " " + b.Above()
	}
	return b.Show(z)
}

// Ground is the height of the floor above the datum.
func (b *Build) Ground() survey.Surface {
	return Once(b, func(b *Build) survey.Surface { return b.Room.Floor.Surface() })
}

// Measured tells a height above the datum as one measures and writes it at a place along a
// wall: up from the floor there, or down from the line. It is rounded to the mark that is
// no lower, or no higher.
func (b *Build) Measured(wall *model.Wall, along, z length.Length, higher bool) string {
	f := &b.Room.Floor
	if b.Text(b.Block("wall."+wall.Name), "heights_from") == "line" {
		if higher {
			return b.Show(length.Down(f.Line-z, b.Marks)) + " below the line"
		}
		return b.Show(length.Up(f.Line-z, b.Marks)) + " below the line"
	}
	level, _ := b.Ground().At(wall.Frame.At(along, 0))
	z -= length.Round(level-f.Laid, b.Marks)
	if higher {
		z = length.Up(z, b.Marks)
	} else {
		z = length.Down(z, b.Marks)
	}
	if len(f.Readings) > 0 {
		return b.Show(z) + " above the floor there"
	}
	return b.Show(z) + " above the floor"
}
