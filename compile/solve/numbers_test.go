package solve_test

import (
	"regexp"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"barwright/lang/source"
)

// TestOtherNumbers changes a few numbers of a sound description, as a builder
// who moves things about would, or whose finger slips. What comes out is an
// answer, or a model whose every part can be cut.
func TestOtherNumbers(t *testing.T) {
	number := regexp.MustCompile(`\b\d+(\.\d+)?\b`)
	texts := [][]byte{exampleText(t, "boatshed"), exampleText(t, "servery")}
	changed := rapid.Custom(func(r *rapid.T) []byte {
		text := rapid.SampledFrom(texts).Draw(r, "example")
		for range rapid.IntRange(1, 4).Draw(r, "changes") {
			places := number.FindAllIndex(text, -1)
			at := rapid.SampledFrom(places).Draw(r, "place")
			was, err := strconv.ParseFloat(string(text[at[0]:at[1]]), 64)
			if err != nil {
				r.Fatal(err)
			}
			factor := rapid.SampledFrom([]float64{0, 0.01, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 1.5, 2, 3, 10, 100}).Draw(r, "factor")
			is := strconv.FormatFloat(was*factor, 'f', -1, 64)
			text = append(append(append([]byte{}, text[:at[0]]...), is...), text[at[1]:]...)
		}
		return text
	})
	solves := func(r rapid.TB, text []byte) bool {
		m, _, rendered := readAndSolve(t, source.Files{{Name: "bar.hcl", Text: text}}, "", "")
		if m == nil && rendered == "" {
			r.Fatal("no answer")
		}
		if m != nil {
			checkSound(r, m)
		}
		return m != nil
	}
	rapid.Check(t, func(r *rapid.T) { solves(r, changed.Draw(r, "text")) })
	// How many are sound is counted where the same are drawn each time.
	sound := 0
	for seed := range 40 {
		if solves(t, changed.Example(seed)) {
			sound++
		}
	}
	if sound < 10 {
		t.Errorf("only %d descriptions were sound", sound)
	}
}
