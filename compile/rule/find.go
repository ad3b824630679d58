package rule

import (
	"iter"
	"math"
	"slices"

	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/length"
)

// Part is the part of an ID, nil where the build has none.
func (b *Build) Part(id string) *model.Part { return b.byID[id] }

// PartsOf lists the parts of a block, by its key.
func (b *Build) PartsOf(key string) []*model.Part { return b.byBlock[key] }

// RunNamed finds a run of the build.
func (b *Build) RunNamed(name string) *model.Run {
	return &b.Runs[slices.IndexFunc(b.Runs, func(r model.Run) bool { return r.Name == name })]
}

// WallNamed finds a wall of the room.
func (b *Build) WallNamed(name string) *model.Wall {
	return &b.Room.Walls[slices.IndexFunc(b.Room.Walls, func(w model.Wall) bool { return w.Name == name })]
}

// StudsBehind lists the studs that are known of the wall of a run, as places along the
// run, rising.
func (b *Build) StudsBehind(run *model.Run) []length.Length {
	wall := b.WallNamed(run.Wall)
	studs := make([]length.Length, len(wall.Studs))
	for i, at := range wall.Studs {
		studs[i], _ = run.Frame.Local(wall.Frame.At(at, 0))
	}
	slices.Sort(studs)
	return studs
}

// CarcassOf is the block that says how a box is made: its own or that of its run.
func (b *Build) CarcassOf(box *model.Box) *lang.Block {
	block := b.Block(box.Key())
	if own := b.Ref(block, "carcass"); own != nil {
		return own
	}
	return b.Ref(block.Parent, "carcass")
}

// Boxes goes through the boxes of a kind, run by run.
func (b *Build) Boxes(kind model.BoxKind) iter.Seq2[*model.Run, *model.Box] {
	return func(yield func(*model.Run, *model.Box) bool) {
		for i := range b.Runs {
			run := &b.Runs[i]
			for j := range run.Boxes {
				if run.Boxes[j].Kind == kind && !yield(run, &run.Boxes[j]) {
					return
				}
			}
		}
	}
}

// FastIn lists the parts of a cabinet, by its key, that are fast in it once it stands:
// no fronts, no drawers, no shelves on pins.
func (b *Build) FastIn(cabinet string) []*model.Part {
	loose := []string{"door", "drawer", "false-front", "shelf"}
	return slices.DeleteFunc(slices.Clone(b.byBlock[cabinet]), func(p *model.Part) bool {
		return slices.ContainsFunc(loose, func(name string) bool { return p.Is("cabinet", name) })
	})
}

// density is that of a stock, in kg/m3; 0 where it is not said.
func (b *Build) density(stock string) float64 {
	d, known := b.dense[stock]
	if !known {
		d = b.Number(b.Block(stock), "density")
		b.dense[stock] = d
	}
	return d
}

// Mass is what a part weighs, in kg, without what is cut out of it. It is not a number
// where nothing says what its stock weighs, and no sum with it is.
func (b *Build) Mass(p *model.Part) float64 {
	density := b.density(p.Stock)
	if density == 0 {
		return math.NaN()
	}
	mm2 := math.Abs(p.Outline.Area())
	for i := range p.Openings {
		if o := &p.Openings[i]; !o.Notch {
			mm2 -= math.Abs(o.Shape.Area())
		}
	}
	return mm2 * p.Thickness.MM() / 1e9 * density
}
