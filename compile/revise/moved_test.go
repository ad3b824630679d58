package revise

import (
	"testing"

	"barwright/compile/model"
	"barwright/lang/length"
)

// TestMovedWords puts moves into words, worked out by hand in quarter inches.
func TestMovedWords(t *testing.T) {
	const q = length.Inch / 4
	for _, c := range []struct {
		name    string
		kind    model.AnswerKind
		was, is []model.Length
		want    string
	}{
		{"cabinet.a.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{0, 40}, ""},
		{"cabinet.a.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{1, 41}, "moved 1/4 in to the right"},
		{"cabinet.a.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{0, 39}, "1/4 in narrower"},
		{"cabinet.a.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{-2, 40}, "1/2 in wider at its left end"},
		{"cabinet.a.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{2, 41}, "1/4 in narrower, its left end 1/2 in to the right"},
		{"cabinet.a.placed.z", model.AsSpan, []model.Length{0, 40}, []model.Length{0, 44}, "1 in taller"},
		{"counter.a.placed.z", model.AsSpan, []model.Length{0, 6}, []model.Length{4, 10}, "moved 1 in higher"},
		{"counter.a.placed.z", model.AsSpan, []model.Length{0, 6}, []model.Length{0, 5}, "1/4 in thinner"},
		{"counter.a.placed.v", model.AsSpan, []model.Length{0, 96}, []model.Length{0, 100}, "1 in deeper"},
		{"knee_wall.a.placed.v", model.AsSpan, []model.Length{-14, 0}, []model.Length{-16, 0}, "1/2 in thicker at its rear"},
		{"knee_wall.a.placed.u", model.AsSpan, []model.Length{0, 400}, []model.Length{0, 396}, "1 in shorter"},
		{"cabinet.a.placed.door.v", model.AsSpan, []model.Length{93, 96}, []model.Length{92, 95}, "moved 1/4 in back"},
		{"drain.a.placed.outlet", model.AsLength, []model.Length{3}, []model.Length{2}, "1/4 in lower"},
		{"drain.a.placed.arm", model.AsLength, []model.Length{3}, []model.Length{4}, "1/4 in more"},
		{"knee_wall.a.placed.studs", model.AsList, []model.Length{3, 64, 128}, []model.Length{3, 65, 128}, "no. 2: 1/4 in to the right"},
		{"knee_wall.a.placed.studs", model.AsList, []model.Length{3, 64}, []model.Length{2, 63}, "all moved 1/4 in to the left"},
		{"knee_wall.a.placed.studs", model.AsList, []model.Length{3, 64, 128}, []model.Length{3, 64}, "1 fewer"},
		{"knee_wall.a.placed.studs", model.AsList, []model.Length{3, 64, 128}, []model.Length{3, 48, 88, 128}, "1 more; 2 stand where one stood"},
		{"knee_wall.a.placed.studs", model.AsList, []model.Length{0, 0, 0, 0, 0, 0, 0}, []model.Length{1, 1, 1, 1, 1, 1, 0},
			"no. 1: 1/4 in to the right, no. 2: 1/4 in to the right, no. 3: 1/4 in to the right, no. 4: 1/4 in to the right, and 2 others"},
		{"skin.a.placed.seams", model.AsList, []model.Length{64}, []model.Length{66}, "moved 1/2 in to the right"},
		{"cabinet.a.placed.door.hinges", model.AsList, []model.Length{28, 100}, []model.Length{28, 99}, "no. 2: 1/4 in lower"},
		{"run.a.placed.joint.1.v", model.AsList, []model.Length{8, 88}, []model.Length{8, 90}, "no. 2: 1/2 in forward"},
		{"outlet.a.placed.room", model.AsList, []model.Length{8, 8, 8}, []model.Length{7, 8, 9}, "moved 1/4 in against x, 1/4 in higher"},
		{"room.floor.placed.datum", model.AsList, []model.Length{8, 8}, []model.Length{8, 7}, "moved 1/4 in against y"},
		{"room.floor.placed.line", model.AsLength, []model.Length{160}, []model.Length{164}, "1 in higher"},
		{"run.a.placed.rear", model.AsLength, []model.Length{-1}, []model.Length{1}, "1/2 in forward"},
		{"cabinet.a.placed.shim.1", model.AsLength, []model.Length{1}, []model.Length{3}, "1/2 in more"},
		{"cabinet.a.placed.gap.2", model.AsLength, []model.Length{3}, []model.Length{1}, "1/2 in less"},
		{"cabinet.gap.placed.u", model.AsSpan, []model.Length{0, 40}, []model.Length{1, 41}, "moved 1/4 in to the right"},
		{"outlet.a.placed.cover.height", model.AsLength, []model.Length{8}, []model.Length{9}, "1/4 in higher"},
	} {
		scaled := func(of []model.Length) []model.Length {
			out := make([]model.Length, len(of))
			for i, l := range of {
				out[i] = l * q
			}
			return out
		}
		d := &differ{new: &model.Model{Build: model.Build{Unit: length.Inches, Marks: length.Inch / 16}}}
		was := &model.Answer{Name: c.name, Kind: c.kind, Lengths: scaled(c.was)}
		is := &model.Answer{Name: c.name, Kind: c.kind, Lengths: scaled(c.is)}
		if have := d.how(was, is); have != c.want {
			t.Errorf("%s from %v to %v: %q, want %q", c.name, c.was, c.is, have, c.want)
		}
	}
}
