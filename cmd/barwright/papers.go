package main

import (
	"cmp"
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/paper"
	"barwright/compile/view"
	emit "barwright/emit/paper"
)

// papers are the drawings as they are printed, by what drew the model's views: all in one file, and each in
// one of its own. Views tell which of these shows a view, by its name, for lookup only; sheets have pictures
// of their own.
func papers(m *model.Model, drawings []view.Titled, format string) (files []folder.File, views map[string]string) {
	views = map[string]string{}
	all := paper.Drawings(m, drawings, paperSize(m, format))
	files = printed("drawings.pdf", m.Build.Titled()+", drawings", all)
	for i := range all {
		p := &all[i]
		name := "drawings/" + p.Name + ".svg"
		files = append(files, folder.File{Name: name, Write: func(w io.Writer) error { return emit.WriteSVG(w, p) }})
		for _, v := range p.Views {
			views[v] = name
		}
	}
	for i := range m.Sheets {
		views[m.Sheets[i].Name] = pictureName(&m.Sheets[i])
	}
	return files, views
}

// siteFiles are the papers for the person on the floor.
func siteFiles(m *model.Model, format string) []folder.File {
	return printed("site.pdf", m.Build.Titled()+": on the floor", paper.Site(m, paperSize(m, format)))
}

// fullScale are story poles at full size, over several papers.
func fullScale(m *model.Model, format string) []folder.File {
	return printed("poles.pdf", m.Build.Titled()+": story poles at full size", paper.Strips(m, paperSize(m, format)))
}

// paperSize is that of a format by its name, which counts before the description's where it is not
// empty.
func paperSize(m *model.Model, format string) geom.Point {
	return paper.Formats[cmp.Or(format, m.Build.Paper)]
}

// printed is a file of papers; none where there are no papers.
func printed(name, title string, all []model.Paper) []folder.File {
	if len(all) == 0 {
		return nil
	}
	return []folder.File{{Name: name, Write: func(w io.Writer) error { return emit.WritePDF(w, title, all) }}}
}
