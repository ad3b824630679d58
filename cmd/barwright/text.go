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

	own, given source.Files // what was parsed: the description's files and those of givens
	taken      []taken      // what the parsing asked for besides, in its order
}

// taken is a file that a description takes in, or why it cannot.
type taken struct {
	name string
	text []byte
	err  error
}

// look reads a description that may be changing, and tells of all files and folders that
// it was looked for in. Where no file differs from those of an earlier look, that is its answer: to
// parse a large description takes far longer than to read it.
func (o options) look(path string, before text) (t text, places []string) {
	places = append([]string{path}, o.setFiles...)
	own, tree, err := readPath(path)
	if err != nil {
		return text{err: err}, append(places, hclFiles(path)...)
	}
	defer tree.close()
	for _, f := range own {
		places = append(places, tree.place(f.Name))
	}
	given, err := o.givens()
	if err != nil {
		return text{err: err}, places
	}
	if before.src != nil && sameFiles(own, before.own) && sameFiles(given, before.given) && before.stillTaken(tree.open) {
		t = before
	} else {
		t = o.parsed(own, given, tree.open)
	}
	for _, f := range t.taken {
		places = append(places, tree.place(f.name))
	}
	return t, places
}

// parsed is the text of files.
func (o options) parsed(own, given source.Files, open lang.Open) text {
	t := text{own: own, given: given}
	if err := rescued(func() {
		t.src, t.findings = o.parse(own, given, func(name string) ([]byte, error) {
			f := taken{name: name}
			f.text, f.err = open(name)
			t.taken = append(t.taken, f)
			return f.text, f.err
		})
	}); err != nil {
		return text{err: err, taken: t.taken}
	}
	return t
}

// stillTaken reports whether what is taken in is as it was.
func (t text) stillTaken(open lang.Open) bool {
	return !slices.ContainsFunc(t.taken, func(f taken) bool {
		now, err := open(f.name)
		return !bytes.Equal(now, f.text) || (err == nil) != (f.err == nil) || err != nil && err.Error() != f.err.Error()
	})
}

func sameFiles(a, b source.Files) bool {
	return slices.EqualFunc(a, b, func(a, b source.File) bool { return a.Name == b.Name && bytes.Equal(a.Text, b.Text) })
}

// same reports whether nothing has changed.
func (t text) same(u text) bool {
	if t.err != nil || u.err != nil {
		return t.err != nil && u.err != nil && t.err.Error() == u.err.Error()
	}
	return sameFiles(t.src.Files, u.src.Files) &&
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
