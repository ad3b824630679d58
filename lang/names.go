package lang

import (
	"barwright/lang/source"
	"strings"

	"github.com/hashicorp/hcl/v2/hclsyntax"
)

// checkWord refuses a name that an expression could not use.
func (r *reader) checkWord(b *Block) {
	if b.Spec.Kind == "build" || b.Spec.Kind == "include" {
		return
	}
	// HCL takes a hyphen for a letter: box-2 would be one name, and no
	// difference.
	if !hclsyntax.ValidIdentifier(b.Name) || strings.Contains(b.Name, "-") || len(b.Name) > 40 {
		r.findings.Errorf("unusable-name", b.NameAt, "letters, digits and _, a letter first, 40 at most",
			"%q cannot be used in an expression.", b.Name)
	}
}

// checkNames refuses two things of one name, and a second block where only one
// may stand.
func (r *reader) checkNames() {
	first, alike := map[string]*Block{}, map[string]*Block{} // lookup only
	r.checkGivens()
	r.src.Each(func(b *Block) {
		key := b.Key()
		if b.Name == "" && !b.Spec.Once || b.Spec.Kind == "given" || b.Spec.Kind == "include" {
			return
		}
		if b.Spec.Once {
			key = b.Spec.Kind
			if b.Parent != nil {
				key = b.Parent.Key() + " " + key
			}
		}
		one, taken := first[key]
		switch {
		case !taken:
			first[key] = b
			r.checkAlike(b, key, alike)
		case b.Spec.Once:
			r.findings.Errorf("said-twice", b.Head, "leave one of them out", "Only one block %q may stand here.", b.Spec.Kind).
				Also(one.Head, "the first stands here")
		default:
			r.src.Lost = true // a reference to the name could mean either
			r.findings.Errorf("name-taken", b.NameAt, "give one of them another name", "There are two %ss named %q.", KindWords(b.Spec.Kind), b.Name).
				Also(one.Head, "the first stands here")
		}
	})
}

// checkAlike refuses two things whose names differ in capitals only: on tape
// stuck to a board they would be one.
func (r *reader) checkAlike(b *Block, key string, alike map[string]*Block) {
	key = strings.ToUpper(key)
	if one, is := alike[key]; is {
		r.findings.Errorf("name-taken", b.NameAt, "give one of them another name",
			"There are two %ss whose names differ in capitals only, %q and %q: the labels of their parts would be the same.",
			KindWords(b.Spec.Kind), one.Name, b.Name).Also(one.Head, "the first stands here")
		return
	}
	alike[key] = b
}

// checkGivens refuses two inputs of one name; they may stand in several blocks.
func (r *reader) checkGivens() {
	first := map[string]Given{} // lookup only
	for _, b := range r.src.Top("given") {
		for _, g := range b.Givens() {
			if one, taken := first[g.Name]; taken {
				r.findings.Errorf("name-taken", g.NameAt, "give one of them another name", "There are two givens named %q.", g.Name).
					Also(one.NameAt, "the first stands here")
			} else {
				first[g.Name] = g
			}
		}
	}
}

// checkBuild refuses a description without a build.
func (r *reader) checkBuild() {
	if len(r.src.Top("build")) == 0 && len(r.src.Files) > 0 {
		r.findings.Errorf("build-missing", source.Start(r.src.Files[0].Name), `build "my bar" { unit = "in" }`,
			"The description has no build block, which names it and gives its unit.")
	}
}
