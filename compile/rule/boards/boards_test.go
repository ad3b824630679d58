package boards

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/lang/length"
)

const psiInPa = 6894.757

// Worked examples of sagging shelves from the project's trade facts, 18, rows 23 to
// 25, with moduli of the Wood Handbook, FPL-GTR-190, Table 12-1; to four digits.
func TestSagOfWorkedExamples(t *testing.T) {
	inch := 0.0254
	for _, test := range []struct {
		name        string
		span, thick float64 // m
		load, e     float64 // Pa
		want        float64 // m
	}{
		{"plywood", 36 * inch, 0.75 * inch, 15 * psiInPa / 144, 1.01e6 * psiInPa, 0.06416 * inch},
		{"particleboard", 36 * inch, 0.75 * inch, 15 * psiInPa / 144, 0.40e6 * psiInPa, 0.1620 * inch},
		{"MDF", 36 * inch, 0.75 * inch, 15 * psiInPa / 144, 0.52e6 * psiInPa, 0.1246 * inch},
		{"white oak", 36 * inch, 0.75 * inch, 15 * psiInPa / 144, 1.78e6 * psiInPa, 0.03640 * inch},
		{"MDF, 20 kg", 0.8, 0.018, 20 * 9.80665 / (0.8 * 0.3), 3590e6, 0.002498},
	} {
		limit := sagLimit{load: test.load, creep: 1, over: 192, most: 0.00635}
		got := limit.sag(beam{span: nanometres(test.span), thick: nanometres(test.thick), stiffness: test.e})
		if math.Abs(got-test.want) > 0.0005*test.want { // four digits
			t.Errorf("%s: %g m, want %g", test.name, got, test.want)
		}
	}
}

// 15 psf on plywood of 3/4 in: 0.1875 in is the limit of ANSI/KCMA A161.1 over 36 in,
// and 1/4 in over 60 (trade facts, 11 and row 23).
func TestSagLimit(t *testing.T) {
	limit := sagLimit{over: 192, most: 0.00635}
	for span, want := range map[length.Length]float64{36 * length.Inch: 0.1875 * 0.0254, 60 * length.Inch: 0.00635} {
		if got := limit.of(span); math.Abs(got-want) > 1e-12 {
			t.Errorf("%v: %g, want %g", span, got, want)
		}
	}
}

func nanometres(metres float64) length.Length { return length.Length(math.Round(metres * 1e9)) }

// bent is how far the middle of a beam hangs, for a depth of a metre: its bent line is
// integrated step by step, bending moment over E I being the change of slope, from a
// level start; the middle is then measured from the chord between the ends.
func bent(load, span, thick, stiffness float64) float64 {
	const steps = 20000
	dx, inertia := span/steps, thick*thick*thick/12
	slope, y, middle := 0.0, 0.0, 0.0
	for i := range steps {
		x := (float64(i) + 0.5) * dx
		turn := load * x * (span - x) / 2 / (stiffness * inertia) * dx
		y += (slope + turn/2) * dx
		slope += turn
		if i == steps/2-1 {
			middle = y
		}
	}
	return math.Abs(middle - y/2)
}

func TestSagAgainstIntegration(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		load := rapid.Float64Range(10, 5000).Draw(t, "load")
		span := length.Length(rapid.Int64Range(100e6, 3e9).Draw(t, "span"))
		thick := length.Length(rapid.Int64Range(3e6, 60e6).Draw(t, "thick"))
		e := rapid.Float64Range(1e9, 20e9).Draw(t, "stiffness")
		got := sagLimit{load: load, creep: 1}.sag(beam{span: span, thick: thick, stiffness: e})
		want := bent(load, metres(span), metres(thick), e)
		if math.Abs(got-want) > 1e-5*want {
			t.Fatalf("%g m, want %g", got, want)
		}
	})
}

// What is offered must hold, and hardly more of it must not.
func TestMendedSag(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := sagLimit{load: rapid.Float64Range(300, 5000).Draw(t, "load"), creep: 1.5, over: 192, most: 0.00635}
		board := beam{
			span:  length.Length(rapid.Int64Range(300e6, 3e9).Draw(t, "span")),
			thick: length.Length(rapid.Int64Range(6e6, 30e6).Draw(t, "thick")), stiffness: 6.96e9,
		}
		if limit.sag(board) <= limit.of(board.span) {
			t.Skip("it does not sag too much")
		}
		mark := length.Millimetre / 2
		span, thick := limit.mended(board, mark)
		holds := func(span, thick length.Length) bool {
			b := beam{span: span, thick: thick, stiffness: board.stiffness}
			return limit.sag(b) <= limit.of(span)
		}
		if !holds(span, board.thick) || holds(span+mark, board.thick) {
			t.Fatalf("a span of %v is not the longest", span)
		}
		if !holds(board.span, thick) || holds(board.span, thick-mark) {
			t.Fatalf("a board of %v is not the thinnest", thick)
		}
	})
}

// A stretch wants the studs that it has on even centres wherever it stands, one at least:
// counted at all places where it may stand. So on even centres only a gap that is wider than
// a box leaves it without. That 1 stud does for a narrow box is common practice, trade facts, 14,
// from memory.
func TestCaughtOnEvenCentres(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		spacing := 2 * length.Length(rapid.Int64Range(1, 30).Draw(t, "spacing"))
		wide := 2 * length.Length(rapid.Int64Range(1, 100).Draw(t, "wide")) // sides also stand between
		var studs []length.Length
		for at := length.Length(0); at <= 500; at += spacing {
			studs = append(studs, at)
		}
		c := catching{studs: studs, usual: usualSpacing(studs), wanted: 2}
		least := len(studs)
		for from := length.Length(100); from < 100+spacing; from++ {
			have, _ := c.caught(geom.Span{Lo: from, Hi: from + wide})
			least = min(least, have)
		}
		if _, need := c.caught(geom.Span{Lo: 100, Hi: 100 + wide}); need != max(1, min(2, least)) {
			t.Fatalf("%d are wanted, and there are %d anywhere", need, least)
		}
	})
}
