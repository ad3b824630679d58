// Package schema is the one table of the language: every block and attribute
// with its type, default, range and meaning. Reading, suggestions and the
// reference part of SPEC.md follow from it, so that an attribute cannot exist
// in one place only.
package schema

import "fmt"

// Block is one kind of block.
type Block struct {
	Kind   string
	Named  bool // carries one label, its name
	Once   bool // at most one in its parent
	Free   bool // any attribute name (given)
	Doc    string
	Attrs  []Attr
	Blocks []*Block
}

// Attr is one attribute of a block, or one field of an object.
type Attr struct {
	Name     string
	Type     Type
	Required bool
	Default  string   // as a description would write it inside quotes, unit included
	Metric   string   // the default in a build of millimetres, where it differs
	Choices  []string // of Choice
	Refs     []string // of Ref: the kinds of block that it may name
	Fields   []Attr   // of Object
	Doc      string
}

// Type tells what an attribute's value is.
type Type int

const (
	Text      Type = iota
	Choice         // one word of Choices
	Flag           // true or false
	Count          // whole number, at least 1
	Number         // at least 0, its unit told by Doc
	Angle          // degrees, over 0 and under 360
	Length         // over 0
	Reach          // length of 0 or more
	Place          // length of any sign
	Width          // Length or rest
	Lengths        // list of Length, rising
	Places         // list of Place, rising
	Pair           // list of two Places: [along, height]
	SheetSize      // list of two Lengths: [length, width]
	Numbers        // list of Number
	Ref            // a block of a kind in Refs
	Object         // fields in braces
)

func (t Type) String() string {
	return [...]string{"text", "word", "true or false", "count", "number", "angle", "length",
		"length, 0 or more", "length, any sign", "length or rest", "list of lengths", "list of places",
		"[along, height]", "[length, width]", "list of numbers", "reference", "object"}[t]
}

// Root lists the blocks that may stand at the top of a file, in the order of
// the reference.
func Root() []*Block { return root }

// FileAttrs are the attributes that a file may state outside all blocks.
func FileAttrs() []Attr { return fileAttrs }

// Attr finds an attribute by name.
func (b *Block) Attr(name string) *Attr { return find(b.Attrs, name) }

// Field finds a field of an object attribute by name.
func (a *Attr) Field(name string) *Attr { return find(a.Fields, name) }

func find(attrs []Attr, name string) *Attr {
	for i := range attrs {
		if attrs[i].Name == name {
			return &attrs[i]
		}
	}
	return nil
}

// Example shows how the attribute may be written.
func (a *Attr) Example() string {
	switch a.Type {
	case Choice:
		return fmt.Sprintf("%s = %q", a.Name, a.Choices[0])
	case Ref:
		return fmt.Sprintf("%s = %s.NAME", a.Name, a.Refs[0])
	case Object:
		return fmt.Sprintf("%s = { %s = … }", a.Name, a.Fields[0].Name)
	case Pair, SheetSize, Lengths, Places, Numbers:
		return a.Name + " = [ …, … ]"
	case Text:
		return a.Name + ` = "…"`
	}
	return a.Name + " = …"
}

// Names lists the names of attributes, in the order of the table.
func Names(attrs []Attr) []string {
	out := make([]string, len(attrs))
	for i, a := range attrs {
		out[i] = a.Name
	}
	return out
}

// Kinds lists the kinds of blocks, in the order of the table.
func Kinds(blocks []*Block) []string {
	out := make([]string, len(blocks))
	for i, b := range blocks {
		out[i] = b.Kind
	}
	return out
}

// Kind finds a block by kind.
func Kind(blocks []*Block, kind string) *Block {
	for _, b := range blocks {
		if b.Kind == kind {
			return b
		}
	}
	return nil
}

var fileAttrs = []Attr{
	{Name: "unit", Type: Choice, Choices: unitWords, Doc: "what a bare number means in this file; the build's unit where it is left out"},
}

var unitWords = []string{"in", "mm", "ft", "cm", "m"}

var root = []*Block{build, given, sheet, stick, flatBar, slab, screw, router, saw, room, carcass, run, kneeWall, counter, barTop}

var build = &Block{
	Kind: "build", Named: true, Once: true,
	Doc: "names the build and says how its lengths are read and shown",
	Attrs: []Attr{
		{Name: "unit", Type: Choice, Choices: unitWords, Required: true, Doc: "what a bare number means, and the unit of drawings: in and ft show inches and fractions, the others millimetres"},
		{Name: "marks", Type: Length, Doc: "what a length on a drawing or card is rounded to; 1/32in for inch builds and 0.5mm for others where it is left out"},
		{Name: "revision", Type: Text, Default: "", Doc: "shown on every drawing"},
	},
}

var given = &Block{
	Kind: "given", Free: true,
	Doc: "inputs with names of your own, used as given.NAME",
}
