package values

import (
	"strings"
	"testing"

	"barwright/lang"
	"barwright/lang/schema"
	"barwright/lang/source"
)

// TestSamples demands that the example of each attribute and field in SPEC.md
// has the type that the attribute wants.
func TestSamples(t *testing.T) {
	var walk func(b *schema.Block)
	tried := 0
	try := func(where string, a *schema.Attr) {
		tried++
		// Names of blocks cannot be looked up here; that they are references is enough.
		if a.Type == schema.Ref || a.Type == schema.RefList || strings.Contains(a.Sample(), ".NAME") {
			if !strings.Contains(a.Sample(), ".NAME") {
				t.Errorf("%s.%s: %s names nothing", where, a.Name, a.Sample())
			}
			return
		}
		text := "build \"b\" { unit = \"in\" }\ngiven { sample = " + a.Sample() + " }\n"
		src, findings := lang.Read(source.Files{{Name: "bar.hcl", Text: []byte(text)}})
		v := New(src, &findings)
		given := src.Top("given")[0]
		v.coerce(a, v.Value(given, "sample"), given.Unit)
		if len(findings) > 0 {
			t.Errorf("%s.%s = %s: %v", where, a.Name, a.Sample(), findings)
		}
	}
	walk = func(b *schema.Block) {
		for ; b != nil; b = b.WithName {
			for i := range b.Attrs {
				try(b.Kind, &b.Attrs[i])
				for j := range b.Attrs[i].Fields {
					try(b.Kind+"."+b.Attrs[i].Name, &b.Attrs[i].Fields[j])
				}
			}
			for _, inner := range b.Blocks {
				walk(inner)
			}
		}
	}
	for _, b := range schema.Root() {
		walk(b)
	}
	if tried < 150 {
		t.Errorf("only %d attributes were tried", tried)
	}
}
