package manybuild

import "fmt"

// cabinet is one as it is written, without its name.
type cabinet struct {
	name  string
	width number
	body  string
	plug  bool // an outlet behind it is reached by doors
}

// sinkBox is a cabinet for a sink, wide enough for that.
func (w *writer) sinkBox() cabinet {
	return w.unlike(func() (number, string, bool) {
		return w.between(34, 38), fmt.Sprintf("false_front = %v\n    doors = 2", w.between(5, 7)), false
	})
}

// cabinet draws one that is none of those before.
func (w *writer) cabinet() cabinet {
	kinds := []func() (number, string, bool){
		func() (number, string, bool) {
			return w.between(14, 20), fmt.Sprintf("doors = 1\n    hinged = %q\n    fixed_shelves = [%v]\n    shelves = 1", w.side(), w.between(15, 22)), false
		},
		func() (number, string, bool) {
			return w.between(24, 34), fmt.Sprintf("doors = 2\n    fixed_shelves = [%v]\n    shelves = 1", w.between(22, 25)), true
		},
		func() (number, string, bool) {
			return w.between(16, 30), fmt.Sprintf("drawers = [%v, rest, rest]", w.between(5, 8)), false
		},
		func() (number, string, bool) {
			return w.between(15, 20), fmt.Sprintf("doors = 1\n    hinged = %q\n    drawers = [%v]\n    shelves = 1", w.side(), w.between(5, 7)), false
		},
		func() (number, string, bool) {
			return w.between(20, 30), fmt.Sprintf("fixed_shelves = [%v]", w.between(14, 22)), false
		},
		func() (number, string, bool) {
			wide := w.between(36, 42)
			return wide, fmt.Sprintf("dividers = [%v]\n    shelves = %d", wide/2+w.between(-3, 3), 1+w.chance.IntN(2)), false
		},
	}
	return w.unlike(kinds[w.chance.IntN(len(kinds))])
}

func (w *writer) side() string { return []string{"left", "right"}[w.chance.IntN(2)] }

// unlike draws until it has a cabinet that there is not.
func (w *writer) unlike(draw func() (number, string, bool)) cabinet {
	for {
		width, body, plug := draw()
		key := fmt.Sprint(width, body)
		if !w.made[key] {
			w.made[key] = true
			w.cabinets++
			return cabinet{fmt.Sprintf("c%d", w.cabinets), width, body, plug}
		}
	}
}

func (w *writer) box(c cabinet) {
	w.printf("  cabinet %q {\n    width = %v\n    %s\n  }\n", c.name, c.width, c.body)
}
