package revise

import (
	"strings"

	"barwright/compile/model"
)

// reasons gives each fate the way from the changed text: from the block that one of its
// steps names, or from that of its part, along the direction in which the part differs.
// What is merely not cut yet has none.
func reasons(r *model.Revision, w *ways) {
	if w == nil {
		return
	}
	was := map[string]*model.Part{} // by ID in the new build's words; lookup only
	for i := range r.Old.Parts {
		p := &r.Old.Parts[i]
		block := p.Block()
		was[renameIn(block, w.d.to)+p.ID[len(block):]] = p
	}
	for i := range r.Fates {
		f := &r.Fates[i]
		if f.Kind == model.Unchanged || r.Cut && (f.Kind == model.MakeAgain || f.Kind == model.NewPart) {
			continue
		}
		for _, s := range f.Steps {
			if block := strings.ReplaceAll(s.What, " ", "."); f.Because == nil && len(w.differs[block]) > 0 {
				f.Because = w.nearest(block, "")
			}
		}
		switch {
		case f.Because != nil:
		case f.New < 0:
			f.Because = w.nearest(renameIn(r.Old.Parts[f.Old].Block(), w.d.to), "")
		default:
			p := &r.New.Parts[f.New]
			direction := grown(was[p.ID], p)
			if f.Kind == model.Relabel && f.Stands != "" {
				direction = wentAlong(f.Stands)
			}
			f.Because = w.nearest(p.Block(), direction)
		}
	}
}

// grown is the one direction in which a part came out larger or smaller; empty where it
// is none, or several.
func grown(was, is *model.Part) string {
	if was == nil {
		return ""
	}
	a, b, out := was.Placement.Box, is.Placement.Box, ""
	for _, d := range []struct {
		name   string
		change model.Length
	}{{"u", b.U.Size() - a.U.Size()}, {"v", b.V.Size() - a.V.Size()}, {"z", b.Z.Size() - a.Z.Size()}} {
		switch {
		case d.change == 0:
		case out != "":
			return ""
		default:
			out = d.name
		}
	}
	return out
}
