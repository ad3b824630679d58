// Package asjson writes what is printed for programs, which a terminal may show all the same.
package asjson

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"unicode"
	"unicode/utf8"
)

// Write writes a document as indented JSON. What could steer a terminal or turn the
// direction of writing is escaped. The error is that of w, or of a document that JSON does
// not have.
func Write(w io.Writer, document any) error {
	var out bytes.Buffer
	enc := json.NewEncoder(&out)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(document); err != nil {
		return err
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
