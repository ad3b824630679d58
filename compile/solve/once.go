package solve

import (
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
)

// checkOnce refuses two slabs on one thing, and two knee walls behind one run.
func (s *solver) checkOnce() {
	for _, pair := range []struct{ kind, attr, place string }{
		{"knee_wall", "behind", "behind"}, {"counter", "over", "on"}, {"bar_top", "over", "on"},
	} {
		s.once("place-taken", s.Source.Top(pair.kind), pair.attr, func(b *lang.Block) string {
			return "stand " + pair.place + " " + s.Ref(b, pair.attr).Describe()
		})
	}
}

// once refuses blocks of which an attribute says the same as one before them,
// in words what both do, and returns the others.
func (s *solver) once(slug string, blocks []*lang.Block, attr string, does func(*lang.Block) string) []*lang.Block {
	first := map[string]*lang.Block{} // by what they say; lookup only
	var out []*lang.Block
	for _, b := range blocks {
		says := s.Text(b, attr)
		if one := first[says]; one != nil {
			s.Findings.Errorf(slug, b.Attr(attr).Expr.At, "leave one of them out",
				"%s and %s both %s.", finding.Capital(one.Describe()), b.Describe(), does(b)).
				Also(one.Attr(attr).Expr.At, "the first one")
			continue
		}
		first[says] = b
		out = append(out, b)
	}
	return out
}

// checkBehind refuses a knee wall that the walls of the room leave no place.
func (s *solver) checkBehind(b *lang.Block, run *model.Run) bool {
	if run.Along {
		s.Findings.Errorf("no-room-behind", b.Attr("behind").Expr.At, "out_from = wall.NAME in the run, so that its back stands free",
			"Run %q stands against wall %q: there is no room for a knee wall behind it.", run.Name, run.Wall)
		return false
	}
	for _, end := range []struct {
		end  model.End
		attr string
	}{{model.Left, "left_inset"}, {model.Right, "right_inset"}} {
		if inset := s.Length(b, end.attr); inset < 0 && !run.FreeAt(end.end) {
			s.Findings.Errorf("framing-in-wall", b.Attr(end.attr).Expr.At, end.attr+" = 0",
				"The framing would run into wall %q, by %s.", run.Wall, s.Show(-inset))
			return false
		}
	}
	return true
}
