package solve

import (
	"cmp"
	"fmt"

	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// checkFit compares each run with what it states and with its wall.
func (v *values) checkFit() {
	for _, run := range v.src.Top("run") {
		v.checkRunWall(run)
		if len(boxes(run)) == 0 {
			v.findings.Errorf("run-empty", run.Head, "cabinet \"…\" { width = rest }", "%s has no boxes.", finding.Capital(run.Describe()))
			continue
		}
		total := expr.OfLength(0)
		for _, b := range boxes(run) {
			total = sum(total, v.solved(b, "width"))
		}
		long := v.runLength(run)
		if total.Kind != expr.Length || long.Kind != expr.Length {
			continue
		}
		v.checkFilled(run, lengthOf(total), lengthOf(long))
		v.checkAgainstWall(run, lengthOf(long))
	}
}

// checkRunWall demands that a run says where it stands, once.
func (v *values) checkRunWall(run *lang.Block) {
	along, out := run.Attr("along"), run.Attr("out_from")
	switch {
	case along == nil && out == nil:
		v.findings.Errorf("attribute-missing", run.Head, "along = wall.NAME, or out_from = wall.NAME", "%s does not say where it stands.", finding.Capital(run.Describe()))
	case along != nil && out != nil:
		v.findings.Errorf("said-twice", out.NameAt, "leave one of them out", "%s stands along a wall or out from one, not both.", finding.Capital(run.Describe())).
			Also(along.NameAt, "along stands here")
	case out != nil && run.Attr("at") == nil:
		v.findings.Errorf("attribute-missing", run.Head, "at = …   (where its carcass front meets the wall)", "%s does not say where it meets its wall.", finding.Capital(run.Describe()))
	}
	for _, pair := range [][2]string{{"start", "along"}, {"from", "along"}, {"at", "out_from"}, {"faces", "out_from"}} {
		name, of := pair[0], pair[1]
		if a := run.Attr(name); a != nil && run.Attr(of) == nil {
			v.findings.Errorf("attribute-unused", a.NameAt, "leave it out", "%s is for a run with %s, which this one has not.", name, of)
		}
	}
}

func (v *values) checkFilled(run *lang.Block, total, long length.Length) {
	written := run.Attr("length")
	switch {
	case total > long:
		v.runTooLong(run, fmt.Sprintf("The boxes of %s are %s long in all, but its length is %s: %s too long.",
			run.Describe(), v.show(total), v.show(long), v.show(total-long)), total-long)
	case total < long && written != nil:
		v.findings.Errorf("run-too-short", written.Expr.At, "give one box width = rest, or change the length",
			"The boxes of %s are %s long in all: %s short of its length.", run.Describe(), v.show(total), v.show(long-total))
	}
}

func (v *values) checkAgainstWall(run *lang.Block, long length.Length) {
	wall := v.value(run, "along")
	if wall.Kind != expr.Ref {
		return
	}
	begin, end, ok := v.stretch(run, v.blocks[wall.Text])
	if over := long - (end - begin); ok && over > 0 {
		room := max(end-begin, 0)
		text := fmt.Sprintf("%s is %s long, but its wall has room for %s: %s too long.",
			finding.Capital(run.Describe()), v.show(long), v.show(room), v.show(over))
		var f *finding.Finding
		if written := run.Attr("length"); written != nil {
			f = v.findings.Errorf("run-too-long", written.Expr.At, "a length of at most "+v.show(room), "%s", text)
		} else {
			f = v.runTooLong(run, text, over)
		}
		f.Also(v.blocks[wall.Text].Attr("length").Expr.At, "the wall's length")
	}
}

// runTooLong names the widest box as the one to make narrower, where that
// would do.
func (v *values) runTooLong(run *lang.Block, text string, over length.Length) *finding.Finding {
	widest, width := (*lang.Block)(nil), length.Length(0)
	for _, b := range boxes(run) {
		if w := v.solvedLength(b, "width"); b.Spec.Kind == "cabinet" && w > width {
			widest, width = b, w
		}
	}
	mend := "make the boxes narrower, or leave one out"
	if widest != nil && width > 2*over {
		mend = fmt.Sprintf("make %s at most %s wide, or give one box width = rest", widest.Describe(), v.show(width-over))
	}
	return v.findings.Errorf("run-too-long", run.Head, cmp.Or(v.inMillimetres(run, over), mend), "%s", text)
}

// wideInInches is more than any box is wide: a bare number that comes to it in
// inches or feet was most likely meant in millimetres.
const wideInInches = 100 * length.Inch

// inMillimetres is the mend where a run would fit if the bare widths that are
// too large for inches were millimetres; empty where it would not.
func (v *values) inMillimetres(run *lang.Block, over length.Length) string {
	mend := ""
	for _, b := range boxes(run) {
		written, w := b.Attr("width"), v.ownWidth(b)
		if written == nil || !written.Expr.IsNumber() || !written.Expr.Unit.Imperial() || w.Kind != expr.Length || lengthOf(w) < wideInInches {
			continue
		}
		meant := lengthOf(w) * 10 / (written.Expr.Unit.Size() / (length.Millimetre / 10))
		over -= lengthOf(w) - meant
		if mend == "" {
			shown := length.Show(meant, length.Millimetres, length.Millimetre)
			mend = fmt.Sprintf("if %s was meant, write width = %q in %s", shown, shown, b.Describe())
		}
	}
	if over > 0 {
		return ""
	}
	return mend
}
