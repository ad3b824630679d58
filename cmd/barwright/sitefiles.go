package main

import (
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	laid "barwright/compile/paper"
	"barwright/emit/paper"
)

// siteFiles are the papers for the person on the floor.
func siteFiles(m *model.Model) []folder.File {
	format := laid.Formats["A4"]
	if m.Build.Unit.Imperial() {
		format = laid.Formats["letter"]
	}
	return []folder.File{{Name: "site.pdf", Write: func(w io.Writer) error {
		return paper.WritePDF(w, m.Build.Titled()+": on the floor", laid.Site(m, format))
	}}}
}
