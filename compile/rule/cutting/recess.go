package cutting

import (
	"fmt"

	"barwright/compile/rule"
)

func steelLiesLow(b *rule.Build) {
	for _, r := range machines(b) {
		r.beyond(b, "steel-lies-low", "low",
			"The steel lies %s below the top of the wood, and %s is the most that is common: %s more, by which the top sags before it rests on the steel.")
	}
}

func steelLoose(b *rule.Build) {
	for _, r := range machines(b) {
		r.beyond(b, "steel-loose", "fit",
			"The steel has %s of play on each side of its recess, and %s is the most that is common: %s more, by which it shifts and turns.")
	}
}

// beyond warns where a recess is larger than the steel by more than the limit of an
// attribute allows. The text takes what it is larger by, the limit and the excess.
func (r machine) beyond(b *rule.Build, slug, attr, text string) {
	have, limit := b.Length(r.block, attr), attr+"_most"
	most := b.Length(b.Limits, limit)
	if have <= most {
		return
	}
	usual := min(most, b.SchemaLength("router", attr))
	f := b.Findings.Warnf(slug, r.place(attr), fmt.Sprintf("%s = %q", attr, b.Show(usual)), text, b.Show(have), b.Show(most), b.Show(have-most))
	b.LimitOf(f, limit)
}
