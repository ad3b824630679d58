package record

import (
	"encoding/json"
	"reflect"
	"strconv"
	"strings"

	"barwright/lang/source"
)

// token goes past what a number may be written with.
func (s *scanner) token() string {
	from := s.at
	for s.at < len(s.text) && strings.IndexByte("0123456789-+.eE", s.text[s.at]) >= 0 {
		s.at++
	}
	return s.text[from:s.at]
}

// short is a text as an error quotes it.
func short(text string) string {
	const most = 60
	if len(text) <= most {
		return text
	}
	return strings.ToValidUTF8(text[:most], "") + "…"
}

// isCount reports whether a text is a whole number without a sign, as JSON writes it.
func isCount(text string) bool {
	for i := range len(text) {
		if text[i] < '0' || text[i] > '9' {
			return false
		}
	}
	return text == "0" || text != "" && text[0] != '0'
}

func (s *scanner) whole() (int64, *fault) {
	from := s.at
	token := s.token()
	switch x, err := strconv.ParseInt(token, 10, 64); {
	case token == "":
		return 0, s.expected("a whole number")
	case !isCount(strings.TrimPrefix(token, "-")):
		return 0, faultAt(from, "%s is no whole number", short(token))
	case err != nil:
		return 0, faultAt(from, "%s is too large a number", short(token))
	default:
		return x, nil
	}
}

func (s *scanner) number() (float64, *fault) {
	from := s.at
	token := s.token()
	switch x, err := strconv.ParseFloat(token, 64); {
	case token == "":
		return 0, s.expected("a number")
	case !isCount(strings.TrimPrefix(token, "-")) && !json.Valid([]byte(token)):
		return 0, faultAt(from, "%s is no number", short(token))
	case err != nil:
		return 0, faultAt(from, "%s is too large a number", short(token))
	default:
		return x, nil
	}
}

func (s *scanner) flag(v reflect.Value) *fault {
	for _, x := range [...]bool{false, true} {
		if word := strconv.FormatBool(x); strings.HasPrefix(s.text[s.at:], word) {
			s.at += len(word)
			v.SetBool(x)
			return nil
		}
	}
	return s.expected("true or false")
}

// quoted reads a text.
func (s *scanner) quoted() (string, *fault) {
	if s.peek() != '"' {
		return "", s.expected("a text")
	}
	from, escaped := s.at, false
	for s.at++; s.at < len(s.text); s.at++ {
		switch c := s.text[s.at]; {
		case c == '"':
			s.at++
			if escaped {
				return s.unescaped(from)
			}
			return s.text[from+1 : s.at-1], nil
		case c == '\\':
			escaped = true
			s.at++
		case c < ' ':
			return "", faultAt(s.at, "a text goes over the end of its line, or has a control character in it")
		}
	}
	return "", faultAt(from, "a text has no end")
}

// unescaped is the text whose quotes stand from a byte up to here.
func (s *scanner) unescaped(from int) (x string, f *fault) {
	if json.Unmarshal([]byte(s.text[from:s.at]), &x) != nil {
		return "", faultAt(from, "a text has a backslash before what JSON does not escape")
	}
	return x, nil
}

func (s *scanner) word(p *plan, v reflect.Value) *fault {
	at := s.at
	x, f := s.quoted()
	if f != nil {
		return f
	}
	for i, word := range p.words {
		if x == word {
			v.Set(p.values[i])
			return nil
		}
	}
	return faultAt(at, "%q is none of %q", short(x), p.words)
}

// place reads FILE:LINE:COLUMN-LINE:COLUMN, or nothing in quotes for no place.
func (s *scanner) place(v reflect.Value) *fault {
	at := s.at
	x, f := s.quoted()
	if f != nil || x == "" {
		return f
	}
	r := v.Addr().Interface().(*source.Range)
	rest := x
	for _, end := range [...]struct {
		mark byte
		to   *int
	}{{':', &r.End.Column}, {'-', &r.End.Line}, {':', &r.Start.Column}, {':', &r.Start.Line}} {
		cut := strings.LastIndexByte(rest, end.mark)
		if cut <= 0 || !isCount(rest[cut+1:]) || len(rest)-cut > 10 {
			return faultAt(at, "%q is no place like \"bar.hcl:103:12-103:16\"", short(x))
		}
		*end.to, _ = strconv.Atoi(rest[cut+1:])
		rest = rest[:cut]
	}
	r.File = rest
	return nil
}
