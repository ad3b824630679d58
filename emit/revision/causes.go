package revision

import (
	"cmp"
	"slices"

	"barwright/compile/model"
)

// cause is the changed text at the end of a way; empty where it goes without saying,
// because all ways end there.
func (r *report) cause(way []string) string {
	if len(way) == 0 || way[len(way)-1] == r.root {
		return ""
	}
	return way[len(way)-1]
}

// because says so in a sentence.
func because(cause string) string {
	if cause == "" {
		return ""
	}
	return "because of " + cause
}

// onlyCause is the changed name that all follows from. Where the text says more than
// one thing otherwise, every way must be known to end there.
func onlyCause(r *model.Revision) string {
	said, name := 0, ""
	for i := range r.Changes {
		if c := &r.Changes[i]; c.Kind < model.Follows {
			said, name = said+1, c.Name
		}
	}
	if said > 1 {
		name = ""
	}
	one := func(way []string) bool {
		if len(way) == 0 {
			return said == 1
		}
		name = cmp.Or(name, way[len(way)-1])
		return name == way[len(way)-1]
	}
	for i := range r.Changes {
		if c := &r.Changes[i]; c.Kind >= model.Follows && !one(c.Because) {
			return ""
		}
	}
	for i := range r.Fates {
		if f := &r.Fates[i]; f.Kind != model.Unchanged && !one(f.Because) {
			return ""
		}
	}
	return name
}

// rootSays tells of the one cause of all.
func (r *report) rootSays() string {
	said := slices.IndexFunc(r.Changes, func(c model.Change) bool { return c.Kind >= model.Follows })
	switch {
	case r.root == "" || len(r.Changes) == 1 && len(r.Fates) == r.Count(model.Unchanged):
		return ""
	case said == 1 || len(r.Changes) == 1:
		return "All that is told from here on follows from " + r.root + "."
	}
	return "What follows, what moved and what becomes of the parts is all because of " + r.root + "."
}

// rank orders causes as the text's changes stand; what has none comes first.
func (r *report) rank(cause string) int {
	if cause == "" {
		return -1
	}
	if i := slices.IndexFunc(r.Changes, func(c model.Change) bool { return c.Name == cause }); i >= 0 {
		return i
	}
	return len(r.Changes)
}

// manyCauses reports whether parts are to be told apart by what they are because of.
func (r *report) manyCauses() bool {
	return slices.ContainsFunc(r.groups, func(g group) bool { return g.cause != "" })
}
