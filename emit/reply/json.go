package reply

import (
	"encoding/json"
	"io"

	"barwright/compile/model"
	"barwright/emit/asjson"
	"barwright/lang/length"
)

// Version is that of the JSON form. It changes when a reader of the version
// before would be misled.
const Version = 1

type document struct {
	Version int     `json:"barwright_show"`
	Replies []reply `json:"replies"`
}

type reply struct {
	Asked   string   `json:"asked"`
	Lists   bool     `json:"lists"`
	Answers []answer `json:"answers"`
}

type answer struct {
	Name    string        `json:"name"`
	Kind    string        `json:"kind"`
	Value   string        `json:"value,omitempty"`
	MM      []json.Number `json:"mm,omitempty"`
	Means   string        `json:"means,omitempty"`
	Origin  string        `json:"origin,omitempty"`
	Written string        `json:"written,omitempty"`
	At      *where        `json:"at,omitempty"`
	Says    string        `json:"says,omitempty"`
	From    []string      `json:"from,omitempty"`
	Inside  []string      `json:"inside,omitempty"`
}

type where struct {
	File   string `json:"file"`
	Line   int    `json:"line"`
	Column int    `json:"column"`
}

// JSON writes replies as one document: what Text shows, in full. Of a value the
// first of answers is the value itself, the others are all that it follows from,
// each once. It reports the first error of w.
func JSON(w io.Writer, replies []model.Reply) error {
	doc := document{Version: Version, Replies: make([]reply, len(replies))}
	for i, r := range replies {
		out := reply{Asked: r.Asked, Lists: r.Lists, Answers: make([]answer, len(r.Answers))}
		for j := range r.Answers {
			out.Answers[j] = encoded(&r.Answers[j])
		}
		doc.Replies[i] = out
	}
	return asjson.Write(w, doc)
}

func encoded(a *model.Answer) answer {
	out := answer{
		Name: a.Name, Kind: a.Kind.String(), Value: a.Text, Means: a.Means,
		Written: a.Written, Says: a.Says, From: a.From, Inside: a.Inside,
	}
	if a.Kind != model.AsBlock && a.Kind != model.NoAnswer {
		out.Origin = a.Origin.String()
	}
	for _, l := range a.Lengths {
		out.MM = append(out.MM, json.Number(l.Decimal(length.Millimetres, length.MaxPlaces)))
	}
	if !a.At.IsZero() {
		out.At = &where{a.At.File, a.At.Start.Line, a.At.Start.Column}
	}
	return out
}
