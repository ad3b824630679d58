package asjson_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode"

	"pgregory.net/rapid"

	"barwright/emit/asjson"
)

// TestWrite: whatever a text holds is read back as it was, and nothing of it steers a terminal.
func TestWrite(t *testing.T) {
	hostile := rapid.SampledFrom([]rune{'\x1b', '\x7f', '\u0085', '\u009b', '\u061c', '\u200e', '\u202e', '\u2066', '"', '\\', '<', 'ü', '€', '\t', '\n'})
	rapid.Check(t, func(t *rapid.T) {
		want := map[string]string{"text": rapid.StringOf(rapid.OneOf(hostile, rapid.Rune())).Draw(t, "text")}
		var out strings.Builder
		if err := asjson.Write(&out, want); err != nil {
			t.Fatal(err)
		}
		for _, c := range out.String() {
			if c != '\n' && unicode.IsControl(c) || unicode.Is(unicode.Bidi_Control, c) {
				t.Fatalf("%U in %q", c, out.String())
			}
		}
		var got map[string]string
		if err := json.Unmarshal([]byte(out.String()), &got); err != nil || got["text"] != want["text"] {
			t.Fatalf("%q (%v), want %q", got["text"], err, want["text"])
		}
	})
}
