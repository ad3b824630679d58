package loads

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/length"
)

// withdrawal is what a screw holds in side grain, in newtons for each millimetre
// of thread: 2850 G^2 D pounds for each inch (NDS 12.2.2).
func withdrawal(gravity float64, diameter geom.Length) float64 {
	return 2850 * gravity * gravity * (diameter.MM() / 25.4) * poundForce / 25.4
}

// pull is the greatest tension of a group of screws that hold a moment about a
// line, each by its distance from that line.
func pull(moment float64, arms []float64) float64 {
	sum, most := 0.0, 0.0
	for _, y := range arms {
		sum += float64(y * y)
		most = max(most, y)
	}
	return moment * most / sum
}

// arms are how far behind the wall's face the screws of a plate's tail stand.
func (p *plate) arms() []float64 {
	tail := p.Steel.V.Size() - ofMM(p.beam.reach)
	var out []float64
	for _, bore := range p.part.Bores {
		if bore.Name == "screw down" {
			out = append(out, (tail - bore.At.Y).MM())
		}
	}
	return out
}

// grip is what a screw of a bar's tails holds for each millimetre of thread, in
// newtons, were it a lasting load.
func (t *bar) grip(b *rule.Build) float64 {
	return withdrawal(b.Number(b.Ref(t.knee, "lumber"), "gravity"), b.Length(b.Ref(t.supports, "screws"), "diameter"))
}

// pulled is the support whose screws are pulled most for what they hold, in newtons.
func (t *bar) pulled(b *rule.Build) (worst, bool) {
	lasting := b.FieldNumber(b.Limits, "bar_load", "duration")
	holds := t.grip(b) * t.thread(b, b.Ref(t.supports, "screws")).MM()
	return t.judge(func(p *plate, by int) (have, most float64) {
		most = holds
		if by == atEdge {
			most *= lasting
		}
		return pull(p.beam.moment(p.loads[by].add(p.dead), 0), p.arms()), most
	})
}

// screwsHold reports whether screws are stated and none is pulled too hard.
func (t *bar) screwsHold(b *rule.Build) bool {
	if b.Ref(t.supports, "screws") == nil {
		return false
	}
	_, fails := t.pulled(b)
	return !fails
}

func screwsPulled(b *rule.Build) {
	for _, t := range bars(b) {
		if t.supports == nil || b.Flag(t.supports, "bolted") {
			continue
		}
		if b.Ref(t.supports, "screws") == nil {
			b.Findings.Warnf("screws-pulled", t.supports.Head, "screws = screw.NAME, or bolted = true, where bolts go through with washers that somebody has reckoned",
				"Nothing holds the tails of the supports of knee wall %s, and bar top %s stands out %s over the room: who leans on it lifts them out of their recesses.",
				t.wall.Name, t.top.Name, b.Show(t.overhang())).
				Also(t.block.Head, "the bar top")
			continue
		}
		screw, lumber := b.Ref(t.supports, "screws"), b.Ref(t.knee, "lumber")
		w, fails := t.pulled(b)
		if !fails {
			continue
		}
		pull, holds := force.both(b, w.have, w.most)
		f := b.Findings.Warnf("screws-pulled", t.supports.Attr("screws").Expr.At, holdBetter(b, &t, w),
			"%s the screws furthest behind the edge of the wall are pulled by %s each at support %d, and %s of thread in %s holds %s: %s too little.%s",
			under(b, &t, w), pull, w.plate.number, b.Show(t.thread(b, screw)), lang.KindWords("stick")+" "+lumber.Name, holds, force.show(b, w.have-w.most), w.others())
		f.Also(screw.Head, "the screws").Also(lumber.Head, "the lumber")
		b.LimitOf(f, "bar_load")
	}
}

// thread is how much of a screw is in the wood under the steel of a bar.
func (t *bar) thread(b *rule.Build, screw *lang.Block) geom.Length {
	steel := t.plates[0].Steel.Z
	plates := length.Length(b.Count(t.knee, "top_plates")) * b.Length(b.Ref(t.knee, "lumber"), "thickness")
	wood := plates - (t.wall.Framing.Z.Hi - steel.Lo)
	return max(0, min(b.Length(screw, "length")-steel.Size(), wood))
}

// mostRows bounds how many rows of screws a mend asks for.
const mostRows = 6

// holdBetter is the mend for screws that are pulled: more of them where they find
// room on the tail, in two rows along it.
func holdBetter(b *rule.Build, t *bar, w worst) string {
	moment := w.have
	if arms := w.plate.arms(); len(arms) > 0 {
		moment = w.have / pull(1, arms)
	}
	tail := w.plate.Steel.V.Size() - ofMM(w.plate.beam.reach)
	hole := b.Length(b.Ref(t.supports, "screws"), "diameter") + b.Length(t.supports, "hole")
	for rows := 2; rows <= mostRows && tail >= 3*hole*length.Length(rows); rows++ {
		var arms []float64
		for i := range rows {
			y := tail.MM() * float64(2*i+1) / float64(2*rows)
			arms = append(arms, y, y)
		}
		if 2*rows > b.Count(t.supports, "screws_each") && w.most > 0 && pull(moment, arms) <= w.most {
			return fmt.Sprintf("screws_each = %d", 2*rows)
		}
	}
	return longerScrews(b, t, w)
}

// longerScrews is the mend for tails that find no room for more screws: longer ones,
// which reach into a second upper plate.
func longerScrews(b *rule.Build, t *bar, w worst) string {
	step, steel, most := 5*length.Millimetre, t.plates[0].Steel.Z, 2*b.Length(b.Ref(t.knee, "lumber"), "thickness")
	if b.Source.Unit.Imperial() {
		step = length.Inch / 4
	}
	holds := t.grip(b)
	if w.by == atEdge {
		holds *= b.FieldNumber(b.Limits, "bar_load", "duration")
	}
	long := length.Up(steel.Size()+ofMM(w.have/holds), step)
	if long-steel.Size() > most-t.recess() || b.Count(t.knee, "top_plates") > 1 {
		return "a longer tail, thicker screws, more supports, or less overhang on the room's side"
	}
	return "top_plates = 2, and screws that are " + b.Show(long) + " long"
}
