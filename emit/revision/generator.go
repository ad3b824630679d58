package revision

import "bytes"

// generator tells in the head of a page what wrote it.
const generator = "barwright diff"

// IsPage reports whether a text begins as a page that Page wrote does. The first 1024
// bytes tell.
func IsPage(text []byte) bool {
	head, _, _ := bytes.Cut(text, []byte("<title>"))
	return bytes.Contains(head, []byte(`<meta name="generator" content="`+generator+`">`))
}
