package main

import (
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/geom"
	"barwright/compile/model"
	laid "barwright/compile/paper"
	"barwright/emit/paper"
)

// siteFiles are the papers for the person on the floor.
func siteFiles(m *model.Model) []folder.File {
	return []folder.File{{Name: "site.pdf", Write: func(w io.Writer) error {
		return paper.WritePDF(w, m.Build.Titled()+": on the floor", laid.Site(m, sitePaper(m)))
	}}}
}

// fullScale are story poles at full size, over several papers.
func fullScale(m *model.Model) folder.File {
	return folder.File{Name: "poles.pdf", Write: func(w io.Writer) error {
		return paper.WritePDF(w, m.Build.Titled()+": story poles at full size", laid.Strips(m, sitePaper(m)))
	}}
}

// sitePaper is a size that every printer has.
func sitePaper(m *model.Model) geom.Point {
	if m.Build.Unit.Imperial() {
		return laid.Formats["letter"]
	}
	return laid.Formats["A4"]
}
