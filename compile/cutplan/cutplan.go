// Package cutplan lays out a plain cut list: it makes of its lines the parts of a model, of what is
// on sale its stock, and has compile/layout lay them out as those of a build. It takes lines that
// were read soundly, and gives a model with parts, stock and layouts and nothing else, or findings
// for pieces that nothing can give.
package cutplan

import (
	"fmt"

	"barwright/compile/geom"
	"barwright/compile/layout"
	"barwright/compile/model"
	"barwright/lang/cutlist"
	"barwright/lang/finding"
)

// Length is the measure of all sizes.
type Length = model.Length

// Job is what a list is cut from, and how. It has sheets or sticks, never both.
type Job struct {
	Build   model.Build       // its name is the list's
	Sheets  []model.SheetSize // as bought
	Offcuts []model.Offcut    // of sheets, there already
	Sticks  []model.StickLength
	Saw     model.Saw
	Table   model.Table // Free, Spacing and Margin
	Grain   bool        // pieces turn only where the list says that they may; otherwise where it does not say no
	Work    int         // as layout.Shop has it
}

// Lay lays a list out. The model is nil where a finding is an error.
func (j *Job) Lay(lines []cutlist.Line) (*model.Model, finding.List) {
	var findings finding.List
	for i := range lines {
		j.judge(&lines[i], &findings)
	}
	if findings.HasErrors() {
		return nil, findings
	}
	m := &model.Model{Build: j.Build, Saw: j.Saw, Table: j.Table}
	stock := j.stock(&m.Stock)
	of := map[string]*cutlist.Line{} // by part; lookup only
	for i := range lines {
		line := &lines[i]
		for n := range line.Pieces {
			p := model.Part{
				ID: fmt.Sprintf("line %d/%d", line.At.Start.Line, n+1), Label: line.Piece, Name: line.More, Stock: stock,
				Outline: geom.RectContour(geom.R(0, 0, line.Along, max(line.Across, 1))), Grain: model.GrainX,
				Why: model.Why{At: line.At},
			}
			if len(j.Sticks) > 0 {
				p.Kind = model.Lumber
			} else if j.turns(line) {
				p.Grain = model.GrainNone
			}
			m.Parts = append(m.Parts, p)
			of[p.ID] = line
		}
	}
	placed, misfits := layout.Layouts(m.Parts, m.Stock, layout.Shop{Saw: j.Saw, Table: j.Table, Work: j.Work})
	var told *cutlist.Line
	for _, miss := range misfits {
		if line := of[miss.Part]; line != told {
			j.refuse(line, " The offcuts that are large enough are too few.", &findings)
			told = line
		}
	}
	if len(misfits) > 0 {
		return nil, findings
	}
	m.Layouts = placed
	return m, findings
}

// stock fills in what the list is cut from, and returns its name.
func (j *Job) stock(s *model.Stock) string {
	if len(j.Sticks) > 0 {
		name := "stick." + j.Build.Name
		s.Sticks = []model.Stick{{Name: name, Lengths: j.Sticks, Ends: j.Saw.Trim, Width: 1, Thickness: 1}}
		return name
	}
	name, first := "sheet."+j.Build.Name, j.Sheets[0]
	s.Sheets = []model.Sheet{{
		Name: name, Length: first.Length, Width: first.Width, Price: first.Price, Priced: first.Priced,
		Also: j.Sheets[1:], Offcuts: j.Offcuts, Grain: true,
	}}
	return name
}

// turns tells whether a piece may lie across the grain.
func (j *Job) turns(line *cutlist.Line) bool {
	return line.Turn == cutlist.MayTurn || line.Turn == cutlist.Unsaid && !j.Grain
}
