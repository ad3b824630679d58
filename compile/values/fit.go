package values

import (
	"cmp"
	"fmt"

	"barwright/lang"
	"barwright/lang/expr"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// CheckFit compares each run with what it states and with its wall.
func (v *Values) CheckFit() {
	for _, run := range v.Source.Top("run") {
		v.checkRunWall(run)
		if len(Boxes(run)) == 0 {
			v.Findings.Errorf("run-empty", run.Head, "cabinet \"…\" { width = rest }", "%s has no boxes.", finding.Capital(run.Describe()))
			continue
		}
		total := expr.OfLength(0)
		for _, b := range Boxes(run) {
			total = sum(total, v.solved(b, "width"))
		}
		long := v.RunLength(run)
		if total.Kind != expr.Length || long.Kind != expr.Length {
			continue
		}
		v.checkFilled(run, LengthOf(total), LengthOf(long))
		v.checkAgainstWall(run, LengthOf(long))
	}
}

// checkRunWall demands that a run says where it stands, once.
func (v *Values) checkRunWall(run *lang.Block) {
	along, out := run.Attr("along"), run.Attr("out_from")
	switch {
	case along == nil && out == nil:
		v.Findings.Errorf("attribute-missing", run.Head, "along = wall.NAME, or out_from = wall.NAME", "%s does not say where it stands.", finding.Capital(run.Describe()))
	case along != nil && out != nil:
		v.Findings.Errorf("said-twice", out.NameAt, "leave one of them out", "%s stands along a wall or out from one, not both.", finding.Capital(run.Describe())).
			Also(along.NameAt, "along stands here")
	case out != nil && run.Attr("at") == nil:
		v.Findings.Errorf("attribute-missing", run.Head, "at = …   (where its carcass front meets the wall)", "%s does not say where it meets its wall.", finding.Capital(run.Describe()))
	}
	for _, pair := range [][2]string{{"start", "along"}, {"from", "along"}, {"at", "out_from"}, {"faces", "out_from"}} {
		name, of := pair[0], pair[1]
		if a := run.Attr(name); a != nil && run.Attr(of) == nil {
			v.Findings.Errorf("attribute-unused", a.NameAt, "leave it out", "%s is for a run with %s, which this one has not.", name, of)
		}
	}
}

func (v *Values) checkFilled(run *lang.Block, total, long length.Length) {
	written := run.Attr("length")
	switch {
	case total > long:
		v.runTooLong(run, fmt.Sprintf("The boxes of %s are %s long in all, but its length is %s: %s too long.",
			run.Describe(), v.Show(total), v.Show(long), v.Show(total-long)), total-long)
	case total < long && written != nil:
		v.Findings.Errorf("run-too-short", written.Expr.At, "give one box width = rest, or change the length",
			"The boxes of %s are %s long in all: %s short of its length.", run.Describe(), v.Show(total), v.Show(long-total))
	}
}

func (v *Values) checkAgainstWall(run *lang.Block, long length.Length) {
	wall := v.Value(run, "along")
	if wall.Kind != expr.Ref {
		return
	}
	begin, end, ok := v.Stretch(run, v.blocks[wall.Text])
	if over := long - (end - begin); ok && over > 0 {
		room := max(end-begin, 0)
		text := fmt.Sprintf("%s is %s long, but its wall has room for %s: %s too long.",
			finding.Capital(run.Describe()), v.Show(long), v.Show(room), v.Show(over))
		var f *finding.Finding
		if written := run.Attr("length"); written != nil {
			f = v.Findings.Errorf("run-too-long", written.Expr.At, "a length of at most "+v.Show(room), "%s", text)
		} else {
			f = v.runTooLong(run, text, over)
		}
		f.Also(v.blocks[wall.Text].Attr("length").Expr.At, "the wall's length")
	}
}

// runTooLong names the widest box as the one to make narrower, where that
// would do.
func (v *Values) runTooLong(run *lang.Block, text string, over length.Length) *finding.Finding {
	widest, width := (*lang.Block)(nil), length.Length(0)
	for _, b := range Boxes(run) {
		if w := v.SolvedLength(b, "width"); b.Spec.Kind == "cabinet" && w > width {
			widest, width = b, w
		}
	}
	mend := "make the boxes narrower, or leave one out"
	if widest != nil && width > 2*over {
		mend = fmt.Sprintf("make %s at most %s wide, or give one box width = rest", widest.Describe(), v.Show(width-over))
	}
	return v.Findings.Errorf("run-too-long", run.Head, cmp.Or(v.inMillimetres(run, over), mend), "%s", text)
}

// wideInInches is more than any box is wide: a bare number that comes to it in
// inches or feet was most likely meant in millimetres.
const wideInInches = 100 * length.Inch

// inMillimetres is the mend where a run would fit if the bare widths that are
// too large for inches were millimetres; empty where it would not.
func (v *Values) inMillimetres(run *lang.Block, over length.Length) string {
	mend := ""
	for _, b := range Boxes(run) {
		written, w := b.Attr("width"), v.ownWidth(b)
		if written == nil || !written.Expr.IsNumber() || !written.Expr.Unit.Imperial() || w.Kind != expr.Length || LengthOf(w) < wideInInches {
			continue
		}
		meant := LengthOf(w) * 10 / (written.Expr.Unit.Size() / (length.Millimetre / 10))
		over -= LengthOf(w) - meant
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
