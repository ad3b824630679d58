// Package floors judges the floor as surveyed, and what it takes to set a build on it
// (SPEC.md 11.13).
package floors

import (
	"fmt"
	"math"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Rules are those of the section, in its order.
var Rules = []rule.Rule{
	{Slug: "shims-too-thick", Look: shimsTooThick},
	{Slug: "tops-not-flat", Look: topsNotFlat},
	{Slug: "floor-not-flat", Look: floorNotFlat},
	{Slug: "floor-not-read", Look: floorNotRead},
	{Slug: "readings-few", Look: readingsFew},
}

func shimsTooThick(b *rule.Build) {
	most := b.FieldLength(b.Limits, "shim", "most")
	var worst *model.Shim
	count := 0
	for i := range b.Setting.Shims {
		s := &b.Setting.Shims[i]
		if s.Thick <= most {
			continue
		}
		if count++; worst == nil || s.Gap > worst.Gap {
			worst = s
		}
	}
	if worst == nil {
		return
	}
	f := b.Findings.Warnf("shims-too-thick", b.Room.Floor.Why.At, "the floor levelled there, or a board under it first and shims on that",
		"%s over %s thick: the thickest is %s, under %s, %s. The highest point that anything bears on is under %s.",
		shims(count), b.Show(most), b.Show(worst.Thick), worst.Words(), worst.Under, b.Room.Floor.Bears)
	f.Also(worst.Why.At, "it stands there")
	b.LimitOf(f, "shim")
}

func shims(n int) string {
	if n == 1 {
		return "One shim is"
	}
	return fmt.Sprintf("%d shims are", n)
}

// topsNotFlat compares what may be between the tops of boxes and one plane with what is
// allowed.
func topsNotFlat(b *rule.Build) {
	if len(b.Setting.Shims) == 0 {
		return
	}
	most, left, read := b.Length(b.Limits, "tops_flat"), b.Setting.Left(), b.Room.Floor.ReadTo
	if off := left + 2*read; off > most {
		b.LimitOf(b.Findings.Warnf("tops-not-flat", b.Room.Floor.Why.At, "thinner shims, or the floor read more closely",
			"The tops of the boxes may lie %s out of one plane: shims in steps of %s leave %s, and readings that may be %s off, up or down, the rest. At most %s is allowed.",
			b.Show(off), b.Show(b.Setting.Step), b.Show(left), b.Show(read), b.Show(most)), "tops_flat")
	}
}

// uneven is by how much two readings differ, over a distance, and how much they may.
type uneven struct {
	a, b        *model.FloorReading
	apart       float64
	differ, may length.Length
}

func floorNotFlat(b *rule.Build) {
	flat := func(field string) length.Length { return b.FieldLength(b.Limits, "floor_flat", field) }
	near, nearOver, far, farOver := flat("near"), flat("near_over"), flat("far"), flat("far_over")
	var worst *uneven
	judge := func(p, q *model.FloorReading, may func(apart float64) (length.Length, bool)) {
		u := uneven{a: p, b: q, apart: math.Hypot(float64(p.At.X-q.At.X), float64(p.At.Y-q.At.Y)), differ: length.Apart(p.Z, q.Z)}
		most, judged := may(u.apart)
		if u.may = most; judged && u.differ > most && (worst == nil || u.differ-most > worst.differ-worst.may) {
			worst = &u
		}
	}
	r := b.Room.Floor.Readings
	for i := range r {
		for j := range i {
			judge(&r[j], &r[i], func(apart float64) (length.Length, bool) {
				if apart <= float64(nearOver) {
					return min(near, far), true
				}
				return far, apart <= float64(farOver)
			})
		}
	}
	floor, byPlace := b.Ground(), map[geom.Point]*model.FloorReading{} // lookup only
	for i := range r {
		byPlace[r[i].At] = &r[i]
	}
	for _, t := range floor.Triangles() {
		for k := range t {
			judge(byPlace[t[k]], byPlace[t[(k+1)%3]], func(apart float64) (length.Length, bool) {
				return length.Length(math.Round(float64(near) * apart / float64(nearOver))), apart > float64(nearOver)
			})
		}
	}
	if worst == nil {
		return
	}
	high, low := worst.a, worst.b
	if high.Z < low.Z {
		high, low = low, high
	}
	b.LimitOf(b.Findings.Notef("floor-not-flat", b.Room.Floor.Why.At, "The floor is less flat than is common: from the reading at %s to that at %s it falls by %s in %s, where %s at most is usual.",
		place(b, high.At), place(b, low.At), b.Show(worst.differ), b.Show(marked(b, worst.apart)), b.Show(length.Round(worst.may, b.Marks))), "floor_flat")
}

func place(b *rule.Build, p geom.Point) string {
	return fmt.Sprintf("(%s, %s)", b.Show(p.X), b.Show(p.Y))
}

func marked(b *rule.Build, l float64) length.Length {
	return length.Round(length.Length(math.Round(l)), b.Marks)
}

func floorNotRead(b *rule.Build) {
	if few(b) {
		return
	}
	may := b.Length(b.Limits, "floor_beyond")
	var worst *model.Shim
	count := 0
	for i := range b.Setting.Shims {
		s := &b.Setting.Shims[i]
		if s.Off <= may {
			continue
		}
		if count++; worst == nil || s.Off > worst.Off {
			worst = s
		}
	}
	if worst == nil {
		return
	}
	f := b.Findings.Notef("floor-not-read", b.Room.Floor.Why.At, "%s more than %s outside the readings, where the floor is taken to go on flat: furthest is %s, %s, %s outside, at %s.",
		points(count), b.Show(may), worst.Words(), worst.Under, b.Show(length.Round(worst.Off, b.Marks)),
		place(b, geom.Point{X: length.Round(worst.At.X, b.Marks), Y: length.Round(worst.At.Y, b.Marks)}))
	f.Also(worst.Why.At, "it stands there")
	b.LimitOf(f, "floor_beyond")
}

func points(n int) string {
	if n == 1 {
		return "One point that something stands on lies"
	}
	return fmt.Sprintf("%d points that something stands on lie", n)
}

// few reports whether the readings make no surface: under three, or all on one line.
func few(b *rule.Build) bool {
	return len(b.Ground().Triangles()) == 0
}

func readingsFew(b *rule.Build) {
	n := len(b.Room.Floor.Readings)
	if n == 0 || len(b.Setting.Shims) == 0 || !few(b) {
		return
	}
	what := "there are " + finding.Counted(n, "reading")
	switch {
	case n == 1:
		what = "there is one reading"
	case n > 2:
		what += " on one line"
	}
	b.Findings.Notef("readings-few", b.Room.Floor.Why.At, "Of the floor %s: how it falls to the side is not known, and it is taken to be level there.", what)
}
