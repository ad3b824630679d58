package reuse_test

import (
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/reuse"
	"barwright/lang"
)

// example is an example as it is built.
func example(t testing.TB, name string) *model.Model {
	t.Helper()
	src, findings := lang.Read(edittest.Folder(t, "../../examples/"+name))
	m, more := compile.Compile(src)
	if m == nil {
		t.Fatal(findings, more)
	}
	return m
}

// TestEveryPartServesForItself looks at each pair of parts of the examples: a part
// serves for itself, equal keys serve for each other without a step, and what serves
// both ways without one has equal keys.
func TestEveryPartServesForItself(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		m := example(t, name)
		p := reuse.Open(m, m, 0)
		keys := make([]string, len(m.Parts))
		for i := range m.Parts {
			keys[i] = p.Key(&m.Parts[i])
		}
		same := 0
		for i := range m.Parts {
			for j := range m.Parts {
				to, ok := p.Serve(&m.Parts[i], &m.Parts[j])
				from, back := p.Serve(&m.Parts[j], &m.Parts[i])
				alike := ok && back && to.Kind == model.Unchanged && from.Kind == model.Unchanged
				if alike != (keys[i] == keys[j]) || i == j && !alike {
					t.Errorf("%s: %s for %s: %v %v; same key: %v", name, m.Parts[i].ID, m.Parts[j].ID, to, from, keys[i] == keys[j])
				}
				if alike && i != j {
					same++
				}
			}
		}
		if same == 0 {
			t.Errorf("%s: no two parts are alike", name)
		}
	}
}

func BenchmarkServe(b *testing.B) {
	four := []model.Bore{cup, cup, handle, handle}
	door := func(x reuse.Length) *model.Part {
		p := panel(15*inch, 30*inch)
		for i, o := range four {
			o.At = at(x, inch*reuse.Length(4+5*i))
			p.Bores = append(p.Bores, o)
		}
		return p
	}
	m := example(b, "boatshed")
	for _, c := range []struct {
		name     string
		old, new *model.Part
	}{
		{"same", door(inch), door(inch)},
		{"moved", door(inch), door(2 * inch)},
		{"side", &m.Parts[0], &m.Parts[1]},
		{"other size", &m.Parts[0], &m.Parts[2]},
	} {
		b.Run(c.name, func(b *testing.B) {
			p := pair(c.old, c.new, inch/64)
			b.ReportAllocs()
			for b.Loop() {
				p.Serve(c.old, c.new)
			}
		})
	}
}

func BenchmarkKey(b *testing.B) {
	m := example(b, "boatshed")
	p := reuse.Open(m, m, 0)
	for b.Loop() {
		for i := range m.Parts {
			p.Key(&m.Parts[i])
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(m.Parts)), "ns/part")
}

// BenchmarkAll lays every part of an example on every other.
func BenchmarkAll(b *testing.B) {
	m := example(b, "boatshed")
	p := reuse.Open(m, m, inch/64)
	for b.Loop() {
		for i := range m.Parts {
			for j := range m.Parts {
				p.Serve(&m.Parts[i], &m.Parts[j])
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N*len(m.Parts)*len(m.Parts)), "ns/pair")
}
