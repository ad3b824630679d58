package cutplan

import (
	"fmt"
	"strings"

	"barwright/compile/model"
	"barwright/lang/cutlist"
	"barwright/lang/finding"
)

// room is what a sheet gives, its edges trimmed.
type room struct {
	along, across Length
	trim          Length
}

// rooms lists those of the sheets on sale.
func (j *Job) rooms() (out []room) {
	trim := j.Table.Edge(j.Saw)
	for _, s := range j.Sheets {
		out = append(out, room{s.Length - 2*trim, s.Width - 2*trim, trim})
	}
	return out
}

// left lists those of offcuts, which a saw does not trim.
func (j *Job) left() (out []room) {
	edge := j.Table.Edge(model.Saw{})
	for _, o := range j.Offcuts {
		out = append(out, room{o.Length - 2*edge, o.Width - 2*edge, edge})
	}
	return out
}

func (r room) gives(along, across Length) bool { return along <= r.along && across <= r.across }

// over is by how much a size is too large for a room, each way.
func (r room) over(along, across Length) (length, width Length) {
	return max(0, along-r.along), max(0, across-r.across)
}

// judge refuses a line whose pieces nothing can give. An offcut may, if there are enough.
func (j *Job) judge(line *cutlist.Line, findings *finding.List) {
	if len(j.Sticks) > 0 {
		j.judgeLength(line, findings)
		return
	}
	for _, r := range append(j.rooms(), j.left()...) {
		if r.gives(line.Along, line.Across) || j.turns(line) && r.gives(line.Across, line.Along) {
			return
		}
	}
	j.refuse(line, "", findings)
}

// refuse tells by how much pieces are too large for the sheet on sale that they miss by least, and
// what else there is to say.
func (j *Job) refuse(line *cutlist.Line, more string, findings *finding.List) {
	var best room
	var length, width Length
	least, turned := Length(-1), false
	for _, r := range j.rooms() {
		l, w := r.over(line.Along, line.Across)
		if least < 0 || max(l, w) < least {
			best, length, width, least = r, l, w, max(l, w)
		}
		turned = turned || r.gives(line.Across, line.Along)
	}
	show := j.Build.Plain
	trimmed := ""
	if best.trim > 0 {
		trimmed = fmt.Sprintf(" once %s is %s each edge", show(best.trim), map[bool]string{true: "kept from", false: "trimmed off"}[j.Table.Free])
	}
	at, mend := line.AlongAt, ""
	if length == 0 {
		at = line.AcrossAt
	}
	switch {
	case turned:
		mend = "turned it fits: write yes under may_turn, if its grain may run that way"
	case least <= 2*best.trim:
		mend = "trim less off, or take a larger sheet"
	}
	findings.Errorf("piece-too-large", at, mend, "Piece %q is %s along the grain and %s across it; %s gives %s x %s%s: %s.%s",
		line.Piece, show(line.Along), show(line.Across), j.which(), show(best.along), show(best.across), trimmed, tooMuch(show, length, width), more)
}

// which says what a piece is held against.
func (j *Job) which() string {
	if len(j.Sheets) == 1 {
		return "the sheet"
	}
	return "the sheet that comes nearest"
}

func tooMuch(show func(Length) string, length, width Length) string {
	var over []string
	if length > 0 {
		over = append(over, show(length)+" too long")
	}
	if width > 0 {
		over = append(over, show(width)+" too wide")
	}
	return strings.Join(over, " and ")
}

func (j *Job) judgeLength(line *cutlist.Line, findings *finding.List) {
	longest := Length(0)
	for _, s := range j.Sticks {
		longest = max(longest, s.Length-2*j.Saw.Trim)
	}
	if over := line.Along - longest; over > 0 {
		show, trimmed, mend := j.Build.Plain, "", ""
		if j.Saw.Trim > 0 {
			trimmed = fmt.Sprintf(" once %s is trimmed off each end", show(j.Saw.Trim))
		}
		if over <= 2*j.Saw.Trim {
			mend = "trim less off, or take a longer stick"
		}
		findings.Errorf("piece-too-large", line.AlongAt, mend, "Piece %q is %s long, and the longest stick %s%s: %s too long.",
			line.Piece, show(line.Along), show(longest), trimmed, show(over))
	}
}
