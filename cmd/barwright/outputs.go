package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/atonce"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/emit/ngc"
	"barwright/emit/ngc/replay"
	"barwright/emit/page"
	"barwright/emit/record"
	"barwright/emit/table"
	"barwright/emit/worklist"
)

// outputs lists the files of a build, whose views are drawn anew for paper. The router's programs are written, read
// back and simulated first: one that would cut wrong stops the build. The format is that of
// papers, the description's where it is empty.
func outputs(m *model.Model, drawn []view.Titled, format string) ([]folder.File, error) {
	whole := func(write func(io.Writer, *model.Model) error) func(io.Writer) error {
		return func(w io.Writer) error { return write(w, m) }
	}
	var views map[string]string // the papers that show them
	files := []folder.File{
		{Name: "index.html", Write: func(w io.Writer) error { return page.Write(w, m, views) }},
		{Name: "bill.csv", Write: whole(table.BillCSV)},
		{Name: "bill.json", Write: whole(table.BillJSON)},
		{Name: "cutlist.csv", Write: whole(table.CutList)},
		{Name: "labels.html", Write: whole(page.WriteLabels)},
		{Name: "work.txt", Write: whole(worklist.Text)},
		{Name: recordName, Write: whole(record.Write)},
	}
	var printed, site, programs []folder.File
	var err error
	atonce.All(
		func() { programs, err = routerFiles(m) },
		func() { printed, views = papers(m, drawn, format) },
		func() { site = siteFiles(m, format) },
	)
	if err != nil {
		return nil, err
	}
	files = append(files, cutFiles(m)...)
	files = append(files, printed...)
	files = append(files, site...)
	files = append(files, drawings(m)...)
	files = append(files, sheetFiles(m)...)
	files = append(files, programs...)
	if len(m.Programs)+len(m.Routings) > 0 {
		files = append(files, folder.File{Name: "router/setup.txt", Write: whole(ngc.WriteSetup)})
	}
	files = append(files, templates(m, cutOptions(m))...)
	return files, nil
}

// routerFiles are the router's programs, of which the first that would cut wrong is the error.
func routerFiles(m *model.Model) ([]folder.File, error) {
	files := make([]folder.File, len(m.Programs)+len(m.Routings))
	errs := make([]error, len(files))
	var checker replay.Checker
	atonce.Each(len(files), func(i int) {
		if i < len(m.Programs) {
			p := &m.Programs[i]
			files[i], errs[i] = routed(p.Name, func(w io.Writer) error { return ngc.Write(w, m.Build, p) }, func(text []byte) error { return checker.Check(text, p) })
			return
		}
		r := &m.Routings[i-len(m.Programs)]
		files[i], errs[i] = routed(r.Name, func(w io.Writer) error { return ngc.WriteRouting(w, m.Build, r) }, func(text []byte) error { return checker.CheckRouting(text, r) })
	})
	return files, cmp.Or(errs...)
}

// routed is the file of a router's program, which is simulated.
func routed(name string, write func(io.Writer) error, check func(text []byte) error) (folder.File, error) {
	var text bytes.Buffer
	if err := write(&text); err != nil {
		return folder.File{}, err
	}
	if err := check(text.Bytes()); err != nil {
		return folder.File{}, fmt.Errorf("this is a bug in barwright: the program %s would cut wrong: %w", name, err)
	}
	return folder.File{Name: "router/" + name + ".ngc", Write: func(w io.Writer) error {
		_, err := w.Write(text.Bytes())
		return err
	}}, nil
}
