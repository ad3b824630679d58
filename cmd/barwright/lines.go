package main

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"barwright/compile"
	"barwright/compile/ask"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/emit/reply"
	"barwright/lang"
	"barwright/lang/format"
	"barwright/lang/source"
)

// showLines prints a whole build as lines, for programs that compare them. Findings of
// a folder are told as elsewhere; of a file that can be read there is always an answer,
// so that git, which asks for one file at a time, gets one.
func showLines(o options, std streams) int {
	wrong := o.unusable()
	if len(o.args) > 1 || o.format != "text" {
		wrong = "--lines prints the whole of one build as text: leave out names and --format"
	}
	if wrong != "" {
		return misuse(std, wrong)
	}
	path := "."
	if len(o.args) > 0 {
		path = recordIn(o.args[0])
	}
	if info, err := os.Stat(path); err != nil || !info.IsDir() {
		return showFile(o, path, std)
	}
	b, err := o.solve(path, compile.Priced)
	if err != nil {
		return failed(std, err)
	}
	status := exitClean
	if b.model == nil {
		status = exitFindings
		if err := b.answer(std); err != nil {
			return failed(std, err)
		}
	}
	if !b.src.Lost {
		if err := printLines(std.out, b.src, b.model); err != nil {
			return failed(std, err)
		}
	}
	return status
}

func printLines(w io.Writer, src *lang.Source, m *model.Model) error {
	return reply.Lines(w, ask.Open(values.Explain(src), m).All(), m)
}

// showFile prints a record, or a file that is a build alone; the text of any other is
// laid out, and what cannot be is printed as it is.
func showFile(o options, path string, std streams) int {
	text, err := os.ReadFile(path)
	if err == nil {
		err = lines(o, source.File{Name: filepath.Base(path), Text: text}, std.out)
	}
	if err != nil {
		return failed(std, err)
	}
	return exitClean
}

func lines(o options, file source.File, w io.Writer) error {
	if isRecord(file.Name, file.Text) {
		m, err := o.recorded(file.Name, bytes.NewReader(file.Text))
		switch {
		case err == nil:
			return reply.Lines(w, ask.OfRecord(m).All(), m)
		case errors.As(err, new(misused)):
			return err
		}
		_, err = w.Write(file.Text)
		return err
	}
	// What it takes in does not lie beside a copy, and nothing else that does is meant.
	src, findings, err := o.read(source.Files{file}, func(string) ([]byte, error) { return nil, fs.ErrNotExist })
	if err != nil {
		return err
	}
	if b := solved(file.Name, src, findings, compile.Priced); b.model != nil {
		return printLines(w, src, b.model)
	}
	if neat, wrong := format.Format(file); len(wrong) == 0 {
		file.Text = neat
	}
	_, err = w.Write(file.Text)
	return err
}
