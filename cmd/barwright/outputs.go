package main

import (
	"bytes"
	"fmt"
	"io"

	"barwright/cmd/barwright/folder"
	"barwright/compile/model"
	"barwright/emit/ngc"
	"barwright/emit/ngc/replay"
	"barwright/emit/page"
	"barwright/emit/record"
	"barwright/emit/table"
)

// outputs lists the files of a build. The router's programs are written, read
// back and simulated first: one that would cut wrong stops the build.
func outputs(m *model.Model) ([]folder.File, error) {
	whole := func(write func(io.Writer, *model.Model) error) func(io.Writer) error {
		return func(w io.Writer) error { return write(w, m) }
	}
	files := []folder.File{
		{Name: "index.html", Write: whole(page.Write)},
		{Name: "bill.csv", Write: whole(table.BillCSV)},
		{Name: "bill.json", Write: whole(table.BillJSON)},
		{Name: "cutlist.csv", Write: whole(table.CutList)},
		{Name: recordName, Write: whole(record.Write)},
	}
	files = append(files, cutFiles(m)...)
	files = append(files, drawings(m)...)
	for i := range m.Programs {
		p := &m.Programs[i]
		var text bytes.Buffer
		if err := ngc.Write(&text, p); err != nil {
			return nil, err
		}
		if err := replay.Check(text.Bytes(), p); err != nil {
			return nil, fmt.Errorf("this is a bug in barwright: the program %s would cut wrong: %w", p.Name, err)
		}
		files = append(files, folder.File{Name: "router/" + p.Name + ".ngc", Write: func(w io.Writer) error {
			_, err := w.Write(text.Bytes())
			return err
		}})
	}
	if len(m.Programs) > 0 {
		files = append(files, folder.File{Name: "router/setup.txt", Write: whole(ngc.WriteSetup)})
	}
	files = append(files, templates(m, cutOptions(m))...)
	return files, nil
}
