// Package all lists the rules of all sections of SPEC.md 11.
package all

import (
	"slices"

	"barwright/compile/rule"
	"barwright/compile/rule/access"
	"barwright/compile/rule/boards"
	"barwright/compile/rule/cutting"
	"barwright/compile/rule/finish"
	"barwright/compile/rule/floors"
	"barwright/compile/rule/loads"
	"barwright/compile/rule/passing"
	"barwright/compile/rule/screws"
	"barwright/compile/rule/seats"
	"barwright/compile/rule/standing"
	"barwright/compile/rule/walls"
	"barwright/compile/rule/water"
	"barwright/compile/rule/wiring"
)

// Rules lists all rules, in the order of SPEC.md 11.
func Rules() []rule.Rule {
	return slices.Concat(standing.Rules, access.Rules, finish.Rules, seats.Rules, screws.Rules, loads.Rules, boards.Rules, wiring.Rules, water.Rules, passing.Rules, cutting.Rules, floors.Rules, walls.Rules)
}
