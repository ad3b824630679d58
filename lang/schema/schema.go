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
	Later  bool // read and checked, but nothing is made of it yet
	Doc    string
	Attrs  []Attr
	Blocks []*Block
	// WithName is what the block is where it carries a name; nil where a name
	// makes no difference.
	WithName *Block
}

// Attr is one attribute of a block, or one field of an object.
type Attr struct {
	Name     string
	Type     Type
	Required bool
	Default  string   // as a description would write it inside quotes, unit included; of a list with commas between
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
	Whole          // whole number, at least 0
	Number         // at least 0, its unit told by Doc
	Angle          // degrees, over 0 and under 360
	Length         // over 0
	Reach          // length of 0 or more
	Place          // length of any sign
	Width          // Length or rest
	Lengths        // list of Length, rising
	Widths         // list of Width
	Places         // list of Place, rising
	Series         // Places, or an object with the fields first, spacing and last
	Pair           // list of two Places: [along, height]
	SheetSize      // list of two Lengths: [length, width]
	Spot           // list of three Places: [x, y, below the line]
	Numbers        // list of Number
	Ref            // a block of a kind in Refs
	RefList        // list of Ref
	Object         // fields in braces
	Any            // whatever an expression gives
	AnyList        // list of Any
)

func (t Type) String() string {
	return [...]string{"text", "word", "true or false", "count", "count, 0 or more", "number", "angle", "length",
		"length, 0 or more", "length, any sign", "length or rest", "list of lengths", "list of lengths or rest", "list of places", "list of places, or a series",
		"[along, height]", "[length, width]", "[x, y, below the line]", "list of numbers", "reference",
		"list of references", "object", "any", "list"}[t]
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
	case Pair, Spot, SheetSize, Lengths, Widths, Places, Series, Numbers, RefList, AnyList:
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

var root = []*Block{
	build, include, given, sheet, stick, flatBar, slab, screw, fitting, banding, finish, router, saw, table, room,
	carcass, run, kneeWall, counter, barTop, cable, cord, drain, limits, carry,
}

var build = &Block{
	Kind: "build", Named: true, Once: true,
	Doc: "names the build and says how its lengths are read and shown",
	Attrs: []Attr{
		{Name: "unit", Type: Choice, Choices: unitWords, Required: true, Doc: "what a bare number means, and the unit of drawings: in and ft show inches and fractions, the others millimetres"},
		{Name: "marks", Type: Length, Default: "1/32in", Metric: "0.5mm", Doc: "what a length on a drawing or card is rounded to"},
		{Name: "revision", Type: Text, Default: "", Doc: "shown on every drawing"},
		{Name: "paper", Type: Choice, Choices: []string{"A4", "A3", "letter", "tabloid"}, Default: "letter", Metric: "A4", Doc: "what drawings and papers for the floor are printed on"},
	},
}

var include = &Block{
	Kind: "include", Named: true,
	Doc: "takes in another file, named from the folder of the file that says so; each file once",
}

var given = &Block{
	Kind: "given", Free: true,
	Doc:      "inputs with names of your own, used as given.NAME",
	WithName: namedGiven,
}

var namedGiven = &Block{
	Kind: "given", Named: true,
	Doc: "one input with what it may be, used as given.NAME",
	Attrs: []Attr{
		{Name: "value", Type: Any, Required: true},
		{Name: "from", Type: Any, Doc: "the least that it may be"},
		{Name: "to", Type: Any, Doc: "the most that it may be"},
		{Name: "choices", Type: AnyList, Doc: "all that it may be"},
		{Name: "note", Type: Text, Doc: "for who changes it; shown when it is refused"},
	},
}
