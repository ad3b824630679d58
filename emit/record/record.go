// Package record writes a solved model as JSON: the record that two revisions
// are compared by. The same model gives the same bytes.
//
// Members stand in the order of the model's fields and are called like them,
// in small letters: KneeWalls is knee_walls. Lengths are whole nanometres,
// angles whole millionths of a degree, other numbers plain decimals. Words
// stand for what the model counts through ("panel", "left"), and for places in
// the text: "bar.hcl:103:12-103:16", lines and columns of the two ends. Lists
// are never null. Small things stand on one line, so that a line of difference
// between two records is a thing that differs.
//
// Left out is what follows from the rest: the views, and the moves of the
// router programs.
package record

import (
	"bufio"
	"fmt"
	"io"
	"reflect"

	"barwright/compile/model"
)

// Format is the version of the record. It changes when a reader of the version
// before would be misled.
const Format = 2

// Write writes the record of a model. It fails where w does, and for a number
// that JSON does not have, which no sound model holds.
func Write(w io.Writer, m *model.Model) error {
	e := &encoder{out: bufio.NewWriter(w)}
	fmt.Fprintf(e.out, "{\n \"barwright_model\": %d", Format)
	e.members(reflect.ValueOf(m).Elem(), 1, true)
	e.out.WriteString("\n}\n")
	if e.err == nil {
		e.err = e.out.Flush()
	}
	if e.err != nil {
		return fmt.Errorf("record of the model: %w", e.err)
	}
	return nil
}

// leftOut are the fields that a record does not carry.
var leftOut = [...]struct {
	of    reflect.Type
	field string
}{
	{reflect.TypeFor[model.Model](), "Views"},
	{reflect.TypeFor[model.Program](), "Moves"},
}

func isLeftOut(t reflect.Type, field string) bool {
	for _, l := range leftOut {
		if l.of == t && l.field == field {
			return true
		}
	}
	return false
}
