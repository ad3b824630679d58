// Package filename makes names of files that every system and every machine of a shop
// takes, out of whatever things are called.
package filename

import (
	"fmt"
	"strconv"
	"strings"

	"barwright/lang/latin"
)

// longest is how many bytes of a name are kept; systems take 255, and folders above a
// file, what tells it from others, and its extension have to go there too.
const longest = 80

// unnamed stands for a name with nothing in it.
const unnamed = "unnamed"

// Of turns a text into a file's name without its extension: ASCII letters, digits,
// full stops, hyphens and underscores. Letters are transliterated as in cut files; one
// that has no counterpart is written as its number, u65E5. Anything else becomes an
// underscore, several in a row one. It begins with a letter, a digit or an underscore
// and does not end in a full stop, has 80 bytes at most, and is none that Windows
// reserves for a device. A name that is so already stays as it is.
func Of(text string) string { return With(text, "") }

// With is Of with more behind the text that tells its file from others of the same thing,
// safe already, and beyond the 80 bytes: URN-L-far.
func With(text, more string) string {
	var b strings.Builder
	for _, r := range text {
		b.WriteString(spelled(r))
	}
	name := b.String()
	for strings.Contains(name, "__") {
		name = strings.ReplaceAll(name, "__", "_")
	}
	name = strings.TrimLeft(name, ".-")
	name = strings.TrimRight(name[:min(len(name), longest)], ".")
	if name == "" || name == "_" {
		name = unnamed
	}
	if name += more; reserved(name) {
		return "_" + name
	}
	return name
}

// spelled is how a letter is written in a name.
func spelled(r rune) string {
	plain := latin.ASCII(string(r))
	if plain == "?" && r != '?' {
		return fmt.Sprintf("u%04X", r)
	}
	if plain == "" && (r == ' ' || r == '\t' || r == '\n') {
		return "_"
	}
	return strings.Map(func(c rune) rune {
		if c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || strings.ContainsRune("._-", c) {
			return c
		}
		return '_'
	}, plain)
}

// reserved reports whether Windows takes a name for a device, whatever follows its
// first full stop (Microsoft, "Naming Files, Paths, and Namespaces").
func reserved(name string) bool {
	stem, _, _ := strings.Cut(strings.ToUpper(name), ".")
	switch stem {
	case "CON", "PRN", "AUX", "NUL":
		return true
	}
	port := strings.HasPrefix(stem, "COM") || strings.HasPrefix(stem, "LPT")
	return port && len(stem) == 4 && stem[3] >= '0' && stem[3] <= '9'
}

// Names makes names, each another one, for the files of a folder. The zero value is
// ready.
type Names struct {
	taken map[string]bool // in small letters, for systems that take them for the same; lookup only
}

// Of returns a name as the function Of makes it, or one like it where that is taken.
func (n *Names) Of(text string) string { return n.Free(Of(text)) }

// Free returns a name that is safe already, as Of and With make them. One that is taken, in
// whatever capitals, has a number added: URN-L-2.
func (n *Names) Free(name string) string {
	if n.taken == nil {
		n.taken = map[string]bool{}
	}
	free := name
	for i := 2; n.taken[strings.ToLower(free)]; i++ {
		free = name + "-" + strconv.Itoa(i)
	}
	n.taken[strings.ToLower(free)] = true
	return free
}
