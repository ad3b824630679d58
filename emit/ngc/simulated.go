package ngc

import (
	"bytes"
	"fmt"

	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// simulated writes a program and has the text read back and measured.
func simulated(b model.Build, p *model.Program) (replay.Measures, error) {
	var text bytes.Buffer
	if err := Write(&text, b, p); err != nil {
		return replay.Measures{}, err
	}
	took, err := replay.Measure(text.Bytes(), p)
	if err != nil {
		return took, fmt.Errorf("program %s: %w", p.Name, err)
	}
	return took, nil
}

// of returns millimetres in the dialect's unit.
func (u units) of(mm float64) float64 { return mm * 1e6 / float64(u.size) }

// volume writes mm³ as cubic inches or, in metric dialects, as cm³.
func (u units) volume(mm3 float64) string {
	if u.unit.Imperial() {
		return fmt.Sprintf("%.2f cubic in", u.of(u.of(u.of(mm3))))
	}
	return fmt.Sprintf("%.1f cubic cm", mm3/1000)
}
