package solve_test

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"barwright/lang"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// TestHostileValues gives every attribute and field of the whole bar, written or
// not, values that nobody means. Whatever comes of it comes soon: a finding, or
// a sound model that somebody could build.
func TestHostileValues(t *testing.T) {
	s := sweep{text: seed(t, "testdata/seeds")}
	src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: s.text}})
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	var walk func(blocks []*lang.Block)
	walk = func(blocks []*lang.Block) {
		for _, b := range blocks {
			s.block(t, b)
			walk(b.Blocks)
		}
	}
	walk(src.Blocks)
	if s.tried < 500 {
		t.Errorf("only %d values were tried", s.tried)
	}
}

type sweep struct {
	text  []byte
	tried int
}

var (
	tiny = `"0.0001mm"`
	many = func(step float64) string {
		var b strings.Builder
		for i := range 2000 {
			fmt.Fprintf(&b, "\"%gmm\", ", float64(i+1)*step)
		}
		return "[" + b.String() + "]"
	}
	hostile = map[schema.Type][]string{ // lookup only
		schema.Count: {"1000000"}, schema.Whole: {"1000000"}, schema.Number: {"0", "1000000000"}, schema.Angle: {"0.000001", "359.9"},
		schema.Length: {tiny, `"1000m"`}, schema.Reach: {tiny, `"1000m"`}, schema.Place: {tiny, `"-1000m"`, `"1000m"`}, schema.Width: {tiny, `"1000m"`},
		schema.Lengths: {many(0.0001), many(30)}, schema.Places: {many(0.0001), many(30)}, schema.Series: {many(30), "{ first = " + tiny + ", spacing = " + tiny + " }"},
		schema.Widths: {"[" + strings.Repeat("rest, ", 2000) + "]", "[" + strings.Repeat(tiny+", ", 2000) + "rest]"},
		schema.Pair:   {`["1000m", "1000m"]`, "[0, 0]"}, schema.SheetSize: {`["0.0001mm", "0.0001mm"]`, `["1000m", "1000m"]`},
	}
)

func (s *sweep) block(t *testing.T, b *lang.Block) {
	for i := range b.Spec.Attrs {
		a := &b.Spec.Attrs[i]
		for _, v := range hostile[a.Type] {
			s.try(t, b, a, a.Name, v)
		}
		for j := range a.Fields {
			for _, v := range hostile[a.Fields[j].Type] {
				s.try(t, b, a, a.Name+"."+a.Fields[j].Name, s.object(b.Attr(a.Name), &a.Fields[j], v))
			}
		}
	}
}

// object is the value of an attribute as written, one field of it another.
func (s *sweep) object(a *lang.Attr, field *schema.Attr, value string) string {
	said := ""
	if a != nil {
		said = string(s.text[a.Expr.At.Start.Byte+1 : a.Expr.At.End.Byte-1])
		said = regexp.MustCompile(`\b`+field.Name+` *= *("[^"]*"|\[[^\]]*\]|[^,}]+),?`).ReplaceAllString(said, "")
		said = strings.TrimRight(said, ", ") + ","
	}
	return "{" + strings.TrimLeft(said, ",") + " " + field.Name + " = " + value + " }"
}

// try solves the text with a value where it stands, or behind the block's head.
func (s *sweep) try(t *testing.T, b *lang.Block, a *schema.Attr, what, value string) {
	s.tried++
	from := b.Head.End.Byte + bytes.IndexByte(s.text[b.Head.End.Byte:], '{') + 1
	to := from
	if w := b.Attr(a.Name); w != nil {
		from, to = w.Expr.At.Start.Byte, w.Expr.At.End.Byte
	} else if rest, _, _ := bytes.Cut(s.text[from:], []byte("\n")); len(rest) == 0 {
		value = "\n" + a.Name + " = " + value
	} else { // a block on one line
		value, to = "\n"+a.Name+" = "+value+"\n"+strings.TrimSuffix(string(rest), "}")+"\n}", from+len(rest)
	}
	text := bytes.Join([][]byte{s.text[:from], []byte(value), s.text[to:]}, nil)
	m, _, rendered := readAndSolve(t, source.Files{{Name: "bar.hcl", Text: text}}, "", "")
	what = fmt.Sprintf("%s %s = %.40s", b.Path(), what, value)
	switch {
	case strings.Contains(rendered, "error: syntax"):
		t.Errorf("%s: the test's own mistake:\n%s", what, rendered)
	case m == nil && rendered == "":
		t.Errorf("%s: no answer", what)
	case m != nil && len(m.Parts) > 2000:
		t.Errorf("%s: %d parts", what, len(m.Parts))
	case len(rendered) > 100_000:
		t.Errorf("%s: %d bytes of findings", what, len(rendered))
	case m != nil:
		checkSound(t, m)
	}
}
