package main

import (
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/compile/view/seen"
	"barwright/emit/dxf"
)

// drawings lists the drawings to be edited, where they are asked for.
func drawings(m *model.Model) (files []folder.File) {
	if !m.Table.Drawings {
		return nil
	}
	options := cutOptions(m)
	for i := range m.Views {
		v := &m.Views[i]
		files = append(files, folder.File{Name: "drawings/" + v.Name + ".dxf", Write: func(w io.Writer) error {
			shown := seen.Of(v)
			return dxf.WriteDrawing(w, &shown, options)
		}})
	}
	return files
}
