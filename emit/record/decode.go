package record

import (
	"errors"
	"fmt"
	"reflect"
	"strconv"
	"strings"
	"unicode/utf8"
)

// scanner reads values by their plans out of the text of a record.
type scanner struct {
	text string
	at   int // the next byte
}

// fault is what is wrong with a record.
type fault struct {
	at   int    // byte of the text; -1 where none is to blame
	path string // of the member: ".parts[3].grain"
	says string
}

func faultAt(at int, format string, args ...any) *fault {
	return &fault{at: at, says: fmt.Sprintf(format, args...)}
}

// in is the fault seen from what the faulty thing stands in.
func (f *fault) in(path string) *fault {
	f.path = path + f.path
	return f
}

func (s *scanner) err(f *fault) error {
	says := f.says
	if f.path != "" {
		says = strings.TrimPrefix(f.path, ".") + ": " + says
	}
	if f.at >= 0 {
		says = fmt.Sprintf("line %d: %s", 1+strings.Count(s.text[:f.at], "\n"), says)
	}
	return errors.New(says)
}

// record reads all of a record into a model, and tells its format.
func (s *scanner) record(v reflect.Value) (int, *fault) {
	if !utf8.ValidString(s.text) {
		return 0, faultAt(firstInvalid(s.text), "this is no text in UTF-8")
	}
	format, f := s.head()
	if f == nil {
		f = s.members(planFor(format), v, s.take(','))
	}
	if s.peek(); f == nil && s.at < len(s.text) {
		f = faultAt(s.at, "something follows the record")
	}
	return format, f
}

// firstInvalid is the first byte of a text that is no UTF-8.
func firstInvalid(text string) int {
	for at, c := range text {
		if c == utf8.RuneError && !strings.HasPrefix(text[at:], "\uFFFD") {
			return at
		}
	}
	return len(text)
}

// head reads the first member, which tells the format.
func (s *scanner) head() (int, *fault) {
	if !s.take('{') || s.peek() != '"' || !strings.HasPrefix(s.text[s.at:], `"`+formatName+`"`) {
		return 0, faultAt(s.at, "this is no record of a model: it does not begin with %q", formatName)
	}
	s.at += len(formatName) + 2
	if !s.take(':') {
		return 0, s.expected("a colon")
	}
	s.peek()
	at := s.at
	format, f := s.whole()
	switch {
	case f != nil:
		return 0, f.in("." + formatName)
	case format > Format:
		return 0, faultAt(at, "the record has format %d, for which a newer barwright is needed: this one reads up to %d", format, Format)
	case format < 1:
		return 0, faultAt(at, "there is no format %d", format)
	}
	return int(format), nil
}

// peek skips white space and returns the byte after it; 0 at the end.
func (s *scanner) peek() byte {
	for s.at < len(s.text) {
		switch c := s.text[s.at]; c {
		case ' ', '\n', '\t', '\r':
			s.at++
		default:
			return c
		}
	}
	return 0
}

// take goes past a byte if it is the next one.
func (s *scanner) take(c byte) bool {
	if s.peek() != c {
		return false
	}
	s.at++
	return true
}

// expected is the fault that something else stands here.
func (s *scanner) expected(what string) *fault {
	found := "something that is no JSON"
	switch c := s.peek(); {
	case s.at == len(s.text):
		found = "the end"
	case c == '"':
		found = "a text"
	case c == '[':
		found = "a list"
	case c == '{':
		found = "an object"
	case c == '-', '0' <= c && c <= '9':
		found = "a number"
	case c == ',', c == ':', c == ']', c == '}':
		found = strconv.Quote(string(c))
	default:
		for _, name := range [...]string{"true", "false", "null"} {
			if strings.HasPrefix(s.text[s.at:], name) {
				found = name
			}
		}
	}
	return faultAt(s.at, "here is %s instead of %s", found, what)
}

// value reads a value into v.
func (s *scanner) value(p *plan, v reflect.Value) *fault {
	s.peek()
	at := s.at
	switch p.kind {
	case asWhole:
		x, f := s.whole()
		if f == nil && (x < p.least || x > most) {
			f = faultAt(at, "%d is not from %d to %d", x, p.least, most)
		}
		v.SetInt(x)
		return f
	case asNumber:
		x, f := s.number()
		if f == nil && p.bulge && !isBulge(x) {
			f = faultAt(at, "an edge bulges by 0, or by %v to %v either way, not by %v", leastBulge, mostBulge, x)
		}
		v.SetFloat(x)
		return f
	case asFlag:
		return s.flag(v)
	case asText:
		x, f := s.quoted()
		v.SetString(x)
		return f
	case asWord:
		return s.word(p, v)
	case asPlace:
		return s.place(v)
	case asList:
		return s.list(p, v)
	}
	if !s.take('{') {
		return s.expected("an object")
	}
	return s.members(p, v, s.peek() != '}')
}

// members reads an object's members up to its end. more tells that one stands next.
func (s *scanner) members(p *plan, v reflect.Value, more bool) *fault {
	var seen uint64
	for next := 0; more; next++ {
		s.peek()
		at := s.at
		name, f := s.quoted()
		if f != nil {
			return f
		}
		next = p.member(name, next)
		switch {
		case next < 0:
			return faultAt(at, "there is no member %q", short(name))
		case seen>>next&1 == 1:
			return faultAt(at, "the member %q stands here twice", name)
		case !s.take(':'):
			return s.expected("a colon")
		}
		seen |= 1 << next
		own := &p.fields[next]
		if f := s.value(own.plan, v.FieldByIndex(own.index)); f != nil {
			return f.in("." + own.name)
		}
		more = s.take(',')
	}
	if !s.take('}') {
		return s.expected(`a comma or "}"`)
	}
	for i, own := range p.fields {
		if seen>>i&1 == 0 {
			return faultAt(s.at-1, "the member %q is missing", own.name)
		}
	}
	return nil
}

// member is the index of a member by its name, most often that of the guess; -1 of none.
func (p *plan) member(name string, guess int) int {
	if guess < len(p.fields) && p.fields[guess].name == name {
		return guess
	}
	for i := range p.fields {
		if p.fields[i].name == name {
			return i
		}
	}
	return -1
}

func (s *scanner) list(p *plan, v reflect.Value) *fault {
	at := s.at
	if !s.take('[') {
		return s.expected("a list")
	}
	n := 0
	for more := s.peek() != ']'; more; more = s.take(',') {
		if n == v.Cap() {
			v.Grow(max(4, n))
		}
		v.SetLen(n + 1)
		if f := s.value(p.item, v.Index(n)); f != nil {
			return f.in(fmt.Sprintf("[%d]", n))
		}
		n++
	}
	switch {
	case !s.take(']'):
		return s.expected(`a comma or "]"`)
	case n < p.atLeast:
		return faultAt(at, "there are %d items, and must be at least %d", n, p.atLeast)
	}
	return nil
}
