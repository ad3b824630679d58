package main

import (
	"bytes"
	"slices"

	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/source"
)

// text is a description as it was read at one time.
type text struct {
	src      *lang.Source // nil where there is an error
	findings finding.List // of the reading
	err      error
}

// look reads a description that may be changing, and tells of all files and folders that
// it was looked for in.
func (o options) look(path string) (t text, places []string) {
	places = append([]string{path}, o.setFiles...)
	files, tree, err := readPath(path)
	if err != nil {
		return text{err: err}, append(places, hclFiles(path)...)
	}
	defer tree.close()
	for _, f := range files {
		places = append(places, tree.place(f.Name))
	}
	if err := rescued(func() {
		t.src, t.findings, t.err = o.read(files, func(name string) ([]byte, error) {
			places = append(places, tree.place(name))
			return tree.open(name)
		})
	}); err != nil {
		t = text{err: err}
	}
	return t, places
}

// same reports whether nothing has changed.
func (t text) same(u text) bool {
	if t.err != nil || u.err != nil {
		return t.err != nil && u.err != nil && t.err.Error() == u.err.Error()
	}
	return slices.EqualFunc(t.src.Files, u.src.Files, func(a, b source.File) bool { return a.Name == b.Name && bytes.Equal(a.Text, b.Text) }) &&
		slices.EqualFunc(t.findings, u.findings, func(a, b finding.Finding) bool { return a.At == b.At && a.Text == b.Text })
}

// quiet is for how many looks a text must have stayed as it is before it is believed.
func (t text) quiet(now text, b result) int {
	switch {
	case now.err != nil || t.err == nil && t.lost(now):
		return quietGone
	case b.model == nil:
		return quietWrong
	}
	return quietSound
}

// lost reports whether a file that had text has none now.
func (t text) lost(now text) bool {
	return slices.ContainsFunc(t.src.Files, func(f source.File) bool {
		return len(f.Text) > 0 && len(now.src.Files.Text(f.Name)) == 0
	})
}
