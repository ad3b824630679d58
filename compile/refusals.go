package compile

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/solve"
	"barwright/compile/values"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// refusals are recesses that a router does not cut: of those that share a place and a
// trouble, the worst.
type refusals []refused

type refused struct {
	*router.Refusal
	at     source.Range // the figure of the router that is at fault, otherwise the supports
	recess string       // its name
	where  source.Range // that it is asked for
	others int
}

func (all *refusals) add(v *values.Values, r solve.Recess, name string, refusal *router.Refusal) {
	now := refused{refusal, r.Why.At, name, r.Why.At, 0}
	if refusal.Attr != "" {
		now.at = said(v, r.Tool.Router, refusal.Attr)
	}
	for i := range *all {
		if before := &(*all)[i]; before.Kind == now.Kind && before.at == now.at {
			now.others = before.others + 1
			if now.miss() <= before.miss() {
				before.others++
			} else {
				*before = now
			}
			return
		}
	}
	*all = append(*all, now)
}

// miss is how far a figure is off.
func (r *refused) miss() model.Length { return length.Apart(r.Have, r.Need) }

// tell makes a finding of each.
func (all refusals) tell(v *values.Values, findings *finding.List) {
	for i := range all {
		r := &all[i]
		if r.at == r.where {
			findings.Errorf(r.Kind, r.at, "", "%s: %s", r.recess, r.Text)
			continue
		}
		others := finding.Others(r.others, ", as for another", ", as for %d others")
		findings.Errorf(r.Kind, r.at, r.mend(v), "%s", r.Text).Also(r.where, "used for %s here%s", r.recess, others)
	}
}

// mend is an edit of the router's figure that passes.
func (r *refused) mend(v *values.Values) string {
	fine := 10 * length.Micrometre
	if v.Source.Unit.Imperial() {
		fine = length.Inch / 1000
	}
	block, field, ofObject := strings.Cut(r.Attr, ".")
	least, most := length.Up(r.Least, fine), length.Down(r.Most, fine)
	switch {
	case ofObject && least > 0:
		return fmt.Sprintf("%s = { %s = %q } or more, on a machine that moves so far", block, field, v.Show(least))
	case least > 0:
		return fmt.Sprintf("%s = %q, or more", r.Attr, v.Show(least))
	case most > 0:
		return fmt.Sprintf("%s = %q, or less", r.Attr, v.Show(most))
	}
	return r.Mend
}

// said is where the text says a figure of a router, "feed" or "travel.x", or the
// router's head where it is left out.
func said(v *values.Values, name, attr string) source.Range {
	block := v.Block("router." + name)
	attr, field, ofObject := strings.Cut(attr, ".")
	a := block.Attr(attr)
	switch {
	case a == nil:
		return block.Head
	case ofObject:
		return v.Field(block, attr, field).At
	}
	return a.Expr.At
}
