package record

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"reflect"
	"strconv"
	"strings"

	"barwright/lang/source"
)

// encoder writes values by their plans. Its first error sticks.
type encoder struct {
	to  io.Writer
	buf []byte
	err error
}

// room is how many bytes are gathered before they are written.
const room = 1 << 16

// flush hands on what is gathered.
func (e *encoder) flush() {
	if e.err == nil {
		_, e.err = e.to.Write(e.buf)
	}
	e.buf = e.buf[:0]
}

func (e *encoder) fail(format string, args ...any) {
	if e.err == nil {
		e.err = fmt.Errorf(format, args...)
	}
}

// value writes a value that stands at a depth of indentation.
func (e *encoder) value(p *plan, v reflect.Value, depth int) {
	switch p.kind {
	case asWhole:
		e.buf = strconv.AppendInt(e.buf, v.Int(), 10)
	case asNumber:
		e.number(v.Float())
	case asFlag:
		e.buf = strconv.AppendBool(e.buf, v.Bool())
	case asText:
		e.text(v.String())
	case asWord:
		e.word(p, v)
	case asPlace:
		e.place(v.Addr().Interface().(*source.Range))
	case asList:
		e.list(p, v, depth)
	case asObject:
		e.buf = append(e.buf, '{')
		e.members(p, v, depth+1, false)
		if !p.onALine {
			e.newline(depth)
		}
		e.buf = append(e.buf, '}')
	}
}

func (e *encoder) number(x float64) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		e.fail("JSON has no number %f", x)
		return
	}
	if x == 0 {
		x = 0 // not -0
	}
	e.buf = strconv.AppendFloat(e.buf, x, 'f', -1, 64)
}

func (e *encoder) word(p *plan, v reflect.Value) {
	for i, x := range p.values {
		if v.Equal(x) {
			e.text(p.words[i])
			return
		}
	}
	e.fail("there is no word for a %s like this", p.of)
}

func (e *encoder) place(r *source.Range) {
	if r.IsZero() {
		e.text("")
		return
	}
	e.text(r.File)
	b := e.buf[:len(e.buf)-1]
	for _, at := range [...]struct {
		mark  byte
		count int
	}{{':', r.Start.Line}, {':', r.Start.Column}, {'-', r.End.Line}, {':', r.End.Column}} {
		b = strconv.AppendInt(append(b, at.mark), int64(at.count), 10)
	}
	e.buf = append(b, '"')
}

func (e *encoder) text(s string) {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c == '"' || c == '\\' || c > '~' {
			e.escaped(s)
			return
		}
	}
	e.buf = append(append(append(e.buf, '"'), s...), '"')
}

// escaped writes a text as the library does, which escapes what must be; what is
// no UTF-8 becomes the character that stands for it.
func (e *encoder) escaped(s string) {
	var b strings.Builder
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(strings.ToValidUTF8(s, "\uFFFD")); err != nil {
		e.fail("%w", err)
	}
	e.buf = append(e.buf, strings.TrimSuffix(b.String(), "\n")...)
}

func (e *encoder) list(p *plan, v reflect.Value, depth int) {
	inline := p.item.kind.isScalar()
	e.buf = append(e.buf, '[')
	for i := range v.Len() {
		if i > 0 {
			e.buf = append(e.buf, ',')
		}
		switch {
		case !inline:
			e.newline(depth + 1)
		case i > 0:
			e.buf = append(e.buf, ' ')
		}
		e.value(p.item, v.Index(i), depth+1)
	}
	if !inline && v.Len() > 0 {
		e.newline(depth)
	}
	e.buf = append(e.buf, ']')
}

func (e *encoder) newline(depth int) {
	if len(e.buf) > room {
		e.flush()
	}
	e.buf = append(e.buf, '\n')
	for range depth {
		e.buf = append(e.buf, ' ')
	}
}

// members writes the members of an object. follow tells that one stands before
// the first.
func (e *encoder) members(p *plan, v reflect.Value, depth int, follow bool) {
	for i := range p.fields {
		f := &p.fields[i]
		switch {
		case follow && p.onALine:
			e.buf = append(e.buf, ", "...)
		case follow:
			e.buf = append(e.buf, ',')
		}
		follow = true
		if !p.onALine {
			e.newline(depth)
		}
		e.buf = append(e.buf, '"')
		e.buf = append(e.buf, f.name...)
		e.buf = append(e.buf, `": `...)
		e.value(f.plan, v.FieldByIndex(f.index), depth)
	}
}
