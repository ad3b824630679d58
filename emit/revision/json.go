package revision

import (
	"encoding/json"
	"io"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/asjson"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// Version is that of the JSON form. It changes when a reader of the version before
// would be misled.
const Version = 1

type document struct {
	Version  int             `json:"barwright_diff"`
	Old      side            `json:"old"`
	New      side            `json:"new"`
	Differ   bool            `json:"differ"`
	Cut      bool            `json:"cut"`
	Changes  []changeOut     `json:"changes"`
	Parts    []fateOut       `json:"parts"`
	Findings []findingChange `json:"findings"`
	Bill     []billChange    `json:"bill"`
	Again    []billLine      `json:"again"`
	Notes    []string        `json:"notes"`
}

type side struct {
	Name     string `json:"name"`
	Build    string `json:"build"`
	Revision string `json:"revision,omitempty"`
	Unit     string `json:"unit"`
	Parts    int    `json:"parts"`
}

type changeOut struct {
	Name       string   `json:"name"`
	Kind       string   `json:"kind"`
	Means      string   `json:"means,omitempty"`
	Old        string   `json:"old,omitempty"`
	New        string   `json:"new,omitempty"`
	OldWritten string   `json:"old_written,omitempty"`
	NewWritten string   `json:"new_written,omitempty"`
	Text       string   `json:"text,omitempty"`
	Because    []string `json:"because,omitempty"`
}

type fateOut struct {
	Fate    string     `json:"fate"`
	Old     *partOut   `json:"old,omitempty"`
	New     *partOut   `json:"new,omitempty"`
	Lay     *lay       `json:"lay,omitempty"`
	Steps   []step     `json:"steps,omitempty"`
	Why     []string   `json:"why,omitempty"`
	Missing [][]vertex `json:"missing,omitempty"`
	Spare   [][]vertex `json:"spare,omitempty"`
	Off     mm         `json:"off,omitempty"`
	Stands  string     `json:"stands,omitempty"`
	Offcut  *partOut   `json:"offcut,omitempty"`
	Serves  []partOut  `json:"serves,omitempty"`
	Because []string   `json:"because,omitempty"`
}

type partOut struct {
	ID    string `json:"id"`
	Label string `json:"label"`
}

type lay struct {
	Over     bool `json:"over"`
	Quarters int  `json:"quarters"`
	X        mm   `json:"x"`
	Y        mm   `json:"y"`
}

type step struct {
	Kind  string `json:"kind"`
	What  string `json:"what"`
	Text  string `json:"text"`
	Count int    `json:"count"`
}

type vertex struct {
	X     mm      `json:"x"`
	Y     mm      `json:"y"`
	Bulge float64 `json:"bulge,omitempty"`
}

type findingChange struct {
	Kind string      `json:"kind"`
	Old  *findingOut `json:"old,omitempty"`
	New  *findingOut `json:"new,omitempty"`
}

type findingOut struct {
	Slug     string `json:"slug"`
	Severity string `json:"severity"`
	File     string `json:"file,omitempty"`
	Line     int    `json:"line,omitempty"`
	Column   int    `json:"column,omitempty"`
	Text     string `json:"text"`
	Mend     string `json:"mend"`
}

type billChange struct {
	Old    *billLine `json:"old,omitempty"`
	New    *billLine `json:"new,omitempty"`
	Before *float64  `json:"before,omitempty"`
	After  *float64  `json:"after,omitempty"`
}

type billLine struct {
	Section  string   `json:"section"`
	Item     string   `json:"item"`
	Text     string   `json:"text"`
	Use      string   `json:"use,omitempty"`
	Quantity float64  `json:"quantity"`
	Unit     string   `json:"unit"`
	Needed   string   `json:"needed,omitempty"`
	WeightKg float64  `json:"weight_kg,omitempty"`
	Price    *float64 `json:"price,omitempty"`
	Cost     *float64 `json:"cost,omitempty"`
}

// mm is a length in millimetres, with all its decimals.
type mm = json.Number

func millimetres(l length.Length) mm {
	return mm(l.Decimal(length.Millimetres, length.MaxPlaces))
}

// JSON writes a revision as one document, each part of it on its own. Lengths are in
// millimetres, points on the new part's drawn face. The error is the writer's.
func JSON(w io.Writer, r *model.Revision, names Names) error {
	p := reported(r, names)
	doc := document{
		Version: Version, Old: sideOf(r.Old, names.Old), New: sideOf(r.New, names.New), Differ: !r.Empty(), Cut: r.Cut,
		Changes: []changeOut{}, Parts: []fateOut{}, Findings: []findingChange{}, Bill: []billChange{}, Again: []billLine{},
		Notes: append([]string{}, r.Notes...),
	}
	for i := range r.Changes {
		c := &r.Changes[i]
		doc.Changes = append(doc.Changes, changeOut{c.Name, c.Kind.String(), c.Means, c.Old, c.New, c.OldWritten, c.NewWritten, c.Text, c.Because})
	}
	for i := range r.Fates {
		doc.Parts = append(doc.Parts, p.fateOut(&r.Fates[i]))
	}
	for i := range r.Findings {
		f := &r.Findings[i]
		doc.Findings = append(doc.Findings, findingChange{came(f), findingOf(f.Old), findingOf(f.New)})
	}
	for i := range r.Bill {
		doc.Bill = append(doc.Bill, billChangeOf(&r.Bill[i]))
	}
	for i := range r.Again {
		doc.Again = append(doc.Again, *billLineOf(&r.Again[i]))
	}
	return asjson.Write(w, doc)
}

func sideOf(m *model.Model, name string) side {
	return side{name, m.Build.Name, m.Build.Revision, m.Build.Unit.String(), len(m.Parts)}
}

func (r *report) fateOut(f *model.Fate) fateOut {
	out := fateOut{
		Fate: f.Kind.String(), Old: partAt(r.Old, f.Old), New: partAt(r.New, f.New),
		Missing: vertices(f.Missing), Spare: vertices(f.Spare), Stands: f.Stands, Because: f.Because,
	}
	if f.Old >= 0 && f.New >= 0 {
		out.Lay = &lay{f.Lay.Over, f.Lay.Quarters, millimetres(f.Lay.Move.X), millimetres(f.Lay.Move.Y)}
	}
	for _, s := range f.Steps {
		out.Steps = append(out.Steps, step{s.Kind.String(), s.What, s.Text, s.Count})
	}
	if f.Kind == model.MakeAgain {
		out.Why = r.differs(f)
	}
	if f.Off > 0 {
		out.Off = millimetres(f.Off)
	}
	if f.Kind != model.Dropped {
		out.Offcut = partAt(r.Old, f.Offcut)
	} else {
		for _, at := range f.Serves {
			out.Serves = append(out.Serves, *partAt(r.New, at))
		}
	}
	return out
}

func partAt(m *model.Model, at int) *partOut {
	if at < 0 {
		return nil
	}
	return &partOut{m.Parts[at].ID, m.Parts[at].Label}
}

func vertices(contours []geom.Contour) [][]vertex {
	var out [][]vertex
	for _, c := range contours {
		points := make([]vertex, len(c))
		for i, v := range c {
			points[i] = vertex{millimetres(v.X), millimetres(v.Y), v.Bulge}
		}
		out = append(out, points)
	}
	return out
}

func findingOf(f *finding.Finding) *findingOut {
	if f == nil {
		return nil
	}
	return &findingOut{f.Slug, f.Severity.String(), f.At.File, f.At.Start.Line, f.At.Start.Column, f.Text, f.Mend}
}

func billChangeOf(b *model.BillChange) billChange {
	out := billChange{Old: billLineOf(b.Old), New: billLineOf(b.New)}
	if before, after, known := b.Costs(); known {
		out.Before, out.After = &before, &after
	}
	return out
}

func billLineOf(l *model.BillLine) *billLine {
	if l == nil {
		return nil
	}
	out := &billLine{Section: l.Section, Item: l.Item, Text: l.Text, Use: l.Use, Quantity: l.Quantity, Unit: l.Unit, Needed: l.Needed, WeightKg: l.WeightKg}
	if l.Priced {
		price, cost := l.Price, l.Cost()
		out.Price, out.Cost = &price, &cost
	}
	return out
}
