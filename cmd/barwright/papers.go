package main

import (
	"cmp"
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/compile/paper"
	emit "barwright/emit/paper"
)

// papers are the drawings as they are printed: all in one file, and each in one of its own. The
// name of a format counts before the description's, where it is not empty.
func papers(m *model.Model, format string) (files []folder.File) {
	all := paper.Drawings(m, paper.Formats[cmp.Or(format, m.Build.Paper)])
	if len(all) == 0 {
		return nil
	}
	files = append(files, folder.File{Name: "drawings.pdf", Write: func(w io.Writer) error {
		return emit.WritePDF(w, m.Build.Titled()+", drawings", all)
	}})
	for i := range all {
		p := &all[i]
		files = append(files, folder.File{Name: "drawings/" + p.Name + ".svg", Write: func(w io.Writer) error { return emit.WriteSVG(w, p) }})
	}
	return files
}
