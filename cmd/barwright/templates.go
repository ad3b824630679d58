package main

import (
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/emit/dxf"
	"barwright/emit/ngc"
)

// templates lists the files for routers that are led by hand; none where there are none.
func templates(m *model.Model, options dxf.Options) (files []folder.File) {
	for i := range m.Templates {
		t := &m.Templates[i]
		files = append(files, folder.File{Name: "templates/" + t.Name + ".dxf", Write: func(w io.Writer) error {
			return dxf.WriteTemplate(w, t, options)
		}})
	}
	if len(m.Templates) > 0 {
		files = append(files, folder.File{Name: "templates/setup.txt", Write: func(w io.Writer) error {
			return ngc.WriteHandSetup(w, m)
		}})
	}
	return files
}
