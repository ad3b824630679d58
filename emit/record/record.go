// Package record writes a solved model as JSON and reads it again: the record that
// two builds are compared by. The same model gives the same bytes, and a record that
// was read gives its own again.
//
// Members stand in the order of the model's fields and are called like them,
// in small letters: KneeWalls is knee_walls. Lengths are whole nanometres,
// angles whole millionths of a degree, other numbers plain decimals. Words
// stand for what the model counts through ("panel", "left"), and for places in
// the text: "bar.hcl:103:12-103:16", lines and columns of the two ends. Lists
// are never null. A struct stands on one line if it holds at most eight scalars
// and lists of scalars, and no other list, so that a line of difference between
// two records is a thing that differs.
//
// Left out is what follows from the rest: the views, and the moves of the
// router programs.
//
// model.schema.json is the JSON Schema of the current format. It says of a record all
// but what [Read] looks at in the whole: that names are unique and lead somewhere, and
// that the format is told first.
package record

import (
	"fmt"
	"io"
	"reflect"

	"barwright/compile/model"
)

// Format is the version of the record. It rises when a reader of the version
// before would be misled. Format 1 had no values and no saw.
const Format = 2

// Write writes the record of a model. It fails where w does, and for a number
// that JSON does not have or a value without a word, which no sound model holds.
func Write(w io.Writer, m *model.Model) error {
	e := &encoder{to: w}
	e.buf = fmt.Appendf(e.buf, "{\n %q: %d", formatName, Format)
	e.members(planFor(Format), reflect.ValueOf(m).Elem(), 1, true)
	e.buf = append(e.buf, "\n}\n"...)
	e.flush()
	if e.err != nil {
		return fmt.Errorf("record of the model: %w", e.err)
	}
	return nil
}

// formatName is the member that a record begins with.
const formatName = "barwright_model"

// Read reads a record of the current format or of one before, and tells which. The
// model has no views, its programs no moves, its places no bytes; nor has it what its
// format does not carry. Its texts share the memory of the whole record.
//
// A model that is returned is sound in so far that others may rely on it: see check.
// An error tells the line of the record, and the member: "parts[3].grain".
func Read(r io.Reader) (m *model.Model, format int, err error) {
	data, err := io.ReadAll(r)
	if err != nil {
		return nil, 0, err
	}
	s := &scanner{text: string(data)}
	m = new(model.Model)
	format, f := s.record(reflect.ValueOf(m).Elem())
	if f == nil {
		f = check(m)
	}
	if f != nil {
		return nil, 0, s.err(f)
	}
	return m, format, nil
}
