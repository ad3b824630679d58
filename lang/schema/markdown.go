package schema

import (
	"fmt"
	"io"
	"strings"

	"barwright/lang/finding"
)

// referenceSection is the number of the reference in SPEC.md.
const referenceSection = "5"

// WriteReference writes the table of the language as Markdown: a section for
// the top of a file, then one for each block, in the order of the table and
// with the blocks inside it after it. It reports the first error of w.
func WriteReference(w io.Writer) error {
	r := &reference{}
	r.file()
	n := 1
	for _, b := range Root() {
		for ; b != nil; b = b.WithName {
			n++
			r.block(b, nil, fmt.Sprintf("%s.%d", referenceSection, n))
		}
	}
	_, err := io.WriteString(w, r.out.String())
	return err
}

type reference struct{ out strings.Builder }

func (r *reference) line(format string, args ...any) { fmt.Fprintf(&r.out, format+"\n", args...) }

func (r *reference) file() {
	r.line("### %s.1 The top of a file\n", referenceSection)
	r.line("Blocks: %s.", kindList(Root()))
	r.attrs(FileAttrs())
}

func (r *reference) block(b *Block, parent *Block, number string) {
	form := b.Kind + " { … }"
	if b.Named {
		form = b.Kind + ` "NAME" { … }`
	}
	r.line("\n%s %s `%s`\n", heading(number), number, form)
	r.line("%s", sentences(b, parent))
	if len(b.Attrs) > 0 {
		r.attrs(b.Attrs)
	}
	for i, inner := range b.Blocks {
		r.block(inner, b, fmt.Sprintf("%s.%d", number, i+1))
	}
}

// heading gives a section "5.2" the level that suits its number.
func heading(number string) string { return strings.Repeat("#", strings.Count(number, ".")+2) }

func sentences(b, parent *Block) string {
	out := finding.Capital(b.Doc) + "."
	if b.Later {
		out += " **Read and checked, but nothing is made of it yet.**"
	}
	switch {
	case parent != nil && b.Once:
		out += " At most one in each `" + parent.Kind + "`."
	case parent != nil:
		out += " Stands in a `" + parent.Kind + "`."
	case b.Once:
		out += " At most one in a build."
	}
	if b.Free {
		out += " Its attributes have any names and any values."
	}
	if len(b.Blocks) > 0 {
		out += " Blocks inside it: " + kindList(b.Blocks) + "."
	}
	return out
}

func kindList(blocks []*Block) string {
	return "`" + strings.Join(Kinds(blocks), "`, `") + "`"
}

func (r *reference) attrs(attrs []Attr) {
	r.line("\n| attribute | type | default (inch / metric) | example | meaning |")
	r.line("| --- | --- | --- | --- | --- |")
	for _, a := range attrs {
		r.attr("", a)
	}
}

// attr writes the row of an attribute, and those of its fields under it.
func (r *reference) attr(of string, a Attr) {
	r.line("| `%s%s` | %s | %s | `%s` | %s |", of, a.Name, typeWords(a), defaultWords(a), cell(a.Sample()), cell(a.Doc))
	for _, field := range a.Fields {
		r.attr(a.Name+".", field)
	}
}

func typeWords(a Attr) string {
	switch a.Type {
	case Choice:
		return `"` + strings.Join(a.Choices, `", "`) + `"`
	case RefList:
		return "list of `" + strings.Join(a.Refs, "` or `") + "`"
	case Ref:
		return "a `" + strings.Join(a.Refs, "` or `") + "`"
	}
	return cell(a.Type.String())
}

func defaultWords(a Attr) string {
	switch {
	case a.Required:
		return "**required**"
	case a.Default == "":
		return ""
	case a.Metric != "":
		return a.Default + " / " + a.Metric
	}
	return a.Default
}

// cell keeps a text from ending its cell of a Markdown table.
func cell(text string) string { return strings.ReplaceAll(text, "|", `\|`) }
