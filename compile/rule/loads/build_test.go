package loads_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile"
	"barwright/compile/model"
	"barwright/compile/rule/loads"
	"barwright/compile/rule/ruletest"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// reachingBar is a bar as a test draws it: steel, its reach, what the top does
// beyond it, and what leans on it. Millimetres and newtons.
type reachingBar struct {
	width, thick, yield, reach, beyond, count, edge, each int
}

// files is the servery with that bar, without screws into the top, so that no
// hole weakens the steel.
func (r reachingBar) files(t *rapid.T, servery source.Files) source.Files {
	swap := func(text, from, to string) string {
		if strings.Count(text, from) != 1 {
			t.Fatalf("%q stands in %d places", from, strings.Count(text, from))
		}
		return strings.Replace(text, from, to, 1)
	}
	yield := ""
	if r.yield != 235 { // what it is in a build of millimetres where it is left out
		yield = fmt.Sprintf("yield = %d\n", r.yield)
	}
	var out source.Files
	for _, f := range servery {
		text := string(f.Text)
		switch f.Name {
		case "bar.hcl":
			text = swap(text, "top_screws  = screw.plate\n", "\n")
			text = swap(text, "screws_each = 8", fmt.Sprintf("screws_each = %d", r.each))
			text = swap(text, "reach       = 230", fmt.Sprintf("reach       = %d", r.reach))
			text = swap(text, "count       = 5", fmt.Sprintf("count       = %d", r.count))
			text = swap(text, "room = 280", fmt.Sprintf("room = %d", r.reach+r.beyond))
			text = swap(text, "bar_load = { end_share = 0.5 }", fmt.Sprintf("bar_load = { edge = %d, area = 0 }", r.edge))
		case "stock.hcl":
			text = swap(text, "thickness = 12\n", fmt.Sprintf("thickness = %d\n", r.thick))
			text = swap(text, "width     = 80\n", fmt.Sprintf("width     = %d\n%s", r.width, yield))
		}
		out = append(out, source.File{Name: f.Name, Text: []byte(text)})
	}
	return out
}

// reckon works the bar out on paper: the support with most to carry, its stress and
// its edge's sag in small steps, and the pull on its last screws. It knows the
// servery: ash 40 thick of 690 kg/m3, lumber 38 x 89 of G 0.42.
func (r reachingBar) reckon(centres []float64, topEnd float64, arms []float64) (weak, bends, pulled float64) {
	reach, out := float64(r.reach), float64(r.reach+r.beyond)
	for i := range centres {
		lo, hi := 0.0, topEnd
		if i > 0 {
			lo = (centres[i-1] + centres[i]) / 2
		}
		if i+1 < len(centres) {
			hi = (centres[i] + centres[i+1]) / 2
		}
		w, b, p := r.reckonOne(r.share(centres, topEnd, i)*float64(r.edge), 690*9.80665*0.040*1e-6*(hi-lo), reach, out, arms)
		weak, bends, pulled = max(weak, w), max(bends, b), max(pulled, p)
	}
	return weak, bends, pulled
}

// share is how much of the load one support bears at most: it stands on the slab
// anywhere between its ends, which lies on two supports as on hinges.
func (r reachingBar) share(centres []float64, topEnd float64, i int) float64 {
	n := len(centres) - 1
	switch {
	case n == 0:
		return 1
	case i == 0: // moments about the second support, of a load at the slab's end
		return centres[1] / (centres[1] - centres[0])
	case i == n:
		return (topEnd - centres[n-1]) / (centres[n] - centres[n-1])
	}
	return 0.5
}

// reckonOne works out one support, what it bears at the edge and for each
// millimetre of its length.
func (r reachingBar) reckonOne(point, dead, reach, out float64, arms []float64) (weak, bends, pulled float64) {
	moment := func(x, w float64) float64 { return point*(out-x) + w*(out-x)*(out-x)/2 }
	sag := func(w float64) float64 { // virtual work: the sum of M(x) (out - x) dx / EI
		const steps = 4000
		ei := 200e3 * float64(r.width) * math.Pow(float64(r.thick), 3) / 12
		sum, dx := 0.0, reach/steps
		for i := range steps {
			x := (float64(i) + 0.5) * dx
			sum += moment(x, w) * (out - x) * dx / ei
		}
		return sum
	}
	weak = moment(0, dead) / (float64(r.width*r.thick*r.thick) / 6) / (0.6 * float64(r.yield))
	bends = max(sag(0)/(2*out/360), sag(dead)/(2*out/240))
	sum := 0.0
	for _, y := range arms {
		sum += y * y
	}
	thread := min(30-float64(r.thick), 38-0.1-float64(r.thick))
	holds := 2850 * 0.42 * 0.42 * (5 / 25.4) * 4.4482216 / 25.4 * thread
	pulled = max(moment(0, dead)/1.6, (moment(0, dead)-point*out)) * slices.Max(arms) / sum / holds
	return weak, bends, pulled
}

// TestSteelAgainstPaper compares what is said of many bars with what comes out on
// paper.
func TestSteelAgainstPaper(t *testing.T) {
	servery := ruletest.Example(t, "servery")
	said := map[string]int{} // lookup only
	rapid.Check(t, func(t *rapid.T) {
		n := func(name string, lo, hi int) int { return rapid.IntRange(lo, hi).Draw(t, name) }
		r := reachingBar{width: n("width", 60, 120), thick: n("thick", 8, 18), yield: rapid.SampledFrom([]int{40, 80, 160, 235}).Draw(t, "yield"), reach: n("reach", 100, 300), beyond: n("beyond", 10, 100),
			count: n("count", 1, 5), edge: n("edge", 100, 1500), each: 2 * n("rows", 1, 4)}
		src, found := lang.Read(r.files(t, servery))
		m, more := compile.Check(src)
		if found = append(found, more...); found.HasErrors() {
			t.Fatalf("refused: %v", found)
		}
		wall := &m.KneeWalls[0]
		var centres, arms []float64
		for _, s := range wall.Supports {
			centres = append(centres, s.Centre.MM())
		}
		for _, bore := range steelOf(m).Bores {
			arms = append(arms, 89-bore.At.Y.MM())
		}
		weak, bends, pulled := r.reckon(centres, m.Slabs[len(m.Slabs)-1].Box.U.Hi.MM(), arms)
		for slug, use := range map[string]float64{"steel-too-weak": weak, "steel-bends-too-far": bends, "screws-pulled": pulled} {
			has := slices.ContainsFunc(found, func(f finding.Finding) bool { return f.Slug == slug })
			if math.Abs(use-1) > 1e-4 && has != (use > 1) {
				t.Fatalf("%s is said: %v, used to %v of its limit", slug, has, use)
			}
			said[fmt.Sprint(slug, has)]++
		}
	})
	for _, slug := range []string{"steel-too-weak", "steel-bends-too-far", "screws-pulled"} {
		if said[slug+"true"] == 0 || said[slug+"false"] == 0 {
			t.Errorf("%s was said of %d bars and not of %d", slug, said[slug+"true"], said[slug+"false"])
		}
	}
}

func steelOf(m *model.Model) *model.Part {
	for i := range m.Parts {
		if m.Parts[i].Kind == model.Steel {
			return &m.Parts[i]
		}
	}
	panic("no steel")
}

// TestWeightsAgainstBill compares what moments are reckoned with to what the bill
// says that all of it weighs.
func TestWeightsAgainstBill(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		files := ruletest.Example(t, name)
		weight := loads.Weight(ruletest.Build(t, files))
		src, _ := lang.Read(files)
		m, _ := compile.Compile(src)
		kg := 0.0
		for _, line := range m.Bill {
			kg += line.WeightKg
		}
		if math.Abs(weight/9.80665-kg) > 0.002*kg {
			t.Errorf("%s weighs %v kg, its bill says %v", name, weight/9.80665, kg)
		}
	}
}
