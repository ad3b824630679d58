package model

import "barwright/lang/source"

// Answer is what is known of one name that somebody may ask for: a value of
// the description, a block, a part, or where a thing came to stand.
type Answer struct {
	Name    string // "knee_wall.bar.top"
	Kind    AnswerKind
	Text    string   // the value in the build's unit: "40 1/2 in", "[16 in, 32 in]"
	Lengths []Length // those that Text shows, in its order; none of an object
	Means   string   // what the name stands for, in words
	Origin  Origin
	Written string       // the expression, letter for letter; a default as a text would say it
	At      source.Range // of Written; of a block or a part, who asked for it
	Says    string       // in words, what it follows from
	From    []string     // names of the answers that it follows from, in their order
	Inside  []string     // of a block: the named blocks directly inside it
}

// AnswerKind tells what a name stands for.
type AnswerKind int

const (
	NoAnswer AnswerKind = iota // left out, without a default
	InError                    // a finding says why
	AsBlock                    // a block or a part: other names begin with its own
	AsNumber
	AsLength
	AsText
	AsFlag
	AsList
	AsSpan // from the first of two Lengths to the second
	AsObject
	AsReference
	AsRest
)

func (k AnswerKind) String() string {
	return [...]string{"none", "error", "block", "number", "length", "text", "flag", "list", "span", "object", "reference", "rest"}[k]
}

// Origin tells where a value comes from.
type Origin int

const (
	FromText    Origin = iota // it is written
	FromDefault               // left out; the language's default holds
	FromCommand               // written on the command line, in the place of the text
	FromSolving               // it follows from others
	FromPlacing               // known once everything stands in its place
)

func (o Origin) String() string {
	return [...]string{"text", "default", "command line", "solved", "placed"}[o]
}

// Reply answers one name that was asked for.
type Reply struct {
	Asked string // empty for the overview
	// Lists tells that Answers is what begins with the name, in order, rather
	// than the value of that name and, after it, all that it follows from.
	Lists   bool
	Answers []Answer
}
