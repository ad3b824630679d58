package record

import (
	"bufio"
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"unicode"

	"barwright/compile/geom"
	"barwright/lang/length"
	"barwright/lang/source"
)

// encoder writes values of the model's types. Its first error sticks.
type encoder struct {
	out *bufio.Writer
	err error
}

// value writes a value that stands at a depth of indentation.
func (e *encoder) value(v reflect.Value, depth int) {
	if word, ok := spelled(v); ok {
		e.text(word)
		return
	}
	switch v.Kind() {
	case reflect.Bool:
		e.out.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int64:
		e.out.WriteString(strconv.FormatInt(v.Int(), 10))
	case reflect.Float64:
		e.number(v.Float())
	case reflect.String:
		e.text(v.String())
	case reflect.Slice:
		e.list(v, depth)
	case reflect.Struct:
		e.object(v, depth)
	default:
		e.fail("JSON has no %s", v.Type())
	}
}

func (e *encoder) fail(format string, args ...any) {
	if e.err == nil {
		e.err = fmt.Errorf(format, args...)
	}
}

// spelled returns the word that stands for a value, where one does.
func spelled(v reflect.Value) (string, bool) {
	switch x := v.Interface().(type) {
	case length.Length, geom.Angle:
		return "", false
	case source.Range:
		return place(x), true
	case fmt.Stringer:
		return x.String(), true
	}
	return "", false
}

func place(r source.Range) string {
	if r.IsZero() {
		return ""
	}
	return fmt.Sprintf("%s:%d:%d-%d:%d", r.File, r.Start.Line, r.Start.Column, r.End.Line, r.End.Column)
}

func (e *encoder) text(s string) {
	enc := json.NewEncoder(trimmer{e.out})
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		e.fail("%w", err)
	}
}

// trimmer drops the newline that ends every JSON value of the library.
type trimmer struct{ out *bufio.Writer }

func (t trimmer) Write(p []byte) (int, error) {
	if _, err := t.out.Write(p[:len(p)-1]); err != nil {
		return 0, err
	}
	return len(p), nil
}

func (e *encoder) number(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		e.fail("JSON has no number %f", x)
		return
	}
	if x == 0 {
		x = 0 // not -0
	}
	e.out.WriteString(strconv.FormatFloat(x, 'f', -1, 64))
}

func (e *encoder) list(v reflect.Value, depth int) {
	inline := isScalar(v.Type().Elem())
	e.out.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			e.out.WriteByte(',')
		}
		switch {
		case !inline:
			e.newline(depth + 1)
		case i > 0:
			e.out.WriteByte(' ')
		}
		e.value(v.Index(i), depth+1)
	}
	if !inline && v.Len() > 0 {
		e.newline(depth)
	}
	e.out.WriteByte(']')
}

func (e *encoder) newline(depth int) {
	e.out.WriteString("\n" + strings.Repeat(" ", depth))
}

func (e *encoder) object(v reflect.Value, depth int) {
	e.out.WriteByte('{')
	e.members(v, depth+1, false)
	if leaves(v.Type()) > mostOnALine {
		e.newline(depth)
	}
	e.out.WriteByte('}')
}

// members writes the fields of a struct, embedded ones as its own. follow
// tells that a member stands before the first.
func (e *encoder) members(v reflect.Value, depth int, follow bool) {
	t := v.Type()
	onALine := leaves(t) <= mostOnALine
	for i := range t.NumField() {
		f := t.Field(i)
		if isLeftOut(t, f.Name) {
			continue
		}
		if follow {
			e.out.WriteByte(',')
			if onALine {
				e.out.WriteByte(' ')
			}
		}
		follow = true
		if f.Anonymous {
			e.members(v.Field(i), depth, false)
			continue
		}
		if !onALine {
			e.newline(depth)
		}
		e.text(memberName(f.Name))
		e.out.WriteString(": ")
		e.value(v.Field(i), depth)
	}
}

// mostOnALine is how many scalars a struct may hold, at any depth, to stand on
// one line.
const mostOnALine = 8

// leaves counts the scalars of a type; a list counts as too many for a line.
func leaves(t reflect.Type) int {
	if isScalar(t) {
		return 1
	}
	if t.Kind() != reflect.Struct {
		return mostOnALine + 1
	}
	n := 0
	for i := range t.NumField() {
		n += leaves(t.Field(i).Type)
	}
	return n
}

func isScalar(t reflect.Type) bool {
	if t == reflect.TypeFor[source.Range]() || t.Implements(reflect.TypeFor[fmt.Stringer]()) {
		return true
	}
	switch t.Kind() {
	case reflect.Struct, reflect.Slice:
		return false
	}
	return true
}

// memberName turns a field's name into a member's: WeightKg is weight_kg,
// RecessID is recess_id.
func memberName(field string) string {
	var b strings.Builder
	rs := []rune(field)
	for i, r := range rs {
		startsWord := i > 0 && unicode.IsUpper(r) &&
			(unicode.IsLower(rs[i-1]) || i+1 < len(rs) && unicode.IsLower(rs[i+1]))
		if startsWord {
			b.WriteByte('_')
		}
		b.WriteRune(unicode.ToLower(r))
	}
	return b.String()
}
