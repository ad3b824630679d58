// Package findings writes what was found about builds for programs: as JSON of
// our own, which SPEC.md and testdata/schema/findings.schema.json describe, and
// as SARIF 2.1.0, which editors and CI systems show beside the text. For people
// lang/finding prints. Nothing is judged, sorted or left out here.
package findings

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"

	"barwright/lang/finding"
)

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

// encode writes a document as indented JSON. What could steer a terminal or
// turn the direction of writing is escaped.
func encode(w io.Writer, document any) error {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(document); err != nil {
		return fmt.Errorf("findings: %w", err)
	}
	_, err := w.Write(harmless(out.Bytes()))
	return err
}

// harmless escapes control characters of a JSON text that the library leaves
// as they are; they can only stand in strings.
func harmless(text []byte) []byte {
	var out bytes.Buffer
	for len(text) > 0 {
		c, size := utf8.DecodeRune(text)
		if c >= 0x7f && (unicode.Is(unicode.Cc, c) || unicode.Is(unicode.Bidi_Control, c)) {
			fmt.Fprintf(&out, `\u%04x`, c)
		} else {
			out.Write(text[:size])
		}
		text = text[size:]
	}
	return out.Bytes()
}
