package model

import (
	"barwright/compile/geom"
	"barwright/lang/finding"
)

// Revision is what one build differs in from another, an older one.
type Revision struct {
	Old, New *Model
	Changes  []Change // what the text says otherwise, in its order; then what follows from it
	Fates    []Fate   // of the new build's parts in their order, then of old pieces that serve for none
	Findings []FindingChange
	Bill     []BillChange // lines that differ, in the order of the new bill; then those that went
	// Again is what the parts to make again and the new ones are cut from: one line per stock.
	Again []BillLine
	Notes []string // what the comparison could not tell, and what it took for granted, in sentences
	// Cut tells that only pieces said to be cut were taken for there: parts that none of
	// them serves are still to be cut, which is no loss.
	Cut bool
}

// Empty reports whether the two builds differ in nothing that the report tells.
func (r *Revision) Empty() bool {
	for i := range r.Fates {
		if r.Fates[i].Kind != Unchanged {
			return false
		}
	}
	return len(r.Changes) == 0 && len(r.Findings) == 0 && len(r.Bill) == 0
}

// Count counts the parts of a fate.
func (r *Revision) Count(kind FateKind) int {
	n := 0
	for i := range r.Fates {
		if r.Fates[i].Kind == kind {
			n++
		}
	}
	return n
}

// Value is a value of the description as a record keeps it, for who compares two
// builds: an Answer without what only a reader of one build needs.
type Value struct {
	Name    string // "knee_wall.bar.top"; of a block its key
	Kind    AnswerKind
	Text    string // in the build's unit
	Written string // letter for letter; empty of a block
	Origin  Origin
	From    []string // names of the values that it follows from; of a block, the block that it stands in
}

// Change is one name whose value differs between two builds.
type Change struct {
	Name     string // "given.bar_top", "cabinet.urn.placed.u"
	Kind     ChangeKind
	Means    string // what the name stands for, in words; may be empty
	Old, New string // in words, in each build's unit; empty where a build has none
	// OldWritten and NewWritten are what the texts say, where that differs from Old
	// and New.
	OldWritten, NewWritten string
	Text                   string   // of what moved, in words: "1/4 in to the right", "1 in taller"
	Because                []string // names from the nearest cause to the changed text, which is the last
}

// ChangeKind tells how a name came to differ.
type ChangeKind int

const (
	Said    ChangeKind = iota // the text says otherwise, or the command line does
	Came                      // a block that was not there
	Went                      // a block that is no longer there
	Follows                   // it is worked out from what changed
	Moved                     // where a thing stands, or how large it came out
)

func (k ChangeKind) String() string {
	return [...]string{"said", "came", "went", "follows", "moved"}[k]
}

// Fate is what becomes of a part: of one of the new build, and the old piece that
// serves for it; or of an old piece that serves for none.
type Fate struct {
	Kind    FateKind
	Old     int // index of the old part; -1 where none serves
	New     int // index of the new part; -1 of what is dropped
	Lay     Lay // how the old piece lies in the new part's place
	Steps   []Step
	Missing []geom.Contour // what the old piece lacks, on the new part's drawn face
	Spare   []geom.Contour // what is to be cut away from it, likewise
	Off     Length         // the most that an edge is off by without a step
	// Stands tells where the part stands otherwise than the piece of its ID did, within the
	// block that it belongs to: "2 in lower"; empty where it stands as before.
	Stands string
	// Offcut is the index of the old piece out of whose offcut the part can be cut; -1
	// where out of none. Of a dropped piece, Serves lists the new parts that can.
	Offcut  int
	Serves  []int
	Because []string // as of a Change
}

// FateKind orders what becomes of parts from the least to the most trouble.
type FateKind int

const (
	Unchanged FateKind = iota // the piece serves as it is, where it is
	Relabel                   // the same piece under another name or at another place
	Rework                    // it serves once something is cut from it
	Patch                     // it would serve if what it lacks were made up
	MakeAgain                 // it was cut in vain
	NewPart                   // the old build had none
	Dropped                   // the new build has none
)

func (k FateKind) String() string {
	return [...]string{"unchanged", "relabel", "rework", "patch", "make again", "new", "dropped"}[k]
}

// Lay is how an old piece lies on the drawn face of a new part: turned over or not
// about its own y axis (x becomes -x), then turned by quarters counter-clockwise, then
// moved.
type Lay struct {
	Over     bool
	Quarters int // 0..3
	Move     geom.Point
}

// Point maps a point of the old piece's drawn face to the new part's.
func (l Lay) Point(p geom.Point) geom.Point {
	if l.Over {
		p.X = -p.X
	}
	for range l.Quarters {
		p.X, p.Y = -p.Y, p.X
	}
	return p.Add(l.Move)
}

// Contour maps a contour likewise. What was counter-clockwise stays so.
func (l Lay) Contour(c geom.Contour) geom.Contour {
	out := make(geom.Contour, len(c))
	for i, v := range c {
		out[i] = geom.Vertex{Point: l.Point(v.Point), Bulge: v.Bulge}
		if l.Over {
			out[i].Bulge = -v.Bulge
		}
	}
	if l.Over {
		out = out.Reversed()
	}
	return out
}

// Step is one thing to do to a piece.
type Step struct {
	Kind  StepKind
	What  string // the feature or the edge: "outlet urn", "top edge"
	Text  string // what to do, in words and figures of the new build's unit
	Count int    // of how many things that are alike: bores; 1 of anything else
}

// StepKind orders steps as they are done.
type StepKind int

const (
	Peel    StepKind = iota // take banding off
	Trim                    // cut an edge back
	Extend                  // a strip is missing along an edge
	Fill                    // an opening or a recess is no longer wanted there
	Plug                    // a bore is no longer wanted there
	CutOut                  // cut an opening or a notch
	Enlarge                 // an opening is to be larger
	Rout                    // cut a recess
	Deepen                  // a recess is to be deeper or larger
	Drill
	Tape // cover an edge with banding
	Draw // draw marks anew
	Look // a face is seen that was not: look whether it may be
)

func (k StepKind) String() string {
	return [...]string{"peel", "trim", "extend", "fill", "plug", "cut", "enlarge", "rout", "deepen", "drill", "band", "mark", "look"}[k]
}

// Makes reports whether the step makes up material that is missing.
func (k StepKind) Makes() bool { return k == Extend || k == Fill || k == Plug }

// FindingChange is a finding that one of the two builds has, or that both have with
// other figures.
type FindingChange struct {
	Old, New *finding.Finding // nil where that build has none
}

// BillChange is a line of the bill that differs; one of them may be nil.
type BillChange struct{ Old, New *BillLine }

// Costs returns what the line costs in each build; known is false where a build has the
// line without a price.
func (b BillChange) Costs() (before, after float64, known bool) {
	known = true
	for _, side := range []struct {
		line *BillLine
		cost *float64
	}{{b.Old, &before}, {b.New, &after}} {
		if side.line != nil {
			*side.cost, known = side.line.Cost(), known && side.line.Priced
		}
	}
	return before, after, known
}
