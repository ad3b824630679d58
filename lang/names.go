package lang

import "github.com/hashicorp/hcl/v2/hclsyntax"

// checkWord refuses a name that an expression could not use.
func (r *reader) checkWord(b *Block) {
	if b.Spec.Kind == "build" {
		return
	}
	if !hclsyntax.ValidIdentifier(b.Name) || len(b.Name) > 40 {
		r.findings.Errorf("unusable-name", b.NameAt, "letters, digits and _, a letter first, 40 at most",
			"%q cannot be used in an expression.", b.Name)
	}
}

// checkNames refuses two things of one name, a block that may stand once only,
// and a description without a build.
func (r *reader) checkNames() {
	first := map[string]*Block{} // lookup only
	r.src.Each(func(b *Block) {
		key := b.Key()
		if b.Name == "" && !b.Spec.Once {
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
		case b.Spec.Once:
			r.findings.Errorf("said-twice", b.Head, "leave one of them out", "There can be only one %s here.", b.Spec.Kind).
				Also(one.Head, "the first stands here")
		default:
			r.findings.Errorf("name-taken", b.NameAt, "give one of them another name", "Two of kind %s are named %q.", b.Spec.Kind, b.Name).
				Also(one.Head, "the first stands here")
		}
	})
	if len(r.src.Top("build")) == 0 && len(r.src.Files) > 0 {
		r.findings.Errorf("build-missing", start(r.src.Files[0].Name), `build "my bar" { unit = "in" }`,
			"The description has no build block, which names it and gives its unit.")
	}
}
