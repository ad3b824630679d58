package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"io"
	"slices"
	"strings"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/compile/relief"
	"barwright/emit/dxf"
	"barwright/lang/filename"
	"barwright/lang/length"
)

// cutFiles lists the files for the cutting table: one for each part or for each distinct
// one, and one for each sheet as laid out. What is worked from a part's other face has a
// file of its own. Where sheets alone are asked for, of parts only those that come from none
// have files.
func cutFiles(m *model.Model) (files []folder.File) {
	m = asRouted(m)
	c := newCutting(m, cutOptions(m))
	switch m.Table.Files {
	case "distinct":
		files = c.distinct()
	case "sheets":
		files = c.laidOut()
	default:
		files = c.each()
	}
	return append(c.laid(), files...)
}

// asRouted is a model whose parts have the bores by which its routers relieve corners.
func asRouted(m *model.Model) *model.Model {
	out := *m
	out.Parts = make([]model.Part, len(m.Parts))
	for i := range m.Parts {
		out.Parts[i] = *relief.Routed(&m.Parts[i], m.Programs)
	}
	return &out
}

// cutting makes the files. The maps are for lookup only.
type cutting struct {
	m       *model.Model
	options dxf.Options
	parts   map[string]*model.Part  // by ID
	sheets  map[string]*model.Sheet // by name
	turned  map[string]bool         // by ID: parts that lie turned on a sheet
	names   filename.Names          // of parts' files
}

func newCutting(m *model.Model, options dxf.Options) *cutting {
	c := &cutting{m: m, options: options, parts: m.PartsByID(), sheets: map[string]*model.Sheet{}, turned: map[string]bool{}}
	for i := range m.Stock.Sheets {
		c.sheets[m.Stock.Sheets[i].Name] = &m.Stock.Sheets[i]
	}
	return c
}

// said are the options with what the note says of a part, and of those like it.
func (c *cutting) said(p *model.Part, like []string) dxf.Options {
	out := c.options
	out.Like, out.Turned = like, c.turned[p.ID]
	if s := c.sheets[p.Stock]; s != nil {
		out.Batch = s.Batch
	}
	return out
}

func (c *cutting) cut(p *model.Part, name string, like []string) folder.File {
	return folder.File{Name: "parts/" + name + ".dxf", Write: func(w io.Writer) error {
		return dxf.WritePart(w, p, c.said(p, like))
	}}
}

// far is the file of a part's other face, where there is work in it.
func (c *cutting) far(p *model.Part, name string, like []string) []folder.File {
	if !dxf.HasOther(p, c.options) {
		return nil
	}
	return []folder.File{{Name: "parts/" + c.names.Free(name+"-far") + ".dxf", Write: func(w io.Writer) error {
		return dxf.WriteFar(w, p, c.said(p, like))
	}}}
}

// each part has a file.
func (c *cutting) each() (files []folder.File) {
	for i := range c.m.Parts {
		p := &c.m.Parts[i]
		name := c.names.Of(p.Label)
		files = append(files, c.cut(p, name, nil))
		files = append(files, c.far(p, name, nil)...)
	}
	return files
}

// distinct parts share a line of the cut list, and their files differ in nothing but
// label, name and owner. The first of them, in the order of the parts, gives its label.
func (c *cutting) distinct() (files []folder.File) {
	line := map[string]int{} // of the cut list, by label; lookup only
	for i := range c.m.Cuts {
		for _, label := range c.m.Cuts[i].Parts {
			line[label] = i
		}
	}
	type piece struct {
		line  int
		bytes [sha256.Size]byte
	}
	var pieces [][]*model.Part
	known := map[piece]int{} // lookup only
	for i := range c.m.Parts {
		p := &c.m.Parts[i]
		id := piece{line[p.Label], c.unnamed(p)}
		at, ok := known[id]
		if !ok {
			at = len(pieces)
			known[id] = at
			pieces = append(pieces, nil)
		}
		pieces[at] = append(pieces[at], p)
	}
	for _, like := range pieces {
		labels := make([]string, len(like))
		for i, p := range like {
			labels[i] = p.Label
		}
		name := c.names.Free(filename.With(labels[0], fmt.Sprintf("-x%d", len(like))))
		files = append(files, c.cut(like[0], name, labels))
		files = append(files, c.far(like[0], name, labels)...)
	}
	return files
}

// unnamed is a digest of a part's files, their notes written, without its names. A part
// whose file is refused, which writing it will tell, is like no other.
func (c *cutting) unnamed(p *model.Part) [sha256.Size]byte {
	bare, options := *p, c.options
	bare.Label, bare.Name, bare.Owner = "", "", ""
	options.Text, options.Build = true, ""
	var b bytes.Buffer
	for _, write := range [...]func(io.Writer, *model.Part, dxf.Options) error{dxf.WritePart, dxf.WriteFar} {
		if err := write(&b, &bare, options); err != nil {
			return sha256.Sum256([]byte(p.ID))
		}
	}
	return sha256.Sum256(b.Bytes())
}

// laidOut are the files of parts where sheets are cut as they are laid out: of what lies on
// none, and of other faces.
func (c *cutting) laidOut() (files []folder.File) {
	on := map[string]bool{} // by stock; lookup only
	for i := range c.m.Layouts {
		l := &c.m.Layouts[i]
		on[l.Stock] = l.Kind == model.Panel
		for k := range l.Blanks {
			for _, placed := range l.Blanks[k].Placed {
				c.turned[placed.Part] = placed.Turned
			}
		}
	}
	for i := range c.m.Parts {
		p := &c.m.Parts[i]
		name := c.names.Of(p.Label)
		if !on[p.Stock] {
			files = append(files, c.cut(p, name, nil))
		}
		files = append(files, c.far(p, name, nil)...)
	}
	return files
}

// laid are the sheets as they are laid out: outlines and what is cut in them, labels on the layer
// for notes, the sheet's edges on one of their own. There are none where parts may touch, for
// outlines in cut files never do; where the table has nothing but sheets, that was refused.
func (c *cutting) laid() (files []folder.File) {
	var names filename.Names
	apart := c.m.Saw.Kerf
	if c.m.Table.Free {
		apart = c.m.Table.Spacing
	}
	if apart <= length.Micrometre && c.m.Table.Files != "sheets" {
		return nil
	}
	for i := range c.m.Layouts {
		l := &c.m.Layouts[i]
		stock := c.sheets[l.Stock]
		if stock == nil {
			continue
		}
		for k := range l.Blanks {
			s := &dxf.Sheet{Stock: stock, Number: k + 1, Of: len(l.Blanks), Blank: &l.Blanks[k], Kerf: apart}
			for _, placed := range l.Blanks[k].Placed {
				s.Parts = append(s.Parts, c.parts[placed.Part])
			}
			options := c.options
			options.Batch = stock.Batch
			name := names.Free(filename.With(strings.TrimPrefix(l.Stock, "sheet."), fmt.Sprintf("-%d", k+1)))
			files = append(files, folder.File{Name: "sheets/" + name + ".dxf", Write: func(w io.Writer) error { return dxf.WriteSheet(w, s, options) }})
		}
	}
	return files
}

func cutOptions(m *model.Model) dxf.Options {
	t := &m.Table
	out := dxf.Options{
		Text: t.Notes, Unitless: !t.Stated, Layers: dxf.Layers(t.Layers), Inch: t.Inch, Build: m.Build.Titled(),
		Without: model.Written{Openings: !t.Write.Openings, Recesses: !t.Write.Recesses, Bores: !t.Write.Bores, Marks: !t.Write.Marks},
		Depths:  t.Depths, Mirrored: t.Mirrored, Origin: dxf.OriginNamed(t.Origin),
		Flatten: t.Flatten, Bit: t.Bit, Overrun: t.Overrun, Small: t.Small,
	}
	if t.R2000 {
		out.Version = dxf.R2000
	}
	if t.Relief != "none" {
		out.Relieve = func(p *model.Part) dxf.Relieved { return relieved(p, t) }
	}
	return out
}

// relieved clears a part's corners and names the recesses whose ends are too narrow.
func relieved(p *model.Part, t *model.Table) dxf.Relieved {
	c := relief.Part(p, t.Relief, t.Bit)
	out := dxf.Relieved{Part: c.Part, Outline: c.Outline, Openings: c.Openings, Recesses: c.Recesses}
	for _, r := range c.Left {
		if !slices.Contains(out.Narrow, r.Name) {
			out.Narrow = append(out.Narrow, r.Name)
		}
	}
	return out
}
