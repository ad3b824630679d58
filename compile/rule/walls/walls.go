// Package walls judges walls as surveyed, and what it takes to set a build against them
// (SPEC.md 11.13).
package walls

import (
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/compile/survey"
	"barwright/lang/length"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "wall-bows", Look: wallBows},
	{Slug: "wall-out-of-plumb", Look: wallOutOfPlumb},
	{Slug: "wall-meets-box", Look: wallMeetsBox},
	{Slug: "scribe-wide", Look: scribeWide},
}

// wallBows looks for gaps behind boxes that shims do not bridge, and warns of the widest
// behind each run.
func wallBows(b *rule.Build) {
	most := b.FieldLength(b.Limits, "shim", "most")
	widest := map[string]*model.Gap{} // by run; lookup only
	for i := range b.Setting.Gaps {
		if g := &b.Setting.Gaps[i]; g.Behind > most && (widest[g.Run] == nil || g.Behind > widest[g.Run].Behind) {
			widest[g.Run] = g
		}
	}
	for i := range b.Setting.Rears {
		rear := &b.Setting.Rears[i]
		worst := widest[rear.Run]
		if worst == nil {
			continue
		}
		run := b.RunNamed(rear.Run)
		f := b.Findings.Warnf("wall-bows", b.WallNamed(rear.Wall).Why.At, "the wall packed out there, or taken back where it stands out most, and read again",
			"Run %q stands where wall %q stands out most, %s along and %s up. At %s along the wall's face is %s further back, behind a screw of %s: more than the %s that shims do.",
			run.Name, rear.Wall, b.Show(rear.At.X), b.Show(rear.At.Y), b.Show(worst.Along), b.Show(worst.Behind), model.BlockWords(worst.Box), b.Show(most))
		f.Also(run.Why.At, "the run")
		b.LimitOf(f, "shim")
	}
}

// lean is by how much a wall's face moves between two heights at a place along it.
type lean struct {
	along     length.Length
	low, high survey.Reading // the face at both
	may       length.Length
}

func (l *lean) by() length.Length { return length.Apart(l.high.Value, l.low.Value) }

// wallOutOfPlumb looks up and down each wall at all places that it was read at, and notes
// where it leans most.
func wallOutOfPlumb(b *rule.Build) {
	most, over := b.FieldLength(b.Limits, "wall_plumb", "most"), b.FieldLength(b.Limits, "wall_plumb", "over")
	for i := range b.Room.Walls {
		w := &b.Room.Walls[i]
		var worst *lean
		for _, r := range w.Read {
			for _, l := range leans(w, r.Along) {
				l.may = length.Length(math.Round(float64(most) * max(float64(l.high.At.Y-l.low.At.Y)/float64(over), 1)))
				if l.by() > l.may && (worst == nil || l.by()-l.may > worst.by()-worst.may) {
					worst = &l
				}
			}
		}
		if worst == nil {
			continue
		}
		way := "out"
		if worst.high.Value < worst.low.Value {
			way = "back"
		}
		f := b.Findings.Notef("wall-out-of-plumb", w.Why.At, "At %s along wall %q its face leans %s by %s from %s to %s up; %s is common.",
			b.Show(worst.along), w.Name, way, b.Show(worst.by()), b.Show(worst.low.At.Y), b.Show(worst.high.At.Y), b.Show(worst.may))
		b.LimitOf(f, "wall_plumb")
	}
}

// leans are those between any two bends of a wall's face, straight up at a place.
func leans(w *model.Wall, along length.Length) (out []lean) {
	low, high := w.Read[0].Height, w.Read[0].Height
	for _, r := range w.Read {
		low, high = min(low, r.Height), max(high, r.Height)
	}
	line := w.Face().Along(geom.Point{X: along, Y: low}, geom.Point{X: along, Y: high})
	for i, p := range line {
		for _, q := range line[:i] {
			out = append(out, lean{along: along, low: q, high: p})
		}
	}
	return out
}

// wallMeetsBox refuses a run with a box at an end where the next wall stands out into it.
func wallMeetsBox(b *rule.Build) {
	for i := range b.Runs {
		run := &b.Runs[i]
		for _, end := range []model.End{model.Left, model.Right} {
			if run.Along && !run.FreeAt(end) && len(run.Boxes) > 0 {
				boxMeets(b, run, wallAt(b, run, end), end)
			}
		}
	}
}

// wallAt is the wall that an end of a run along another one meets.
func wallAt(b *rule.Build, run *model.Run, end model.End) *model.Wall {
	along := b.Ref(b.Block("run."+run.Name), "along")
	if end == model.Left {
		return b.WallNamed(b.WallBefore(along).Name)
	}
	return b.WallNamed(b.WallAfter(along).Name)
}

func boxMeets(b *rule.Build, run *model.Run, wall *model.Wall, end model.End) {
	box, u := &run.Boxes[0], length.Length(0)
	if end == model.Right {
		box, u = &run.Boxes[len(run.Boxes)-1], run.Length
	}
	if box.Kind == model.Filler || len(wall.Read) == 0 {
		return
	}
	rear, roomRear := wall.Frame.Local(run.Frame.At(u, 0))
	front, roomFront := wall.Frame.Local(run.Frame.At(u, run.Depth))
	slope := float64(roomFront-roomRear) / float64(front-rear)
	deepest, miss := survey.Reading{}, length.Length(0)
	for _, peak := range wall.Peaks(geom.Rect{X: geom.Between(rear, front), Y: box.Hull.Z}) {
		there := roomRear + length.Length(math.Round(slope*float64(peak.At.X-rear)))
		if m := peak.Value - max(there, 0); m > miss {
			deepest, miss = peak, m
		}
	}
	if miss > length.Micrometre {
		b.Findings.Errorf("wall-meets-box", box.Why.At, "a filler at that end of the run",
			"Wall %q stands out %s at %s along and %s up, %s into %s at the %s end of run %q.",
			wall.Name, b.Show(deepest.Value), b.Show(deepest.At.X), b.Show(deepest.At.Y), b.Show(miss), box.Words(), end, run.Name).
			Also(wall.Why.At, "the wall")
	}
}

// scribeWide looks for fillers whose wall moves by more than their scribe: as drawn without
// readings they would have left a gap.
func scribeWide(b *rule.Build) {
	for i := range b.Parts {
		p := &b.Parts[i]
		if !p.Is("filler", "strip") || len(p.Scribes) == 0 {
			continue
		}
		c, block := &p.Scribes[0], b.Block(p.Block())
		scribe := b.Length(block, "scribe")
		least, most := c.Stations[0], c.Stations[0]
		for _, s := range c.Stations[1:] {
			if s.Keep < least.Keep {
				least = s
			}
			if s.Keep > most.Keep {
				most = s
			}
		}
		if differ := most.Keep - least.Keep; differ > scribe {
			at := block.Said("scribe")
			b.Findings.Notef("scribe-wide", at, "The wall beside %s makes its strip %s wide at one height and %s at another: %s more than its scribe of %s. The blank is cut that much wider, and one sees it taper.",
				block.Describe(), b.Show(least.Keep), b.Show(most.Keep), b.Show(differ-scribe), b.Show(scribe)).
				Also(b.Block(c.To).Head, "the wall")
		}
	}
}
