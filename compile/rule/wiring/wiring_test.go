package wiring

import (
	"math"
	"testing"

	"barwright/compile/rule"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/source"
)

// filledWith is what a box with such wires holds, in cubic inches.
func filledWith(t *testing.T, wires string) float64 {
	t.Helper()
	text := `
build "bar" { unit = "in" }
room {
  wall "north" {
    length = 100
    outlet "kettle" {
      at    = [14, 17]
      wires = ` + wires + `
    }
  }
}`
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text)}})
	b := &rule.Build{Values: values.New(src, &findings)}
	f, ok := fillOf(b, &device{block: b.Block("outlet.kettle")})
	if len(findings) > 0 || !ok {
		t.Fatal(findings)
	}
	return f.total
}

// TestVolumePerConductor has NEC Table 314.16(B) as pages print it, in cubic inches
// and in cubic centimetres (trade facts, section 5).
func TestVolumePerConductor(t *testing.T) {
	for _, c := range []struct {
		gauge    string
		in3, cm3 float64
	}{
		{"awg18", 1.50, 24.6}, {"awg16", 1.75, 28.7}, {"awg14", 2.00, 32.8}, {"awg12", 2.25, 36.9},
		{"awg10", 2.50, 41.0}, {"awg8", 3.00, 49.2}, {"awg6", 5.00, 82.0},
	} {
		const cubicInch = 16.387064 // cm3
		got := filledWith(t, "{ "+c.gauge+" = 1, devices = 0, clamps = false }")
		if got != c.in3 || math.Abs(got*cubicInch-c.cm3) > 0.1 {
			t.Errorf("%s: %v in3, %v cm3", c.gauge, got, got*cubicInch)
		}
	}
}

// TestBoxFill has the worked examples 3 to 6 of the trade facts, and each rule of
// 314.16(B) beside them.
func TestBoxFill(t *testing.T) {
	for _, c := range []struct {
		wires string
		want  float64
	}{
		{"{ awg12 = 4, grounds = 2 }", 18},
		{"{ awg14 = 4, grounds = 2, clamps = false }", 14},
		{"{ awg14 = 2, awg12 = 2, grounds = 2 }", 17.5},
		{"{ awg12 = 1, grounds = 5, devices = 0, clamps = false }", 2.25 + 2.8125},
		{"{ awg12 = 1, grounds = 4, devices = 0, clamps = false }", 2.25 + 2.25},
		{"{ awg12 = 1, grounds = 1, devices = 0, clamps = false }", 2.25 + 2.25},
		{"{ awg14 = 3, fittings = 2, devices = 2, clamps = false }", (3 + 2 + 4) * 2},
	} {
		if got := filledWith(t, c.wires); got != c.want {
			t.Errorf("%s: %v, want %v", c.wires, got, c.want)
		}
	}
}
