package record

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/model"
)

// check finds what is wrong with a model although each member is what it should be.
// The names of values are unique, and so are the IDs and the labels of parts; wherever
// a part is named there is one. What is cut runs the right way round, and the axes of a
// part are three.
func check(m *model.Model) *fault {
	n := len(m.Parts)
	c := checker{make(map[string]bool, n), make(map[string]bool, n), nil}
	names := make(map[string]bool, len(m.Values)) // for lookup
	for i := range m.Values {
		c.once(names, m.Values[i].Name, ".values[%d].name", i)
	}
	for i := range m.Parts {
		c.part(&m.Parts[i], i)
	}
	c.things(m)
	c.layouts(m)
	return c.found
}

// checker knows the parts by ID and by label, for lookup only, and the first fault.
type checker struct {
	ids, labels map[string]bool
	found       *fault
}

// fail takes note of a fault whose path has indices in it.
func (c *checker) fail(says, path string, indices ...any) {
	if c.found == nil {
		c.found = &fault{at: -1, path: fmt.Sprintf(path, indices...), says: says}
	}
}

// once takes note of a name that only one thing may have.
func (c *checker) once(seen map[string]bool, name, path string, indices ...any) {
	switch {
	case name == "":
		c.fail("this is empty", path, indices...)
	case seen[name]:
		c.fail(fmt.Sprintf("an earlier one is called %q too", name), path, indices...)
	}
	seen[name] = true
}

// there sees that a part exists; an empty name is of none.
func (c *checker) there(among map[string]bool, name, path string, indices ...any) {
	if name != "" && !among[name] {
		c.fail(fmt.Sprintf("there is no part %q", name), path, indices...)
	}
}

func (c *checker) part(p *model.Part, i int) {
	c.once(c.ids, p.ID, ".parts[%d].id", i)
	c.once(c.labels, p.Label, ".parts[%d].label", i)
	const wrong = "this runs the wrong way round, or round nothing"
	if p.Outline.Area() <= 0 {
		c.fail(wrong, ".parts[%d].outline", i)
	}
	for j := range p.Openings {
		o := &p.Openings[j]
		if area := o.Shape.Area(); area == 0 || area > 0 != o.Notch {
			c.fail(wrong, ".parts[%d].openings[%d].shape", i, j)
		}
	}
	for j := range p.Recesses {
		if p.Recesses[j].Shape.Area() <= 0 {
			c.fail(wrong, ".parts[%d].recesses[%d].shape", i, j)
		}
	}
	if axes := 1<<p.Placement.X.Axis | 1<<p.Placement.Y.Axis | 1<<p.Placement.Out.Axis; axes != 1<<geom.U|1<<geom.V|1<<geom.Z {
		c.fail(fmt.Sprintf("x, y and out of %q are not along three axes", p.ID), ".parts[%d].placement", i)
	}
}

// things sees that what stands in the room has the parts that it names.
func (c *checker) things(m *model.Model) {
	for i, run := range m.Runs {
		for j, box := range run.Boxes {
			for k, front := range box.Fronts {
				c.there(c.ids, front.Part, ".runs[%d].boxes[%d].fronts[%d].part", i, j, k)
			}
		}
	}
	for i, wall := range m.KneeWalls {
		for j, support := range wall.Supports {
			c.there(c.ids, support.Part, ".knee_walls[%d].supports[%d].part", i, j)
		}
	}
	for i, slab := range m.Slabs {
		for j, part := range slab.Parts {
			c.there(c.ids, part, ".slabs[%d].parts[%d]", i, j)
		}
		for j, cut := range slab.Cuts {
			c.there(c.ids, cut.Part, ".slabs[%d].cuts[%d].part", i, j)
		}
	}
}

// layouts does so for what is made and bought.
func (c *checker) layouts(m *model.Model) {
	for i, cut := range m.Cuts {
		for j, label := range cut.Parts {
			c.there(c.labels, label, ".cuts[%d].parts[%d]", i, j)
		}
	}
	for i, layout := range m.Layouts {
		for j, blank := range layout.Blanks {
			for k := range blank.Placed {
				c.there(c.ids, blank.Placed[k].Part, ".layouts[%d].blanks[%d].placed[%d].part", i, j, k)
			}
		}
	}
	for i := range m.Programs {
		c.there(c.ids, m.Programs[i].Part, ".programs[%d].part", i)
	}
	for i := range m.Routings {
		c.there(c.ids, m.Routings[i].Part, ".routings[%d].part", i)
	}
}
