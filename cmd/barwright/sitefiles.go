package main

import (
	"cmp"
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	laid "barwright/compile/paper"
	"barwright/emit/paper"
)

// siteFiles are the papers for the person on the floor.
func siteFiles(m *model.Model, format string) []folder.File {
	papers := laid.Site(m, laid.Formats[cmp.Or(format, m.Build.Paper)])
	return []folder.File{{Name: "site.pdf", Write: func(w io.Writer) error {
		return paper.WritePDF(w, m.Build.Titled()+": on the floor", papers)
	}}}
}

// fullScale are story poles at full size, over several papers.
func fullScale(m *model.Model, format string) folder.File {
	return folder.File{Name: "poles.pdf", Write: func(w io.Writer) error {
		return paper.WritePDF(w, m.Build.Titled()+": story poles at full size", laid.Strips(m, laid.Formats[cmp.Or(format, m.Build.Paper)]))
	}}
}
