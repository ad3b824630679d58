package lang

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
	"strings"

	"github.com/hashicorp/hcl/v2"
	"github.com/hashicorp/hcl/v2/hclsyntax"

	"barwright/lang/expr"
	"barwright/lang/length"
	"barwright/lang/source"
)

// plain puts what the syntax library says most often into the words of the
// trade, by its summary.
var plain = map[string]struct{ text, mend string }{ // lookup only
	"Invalid multi-line string":                  {"The closing quote is missing: a text ends on the line where it begins.", `close it with "`},
	"Unterminated template string":               {"The closing quote is missing: a text ends on the line where it begins.", `close it with "`},
	"Unclosed configuration block":               {"This block is not closed.", "put } on a line of its own where the block ends"},
	"Invalid block definition":                   {"A block opens with { on the line of its name; an attribute has = before its value.", ""},
	"Invalid single-argument block definition":   {"A block on one line holds one attribute, and then its }.", "put each attribute on a line of its own"},
	"Argument definition required":               {"A block on one line holds one attribute and no further block.", "put each block and each attribute on a line of its own"},
	"Missing newline after argument":             {"After a value comes a new line.", "put each attribute on a line of its own"},
	"Missing newline after block definition":     {"After the } of a block comes a new line.", ""},
	"Invalid expression":                         {"A value is missing here, or something stands here that cannot begin one.", ""},
	"Unbalanced parentheses":                     {"A ( before this place is not closed.", "close it with )"},
	"Missing item separator":                     {"Values in brackets are parted by commas.", "put a comma between them, and ] after the last"},
	"Missing attribute separator":                {"Fields in braces are parted by commas.", "put a comma between them, and } after the last"},
	"Unclosed template interpolation sequence":   {"The ${ in this text is not closed.", "close it with }"},
	"Invalid escape sequence":                    {`In a text \ stands before a quote, as in "7' 6\"", or before n, r, t or another \.`, `\\ for a \ that is meant as such`},
	"Unterminated tuple constructor expression":  {"This [ is not closed.", "close it with ]"},
	"Unterminated object constructor expression": {"This { is not closed.", "close it with }"},
	"Unterminated function call":                 {"The ( of this call is not closed.", "close it with )"},
}

// syntax turns the diagnostics of the syntax library into findings: the first
// on each line, for what follows it there comes of it; and none after a text
// that does not end, for the rest of the file was read as part of it.
func (r *reader) syntax(f source.File, body *hclsyntax.Body, diags hcl.Diagnostics) {
	slices.SortStableFunc(diags, func(a, b *hcl.Diagnostic) int {
		return cmp.Compare(a.Subject.Start.Byte, b.Subject.Start.Byte)
	})
	last := 0
	for _, d := range diags {
		if at := expr.RangeOf(*d.Subject); at.Start.Line != last {
			r.syntaxOne(f, body, d, at)
			last = at.Start.Line
		}
		if d.Summary == "Invalid multi-line string" || d.Summary == "Unterminated template string" {
			return
		}
	}
}

func (r *reader) syntaxOne(f source.File, body *hclsyntax.Body, d *hcl.Diagnostic, at source.Range) {
	text, mend := d.Summary+": "+d.Detail, ""
	if say, ok := plain[d.Summary]; ok {
		text, mend = say.text, say.mend
	}
	found := f.Text[min(at.Start.Byte, len(f.Text)):]
	switch d.Summary {
	case "Attribute redefined":
		r.redefined(body, string(found[:at.End.Byte-at.Start.Byte]), at)
		return
	case "Invalid character":
		text = "This character has no meaning here."
		if bytes.HasPrefix(found, []byte("'")) || strings.Contains(d.Detail, "quote") {
			text, mend = "The quotes of a text are straight and double.", `write "`
		}
	case "Argument or block definition required":
		text = "The name of an attribute or of a block should stand here."
		if bytes.HasPrefix(found, []byte("}")) {
			text, mend = "This } closes nothing.", "leave it out, or open its block"
		}
		if bytes.HasPrefix(found, []byte("/*")) {
			text, mend = "This comment is not closed.", "close it with */"
		}
		if strings.Contains(d.Detail, "equals sign") {
			text, mend = "Between an attribute and its value stands =.", "write = for it"
		}
	case "Missing newline after argument", "Invalid single-argument block definition", "Invalid multi-line string":
		if quoted := unquotedLength(f.Text, at.Start.Byte); quoted != "" {
			mend = quoted
			if !opensText(f.Text, at.Start.Byte) {
				text = "A length with a unit or a fraction stands in quotes, and the mark for inches inside them as \\\"."
			}
		}
	}
	r.findings.Errorf("syntax", at, mend, "%s", text)
}

// redefined refuses an attribute that its block has already.
func (r *reader) redefined(body *hclsyntax.Body, name string, at source.Range) {
	f := r.findings.Errorf("said-twice", at, "leave one of them out", "%s stands twice in one block.", name)
	for inside := body; inside != nil; {
		if first := inside.Attributes[name]; first != nil && encloses(inside.SrcRange, at) {
			f.Related = nil
			f.Also(expr.RangeOf(first.NameRange), "the first stands here")
		}
		outer := inside
		inside = nil
		for _, b := range outer.Blocks {
			if encloses(b.Range(), at) {
				inside = b.Body
			}
		}
	}
}

func encloses(outer hcl.Range, at source.Range) bool {
	return outer.Start.Byte <= at.Start.Byte && at.End.Byte <= outer.End.Byte
}

// unquotedLength is the mend where a length with its unit stands bare, and a
// fault was found in the middle of it; empty where that is not so.
func unquotedLength(text []byte, at int) string {
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	line, _, _ := strings.Cut(string(text[from:]), "\n")
	head, value, ok := strings.Cut(line, "=")
	if !ok || from+len(head) > at {
		return ""
	}
	if brace := strings.LastIndexByte(head, '{'); brace >= 0 {
		head, value = head[brace+1:], strings.TrimRight(value, " }")
	}
	value, _, _ = strings.Cut(value, "#")
	value = strings.TrimSpace(value)
	if inner, ok := strings.CutPrefix(value, `"`); ok { // a quote inside ended it
		value = strings.TrimSuffix(inner, `"`)
	}
	if _, err := length.Parse(value, length.Millimetres); err != nil {
		return ""
	}
	return fmt.Sprintf("%s = %q", strings.TrimSpace(head), value)
}

// opensText reports whether the one quote on the line of a fault opens a text,
// as the first letter of a value.
func opensText(text []byte, at int) bool {
	from := bytes.LastIndexByte(text[:at], '\n') + 1
	line, _, _ := bytes.Cut(text[from:], []byte("\n"))
	_, value, _ := bytes.Cut(line, []byte("="))
	return bytes.HasPrefix(bytes.TrimSpace(value), []byte(`"`)) && bytes.Count(value, []byte(`"`)) == 1
}
