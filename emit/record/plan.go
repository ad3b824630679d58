package record

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// plan is how values of one type stand in a record.
type plan struct {
	of      reflect.Type
	kind    kind
	words   []string        // of a word: those that may stand here
	values  []reflect.Value // what each stands for
	least   int64           // of a whole number
	bulge   bool            // of a number: see isBulge
	item    *plan           // of a list
	atLeast int             // of a list: items
	fields  []field         // of an object
	onALine bool            // of an object
}

type kind int

const (
	asWhole kind = iota
	asNumber
	asFlag
	asText
	asWord
	asPlace
	asList
	asObject
)

func (k kind) isScalar() bool { return k < asList }

// field is a member of an object. Those of an embedded struct are the object's own.
type field struct {
	name  string
	index []int // as of reflect.Value.FieldByIndex
	plan  *plan
}

// most is how far from 0 a whole number may be: as a length, 1000 m. What adds up a
// few thousand of them cannot overflow.
const most = int64(length.Max)

// mostOnALine is how many scalars, and lists of scalars, a struct may hold at any
// depth to stand on one line.
const mostOnALine = 8

// planner makes the plans for a format of the record. made is for lookup only.
type planner struct {
	format int
	words  []vocabulary
	made   map[reflect.Type]*plan
}

func planFor(format int) *plan {
	p := planner{format, vocabularies(), map[reflect.Type]*plan{}}
	return p.plan(reflect.TypeFor[model.Model]())
}

// plan panics at a type that a record cannot hold; the types are the model's, and none is.
func (p *planner) plan(t reflect.Type) *plan {
	made, ok := p.made[t]
	if ok {
		return made
	}
	made = &plan{of: t, least: -most}
	p.made[t] = made
	for _, v := range p.words {
		if v.of == t {
			made.kind, made.words, made.values = asWord, v.words, v.values
			return made
		}
	}
	switch {
	case t == reflect.TypeFor[source.Range]():
		made.kind = asPlace
	case t.Kind() == reflect.Struct:
		made.kind = asObject
		p.addFields(made, t, nil)
		made.onALine = leaves(made) <= mostOnALine
	case t.Kind() == reflect.Slice:
		made.kind, made.item = asList, p.plan(t.Elem())
		if t == reflect.TypeFor[geom.Contour]() {
			made.atLeast = 2
		}
	case t.Kind() == reflect.Int: // a count
		made.kind, made.least = asWhole, 0
	case t.Kind() == reflect.Int64:
		made.kind = asWhole
	case t.Kind() == reflect.Float64:
		made.kind = asNumber
	case t.Kind() == reflect.Bool:
		made.kind = asFlag
	case t.Kind() == reflect.String:
		made.kind = asText
	default:
		panic("a record cannot hold a " + t.String())
	}
	return made
}

func (p *planner) addFields(to *plan, t reflect.Type, above []int) {
	for i := range t.NumField() {
		f := t.Field(i)
		index := append(above[:len(above):len(above)], i)
		switch first := since(t, f.Name); {
		case first == never || first > p.format:
		case f.Anonymous:
			p.addFields(to, f.Type, index)
		default:
			to.fields = append(to.fields, field{memberName(f.Name), index, limited(p.plan(f.Type), t, f.Name)})
		}
	}
}

// leaves counts the scalars of a plan and its lists of scalars; any other list counts
// as too many for a line.
func leaves(p *plan) int {
	switch {
	case p.kind == asList && !p.item.kind.isScalar():
		return mostOnALine + 1
	case p.kind != asObject:
		return 1
	}
	n := 0
	for _, f := range p.fields {
		n += leaves(f.plan)
	}
	return n
}

// never marks a field that no record carries.
const never = -1

// since is the first format that carries a field.
func since(t reflect.Type, field string) int {
	for _, f := range [...]struct {
		of     reflect.Type
		format int
		fields []string
	}{
		{reflect.TypeFor[model.Model](), never, []string{"Views", "Sheets", "Sticks"}},
		{reflect.TypeFor[model.Program](), never, []string{"Moves", "Finishing"}},
		{reflect.TypeFor[model.Routing](), never, []string{"Moves"}},
		{reflect.TypeFor[model.Work](), never, []string{"First"}},
		{reflect.TypeFor[model.Program](), 2, []string{"Setup", "MovedOn", "Reliefs", "Test"}},
		{reflect.TypeFor[model.Model](), 2, []string{"Values", "Saw", "Templates", "Routings", "Setting", "Ways", "Drains", "Carry", "Rough", "Work"}},
		{reflect.TypeFor[model.Build](), 2, []string{"Paper"}},
		{reflect.TypeFor[model.Room](), 2, []string{"Floor"}},
		{reflect.TypeFor[model.Part](), 2, []string{"Filled", "Scribes", "Match"}},
		{reflect.TypeFor[model.Wall](), 2, []string{"Read"}},
		{reflect.TypeFor[model.Table](), 2, []string{"Inch", "Files", "Write", "Drawings", "Depths", "Mirrored", "Origin", "Flatten", "Relief", "Bit", "Overrun", "Small", "Free", "Spacing", "Margin"}},
		{reflect.TypeFor[model.LayerNames](), 2, []string{"Through", "Sheet", "Scribe"}},
		{reflect.TypeFor[model.Sheet](), 2, []string{"Batch", "Also", "Offcuts"}},
		{reflect.TypeFor[model.Stick](), 2, []string{"Ends"}},
		{reflect.TypeFor[model.Layout](), 2, []string{"Free", "Least"}},
		{reflect.TypeFor[model.Blank](), 2, []string{"Own", "Cuts", "Offcut"}},
		{reflect.TypeFor[model.Tool](), 2, []string{"Wood", "Machine", "Entry", "Passes", "Floor", "Relief", "Datum", "Travel", "Rapid", "Accelerate"}},
		{reflect.TypeFor[model.Dialect](), 2, []string{"Chords", "Chord", "Numbers", "Comments", "Start", "End", "Change", "SpinUp"}},
	} {
		if f.of == t && slices.Contains(f.fields, field) {
			return f.format
		}
	}
	return 1
}

// limited is the plan of a field whose numbers have closer limits than their type:
// what is divided by, and what would turn a shape inside out.
func limited(p *plan, of reflect.Type, field string) *plan {
	own := *p
	if of == reflect.TypeFor[geom.Vertex]() && field == "Bulge" {
		own.bulge = true
		return &own
	}
	for _, l := range [...]struct {
		of     reflect.Type
		fields []string
		least  int64
	}{
		{reflect.TypeFor[model.Part](), []string{"Thickness"}, 1},
		{reflect.TypeFor[model.Recess](), []string{"Depth"}, 1},
		{reflect.TypeFor[model.Recess](), []string{"Radius"}, 0},
		{reflect.TypeFor[model.Bore](), []string{"Diameter"}, 1},
		{reflect.TypeFor[model.Bore](), []string{"Depth", "Sink", "Slot"}, 0},
		{reflect.TypeFor[model.Band](), []string{"Thickness"}, 0},
		{reflect.TypeFor[model.Sheet](), []string{"Length", "Width", "Thickness"}, 1},
		{reflect.TypeFor[model.SheetSize](), []string{"Length", "Width"}, 1},
		{reflect.TypeFor[model.Offcut](), []string{"Length", "Width"}, 1},
		{reflect.TypeFor[model.Stick](), []string{"Thickness", "Width"}, 1},
		{reflect.TypeFor[model.StickLength](), []string{"Length"}, 1},
		{reflect.TypeFor[model.Stick](), []string{"Ends"}, 0},
		{reflect.TypeFor[model.Banding](), []string{"Roll"}, 1},
		{reflect.TypeFor[model.Saw](), []string{"Kerf", "Trim"}, 0},
		{reflect.TypeFor[model.Table](), []string{"Spacing", "Margin"}, 0},
	} {
		if l.of == of && slices.Contains(l.fields, field) {
			own.least = l.least
			return &own
		}
	}
	return p
}

// An edge bulges not at all, or by a half circle at most and by so much at least that it
// shows within 1000 m: by half a nanometre.
const (
	leastBulge = 1e-12
	mostBulge  = 1
)

func isBulge(x float64) bool {
	return x == 0 || max(x, -x) >= leastBulge && max(x, -x) <= mostBulge
}

// vocabulary is a type whose values stand as words.
type vocabulary struct {
	of     reflect.Type
	words  []string
	values []reflect.Value
}

// vocabularies has every such type that a model holds.
func vocabularies() []vocabulary {
	return []vocabulary{
		upTo(model.AsRest), upTo(model.FromPlacing), upTo(model.Right), upTo(model.Filler), upTo(model.FalseFront),
		upTo(model.SlabPiece), upTo(model.GoodBoth), upTo(model.GrainY), upTo(model.LeftEdge), upTo(model.LaidInPlace),
		upTo(finding.Error), upTo(length.Feet), directions(),
	}
}

// upTo is the vocabulary of constants that count from 0.
func upTo[T interface {
	~int
	fmt.Stringer
}](last T) vocabulary {
	var all []T
	for x := T(0); x <= last; x++ {
		all = append(all, x)
	}
	return wordsOf(all)
}

func directions() vocabulary {
	var all []geom.Dir
	for axis := geom.U; axis <= geom.Z; axis++ {
		all = append(all, geom.Dir{Axis: axis}, geom.Dir{Axis: axis, Neg: true})
	}
	return wordsOf(all)
}

func wordsOf[T fmt.Stringer](all []T) vocabulary {
	v := vocabulary{of: reflect.TypeFor[T]()}
	for _, x := range all {
		v.words = append(v.words, x.String())
		v.values = append(v.values, reflect.ValueOf(x))
	}
	return v
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
