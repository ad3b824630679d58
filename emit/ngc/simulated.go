package ngc

import (
	"bytes"
	"fmt"
	"io"
	"reflect"
	"slices"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// simulated measures a program as it is read back from its text.
func simulated(name string, write func(io.Writer) error, measure func(text []byte) (replay.Measures, error)) (replay.Measures, error) {
	var text bytes.Buffer
	if err := write(&text); err != nil {
		return replay.Measures{}, err
	}
	took, err := measure(text.Bytes())
	if err != nil {
		return took, fmt.Errorf("program %s: %w", name, err)
	}
	return took, nil
}

// measured measures a program; of those that are alike only the first is simulated.
func (s *sheet) measured(p *model.Program) (replay.Measures, error) {
	for _, known := range s.took {
		if alike(known.Program, p) {
			return known.Measures, nil
		}
	}
	took, err := simulated(p.Name, func(w io.Writer) error { return Write(w, s.model.Build, p) },
		func(text []byte) (replay.Measures, error) { return replay.Measure(text, p) })
	s.took = append(s.took, taken{p, took})
	return took, err
}

// taken is what a program takes.
type taken struct {
	*model.Program
	replay.Measures
}

// alike reports whether two programs are the same in all on which their measures hang: the bit, its moves, and the wood that
// it can reach.
func alike(p, o *model.Program) bool {
	return slices.Equal(p.Moves, o.Moves) && near(p) == near(o) && reflect.DeepEqual(p.Tool, o.Tool)
}

// near is the wood that a program's bit can reach.
func near(p *model.Program) geom.Rect {
	plan, _ := p.Reach()
	return p.Stock.Intersect(plan.Grow(p.Tool.Diameter))
}

func simulatedRouting(b model.Build, r *model.Routing) (replay.Measures, error) {
	return simulated(r.Name, func(w io.Writer) error { return WriteRouting(w, b, r) },
		func(text []byte) (replay.Measures, error) { return replay.MeasureRouting(text, r) })
}
