package schema

import (
	"strconv"
	"strings"
)

// Sample is a value as a description might give it to the attribute: the
// default where there is one, otherwise one of its type.
func (a *Attr) Sample() string {
	switch a.Type {
	case Object:
		return a.sampleObject()
	case Choice:
		return strconv.Quote(a.Choices[len(a.Choices)-1])
	case Ref:
		return a.Refs[0] + ".NAME"
	case RefList:
		return "[" + a.Refs[0] + ".NAME]"
	case Lengths:
		if a.Default != "" {
			return `["` + strings.ReplaceAll(a.Default, ", ", `", "`) + `"]`
		}
	case Text, Length, Reach, Place, Width:
		if a.Default != "" {
			return strconv.Quote(a.Default)
		}
	}
	if a.Default != "" {
		return a.Default
	}
	return samples[a.Type]
}

// sampleObject gives all fields that are required, or else the first.
func (a *Attr) sampleObject() string {
	var fields []string
	for i := range a.Fields {
		if f := &a.Fields[i]; f.Required {
			fields = append(fields, f.Name+" = "+f.Sample())
		}
	}
	if len(fields) == 0 {
		fields = []string{a.Fields[0].Name + " = " + a.Fields[0].Sample()}
	}
	return "{ " + strings.Join(fields, ", ") + " }"
}

var samples = map[Type]string{ // lookup only
	Text: `"rev B"`, Flag: "true", Count: "4", Whole: "2", Number: "12.5", Angle: "90.4",
	Length: `"30 1/2in"`, Reach: `"1/4in"`, Place: "66", Width: "rest",
	Lengths: `["8ft", "10ft"]`, Widths: `["5in", rest]`, Places: "[16, 32.5]", Series: "{ first = 9.5, spacing = 16 }",
	Pair: "[14.5, 17]", SheetSize: "[96, 48]", Spot: `[120, 0, "48 1/16in"]`,
	Numbers: "[4.6, 6.1]", Any: "42", AnyList: "[40, 42]",
}
