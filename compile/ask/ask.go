// Package ask finds what is known by a name. It takes the values of a
// description, which package solve explains, and a solved model, and answers
// names: with a value and all that it follows from, or with what begins with
// the name. It works nothing out but where things have come to stand in the
// room, and judges nothing.
package ask

import (
	"slices"
	"strings"

	"barwright/compile/model"
	"barwright/lang/finding"
)

// Book is all that can be asked for.
type Book struct {
	answers []model.Answer
	at      map[string]int      // by name; lookup only
	next    map[string][]string // the names one word longer, in order; lookup only
	ends    map[string][]string // blocks whose names end in a word, in order; lookup only
}

// Open makes a book of the values of a description and of its model, which is
// nil where the build has errors.
func Open(values []model.Answer, m *model.Model) *Book {
	b := &Book{answers: values, at: map[string]int{}, next: map[string][]string{}, ends: map[string][]string{}}
	if m != nil {
		b.answers = append(slices.Clip(values), placed(m)...)
	}
	for i := range b.answers {
		b.enter(i)
	}
	for i := range b.answers[len(values):] {
		a := &b.answers[len(values)+i]
		a.From = slices.DeleteFunc(a.From, func(name string) bool { return !b.has(name) }) // of a model alone
	}
	return b
}

// enter makes an answer known by its name, and its name by those that it
// begins with, up to the empty one.
func (b *Book) enter(i int) {
	a := &b.answers[i]
	fresh := !b.has(a.Name)
	b.at[a.Name] = i
	for name := a.Name; fresh && name != ""; {
		above, _ := parted(name)
		fresh = !b.has(above)
		b.next[above] = append(b.next[above], name)
		name = above
	}
	if _, word := parted(a.Name); a.Kind == model.AsBlock {
		b.ends[word] = append(b.ends[word], a.Name)
	}
}

// has reports whether something is called so, or begins so.
func (b *Book) has(name string) bool {
	_, is := b.at[name]
	return is || len(b.next[name]) > 0
}

// parted splits the last word from a name.
func parted(name string) (above, word string) {
	dot := strings.LastIndexByte(name, '.')
	return name[:max(dot, 0)], name[dot+1:]
}

func joined(above, word string) string { return strings.TrimPrefix(above+"."+word, ".") }

// Ask answers a name; the label of a part is one. A name of a block, or one
// that ends in a dot, is answered with what begins with it, the empty name with
// all blocks. ok is false where there is no such name.
func (b *Book) Ask(asked string) (reply model.Reply, ok bool) {
	name := strings.TrimSuffix(asked, ".")
	if label := "part." + name; !b.has(name) && b.has(label) {
		name = label
	}
	i, is := b.at[name]
	opens := len(b.next[name]) > 0 && (!is || b.answers[i].Kind == model.AsBlock || strings.HasSuffix(asked, "."))
	switch {
	case opens:
		return model.Reply{Asked: name, Lists: true, Answers: b.below(name)}, true
	case is:
		return model.Reply{Asked: name, Answers: b.chain(name, map[string]bool{})}, true
	}
	return model.Reply{}, false
}

// below lists what begins with a name: values, and of blocks their heads.
func (b *Book) below(name string) []model.Answer {
	var out []model.Answer
	if i, is := b.at[name]; is {
		out = append(out, b.answers[i])
	}
	var list func(name string)
	list = func(name string) {
		i, is := b.at[name]
		longer := b.next[name]
		if is && (b.answers[i].Kind != model.AsObject || len(longer) == 0) {
			out = append(out, b.answers[i])
		}
		if is && b.answers[i].Kind == model.AsBlock {
			return
		}
		for _, n := range longer {
			list(n)
		}
	}
	for _, n := range b.next[name] {
		list(n)
	}
	return out
}

// chain is a value and what it follows from, each once.
func (b *Book) chain(name string, seen map[string]bool) []model.Answer {
	i, is := b.at[name]
	if !is || seen[name] {
		return nil
	}
	seen[name] = true
	out := []model.Answer{b.answers[i]}
	for _, from := range b.answers[i].From {
		out = append(out, b.chain(from, seen)...)
	}
	return out
}

// Meant is the name that a misspelt one most likely meant, empty where none is
// near.
func (b *Book) Meant(asked string) string {
	words := strings.Split(strings.TrimSuffix(asked, "."), ".")
	name, i := "", 0
	for i < len(words)-1 && b.has(joined(name, words[i])) {
		name = joined(name, words[i])
		i++
	}
	var may []string
	if name == "" {
		may = b.ends[words[i]]
	}
	if near := finding.Nearest(words[i], b.after(name)); near != "" {
		may = append(slices.Clip(may), joined(name, near))
	}
	for _, n := range may {
		if whole := strings.Join(append([]string{n}, words[i+1:]...), "."); b.has(whole) {
			return whole
		}
	}
	if len(may) == 0 {
		return ""
	}
	return may[0]
}

// after lists the words that a name may go on with.
func (b *Book) after(name string) []string {
	var out []string
	for _, n := range b.next[name] {
		_, word := parted(n)
		out = append(out, word)
	}
	return out
}

// OfRecord makes a book of a model alone: of the values it knows what the model keeps.
func OfRecord(m *model.Model) *Book {
	values := make([]model.Answer, len(m.Values))
	for i, v := range m.Values {
		values[i] = model.Answer{Name: v.Name, Kind: v.Kind, Text: v.Text, Written: v.Written, Origin: v.Origin, From: v.From}
	}
	return Open(values, m)
}

// All lists all that can be asked for: the values in the order of the text, then where
// things stand, and parts.
func (b *Book) All() []model.Answer { return b.answers }
