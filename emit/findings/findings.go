// Package findings writes what was found about builds for programs: as JSON of
// our own, which SPEC.md and testdata/schema/findings.schema.json describe, and
// as SARIF 2.1.0, which editors and CI systems show beside the text. For people
// lang/finding prints. Nothing is judged, sorted or left out here.
package findings

import "barwright/lang/finding"

// Build is one build and what was found about it.
type Build struct {
	Path     string // as the command line names it, with forward slashes
	Files    []File
	Findings finding.List // sorted
	Solved   bool         // no finding stops it
	Parts    int          // where it is solved
	Programs int          // for the router, where it is solved
	Out      string       // the folder that was written; empty where none was
	Written  []string     // the files in it, relative, with forward slashes
}

// File is one text that findings point into.
type File struct {
	Name string // as findings have it
	Path string // from where the command runs, with forward slashes; empty where the text is words of the command line
	Text []byte
}

func (b *Build) file(name string) File {
	for _, f := range b.Files {
		if f.Name == name {
			return f
		}
	}
	return File{Name: name, Path: name}
}
