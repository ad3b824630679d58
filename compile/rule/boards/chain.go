package boards

import (
	"fmt"
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/compile/rule"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// holding is what holds the boxes of a run: screws into its wall, blocks on the
// floor, or a knee wall behind it. Where the text names no screws for any of these
// nothing is known of screws, and what stands there is taken to hold.
type holding struct {
	*rule.Build
	run         *model.Run
	block       *lang.Block
	told        bool // of screws
	joint, wall *lang.Block
	anchors     map[string][]*lang.Block // by cabinet; lookup only
	knee        *lang.Block              // nil where there is none
	lines       map[string]bool          // cabinets before a stud of the knee wall; lookup only
}

func holdingsOf(b *rule.Build) []holding {
	out := make([]holding, len(b.Runs))
	for i := range b.Runs {
		run := &b.Runs[i]
		block := b.Block("run." + run.Name)
		h := holding{
			Build: b, run: run, block: block, joint: b.Ref(block, "joint_screws"), wall: b.Ref(block, "wall_screws"),
			anchors: map[string][]*lang.Block{}, lines: map[string]bool{},
		}
		h.told = h.joint != nil || h.wall != nil
		for _, a := range block.Inner("anchor") {
			under := b.Ref(a, "under").Name
			h.anchors[under] = append(h.anchors[under], a)
			h.told = h.told || b.Ref(a, "screws") != nil || b.Ref(a, "floor_screws") != nil
		}
		for j := range b.KneeWalls {
			if wall := &b.KneeWalls[j]; wall.Run == run.Name {
				h.knee = b.Block("knee_wall." + wall.Name)
				h.told = h.told || b.Ref(h.knee, "run_screws") != nil || b.Ref(h.knee, "floor_screws") != nil
				for _, line := range wall.Lines {
					h.lines[line.Box] = true
				}
			}
		}
		out[i] = h
	}
	return out
}

// lack is why something does not hold a box, where the text says it, and what would
// mend it.
type lack struct {
	text, mend string
	at         source.Range
}

func unnamed(b *lang.Block, screws string) lack {
	return lack{b.Describe() + " names no " + screws, screws + " = screw.NAME in " + b.Describe(), b.Head}
}

// lacks tells why each of what could hold a box does not; held is true where one
// does.
func (h *holding) lacks(box *model.Box) (out []lack, held bool) {
	if h.run.Along && h.wall != nil {
		return nil, true
	}
	for _, a := range h.anchors[box.Name] {
		switch {
		case h.told && h.Ref(a, "screws") == nil:
			out = append(out, unnamed(a, "screws"))
		case h.told && h.Text(a, "fixed") == "screws" && h.Ref(a, "floor_screws") == nil:
			out = append(out, unnamed(a, "floor_screws"))
		default:
			return nil, true
		}
	}
	cabinet := h.Block(box.Key())
	bare := lack{cabinet.Describe() + " has no anchor", h.anchor(box), cabinet.Head}
	if h.knee == nil {
		bare.text += " and no knee wall behind it"
	}
	if len(out) == 0 {
		out = append(out, bare)
	}
	switch {
	case h.knee == nil:
	case !h.lines[box.Name]:
		out = append(out, lack{"no stud of " + h.knee.Describe() + " stands behind it", bare.mend, h.knee.Head})
	case h.told && h.Ref(h.knee, "run_screws") == nil:
		out = append(out, unnamed(h.knee, "run_screws"))
	case h.told && h.Ref(h.knee, "floor_screws") == nil:
		out = append(out, unnamed(h.knee, "floor_screws"))
	default:
		return nil, true
	}
	return out, false
}

// chains are the cabinets of the run, those in one that are joined to one another.
func (h *holding) chains() [][]*model.Box {
	var out [][]*model.Box
	joined := false
	for i := range h.run.Boxes {
		box := &h.run.Boxes[i]
		switch {
		case box.Kind != model.Cabinet:
			joined = false
			continue
		case joined:
			out[len(out)-1] = append(out[len(out)-1], box)
		default:
			out = append(out, []*model.Box{box})
		}
		joined = h.joint != nil || !h.told
	}
	return out
}

// freeEndLoose looks at the last box of each run that stands out from a wall.
func freeEndLoose(b *rule.Build) {
	for _, h := range holdingsOf(b) {
		if chains := h.chains(); !h.run.Along && len(chains) > 0 {
			h.freeEnd(chains)
		}
	}
}

// last is the cabinet at the free end of a run that stands out, and its chain.
func (h *holding) last(chains [][]*model.Box) (box *model.Box, chain int) {
	if h.run.FreeAt(model.Left) {
		return chains[0][0], 0
	}
	chain = len(chains) - 1
	return chains[chain][len(chains[chain])-1], chain
}

func (h *holding) freeEnd(chains [][]*model.Box) {
	box, chain := h.last(chains)
	lacks, held := h.lacks(box)
	if held {
		return
	}
	cabinet := h.Block(box.Key())
	reasons := make([]string, len(lacks))
	for i, l := range lacks {
		reasons[i] = l.text
	}
	if len(chains) > 1 && len(chains[chain]) == 1 {
		reasons = append(reasons, "nothing joins it to its neighbour")
	}
	f := h.Findings.Warnf("free-end-loose", cabinet.Head, lacks[len(lacks)-1].mend,
		"The free end of %s is loose: %s.", h.block.Describe(), strings.Join(reasons, "; "))
	for _, l := range lacks {
		if l.at != cabinet.Head {
			f.Also(l.at, "what does not hold it")
		}
	}
}

// anchor is how to fix a cabinet to the floor.
func (h *holding) anchor(box *model.Box) string {
	if h.Text(h.CarcassOf(box), "stands_on") == "legs" {
		return `stands_on = "base" in its carcass, and an anchor under it`
	}
	return fmt.Sprintf(`anchor "NAME" { under = %s … } in the run, with screws`, box.Key())
}

// boxHeldByNothing looks for boxes that nothing holds, nor any box that they are
// joined to. What is at a free end is looked at by freeEndLoose.
func boxHeldByNothing(b *rule.Build) {
	for _, h := range holdingsOf(b) {
		chains := h.chains()
		if !h.told || len(chains) == 0 {
			continue
		}
		if !h.run.Along {
			_, free := h.last(chains)
			chains = slices.Delete(chains, free, free+1)
		}
		var loose []*model.Box
		for _, chain := range chains {
			if !slices.ContainsFunc(chain, h.holds) {
				loose = append(loose, chain...)
			}
		}
		if len(loose) > 0 {
			h.heldByNothing(loose)
		}
	}
}

// holds reports whether a box is held where it stands, if only by its side, to the
// wall that its run stands out from.
func (h *holding) holds(box *model.Box) bool {
	_, held := h.lacks(box)
	atWall := box.Hull.U.Lo == 0 && !h.run.FreeAt(model.Left) || box.Hull.U.Hi == h.run.Length && !h.run.FreeAt(model.Right)
	return held || h.wall != nil && atWall
}

func (h *holding) heldByNothing(loose []*model.Box) {
	cabinet := h.Block(loose[0].Key())
	what, verb := finding.Capital(cabinet.Describe()), "is"
	switch n := len(loose) - 1; n {
	case 0:
	case 1:
		what, verb = what+" and another", "are"
	default:
		what, verb = fmt.Sprintf("%s and %d more", what, n), "are"
	}
	reason, mend := "no wall_screws", "wall_screws = screw.NAME"
	switch {
	case h.run.Along:
	case h.joint == nil:
		reason, mend = "no joint_screws, and no anchor or knee wall holds what stands by itself", "joint_screws = screw.NAME"
	default:
		reason, mend = "no wall_screws, and no anchor or knee wall holds what stands there", h.anchor(loose[0])
	}
	h.Findings.Warnf("box-held-by-nothing", h.block.Head, mend, "%s %s held by nothing: %s names %s.", what, verb, h.block.Describe(), reason).
		Also(cabinet.Head, "the first of what is loose")
}
