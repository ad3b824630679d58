package main

import (
	"io"
	"strings"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/compile/view/seen"
	"barwright/emit/dxf"
	"barwright/emit/page"
	"barwright/emit/table"
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

// sheetFiles are the pictures of sheets as they are laid out, the list of what lies where on
// them, and that of the saw's cuts.
func sheetFiles(m *model.Model) (files []folder.File) {
	if len(m.Sheets) == 0 {
		return nil
	}
	files = append(files, folder.File{Name: "sheets/parts.csv", Write: func(w io.Writer) error { return table.Sheets(w, m) }})
	if !m.Table.Free {
		files = append(files, folder.File{Name: "sheets/cuts.csv", Write: func(w io.Writer) error { return table.SawCuts(w, m) }})
	}
	return append(files, pictures(m)...)
}

// pictures are those of sheets as they are laid out, each with what is said of it.
func pictures(m *model.Model) (files []folder.File) {
	for i := range m.Sheets {
		v := view.Captioned(m.Sheets[i])
		files = append(files, folder.File{Name: pictureName(&v), Write: func(w io.Writer) error { return page.WriteDrawing(w, &v) }})
	}
	return files
}

// pictureName is the file of a sheet's picture.
func pictureName(v *model.View) string {
	return "sheets/" + strings.TrimPrefix(v.Name, "sheet-") + ".svg"
}
