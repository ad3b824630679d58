package model

import "strings"

// SettingStep is one of those that set a build in its room.
type SettingStep struct {
	What     string // "cabinet sink", "blocks of bay cooler"
	Block    string // the key of its block: "cabinet.sink"
	Does     Doing
	Slides   []Slide  // from first to last
	Door     bool     // they begin inside the doorway; otherwise the first of them as far off as one likes
	After    []Ahead  // what must stand before
	Through  []string // where there is a doorway: the sides that may go first, "an end"
	WeightKg float64  // of the heaviest thing that is lifted; 0 where it is not known
	Lifted   string   // that thing: "cabinet sink, without fronts and loose shelves"
	People   int      // at least
}

// Doing is what a step does with a thing.
type Doing int

const (
	SetInPlace    Doing = iota // it is set
	FramedInPlace              // it is framed where it stands
	MovedAside                 // it stands, and makes way
	MovedBack                  // it goes back to where it stood
	LaidInPlace                // it is laid on the bare floor
)

func (d Doing) String() string {
	return [...]string{"set", "frame", "move aside", "move back", "lay"}[d]
}

// Slide is a straight motion, as one sees it who faces the run of what slides.
type Slide struct {
	To   string // "to the left", "to the right", "to the rear", "to the front", "down", "up"
	By   Length
	Over []string // what stands out of the walls and comes into its openings: "stub drain"
}

// Ahead is what must stand before a step, and why.
type Ahead struct{ What, Why string }

// Title names what is done: "move aside cabinet dry"; what is set, by itself.
func (s *SettingStep) Title() string {
	if s.Does == SetInPlace {
		return s.What
	}
	return s.Does.String() + " " + s.What
}

// Way tells the slides in words: "in from the front, then 3 1/2 in to the left, over stub drain".
func (s *SettingStep) Way(show func(Length) string) string {
	switch s.Does {
	case FramedInPlace:
		return "framed where it stands"
	case LaidInPlace:
		return "laid on the bare floor"
	}
	if s.Door && len(s.Slides) == 0 {
		return "in by the doorway"
	}
	var out []string
	for i, slide := range s.Slides {
		words := show(slide.By) + " " + slide.To
		switch {
		case i == 0 && s.Door:
			words = "from the doorway " + words
		case i == 0 && s.Does == SetInPlace:
			words = inFrom[slide.To]
		}
		if len(slide.Over) > 0 {
			words += ", over " + strings.Join(slide.Over, " and ")
		}
		out = append(out, words)
	}
	return strings.Join(out, ", then ")
}

// First tells which side goes first through the doorway, where not any does: "an end or its top
// or bottom first".
func (s *SettingStep) First() string {
	const all = 3
	if n := len(s.Through); n == 0 || n == all {
		return ""
	}
	return strings.Join(s.Through, " or ") + " first"
}

// Task is the key of the task of the order of work that does it: "set.cabinet.sink". What is
// done with a counter that is laid dry first is "fix" all the same.
func (s *SettingStep) Task() string {
	kind, name, _ := strings.Cut(s.Block, ".")
	switch {
	case s.Does == MovedAside:
		return "aside." + s.Block
	case s.Does == MovedBack:
		return "back." + s.Block
	case kind == "knee_wall":
		return "frame." + name
	case kind == "skin" || kind == "corner":
		return s.Block
	case kind == "bay" && strings.HasPrefix(s.What, "blocks "):
		return "blocks." + name
	case kind == "bay":
		return "appliance." + name
	case kind == "cabinet" && strings.HasPrefix(s.What, "base "):
		return "base." + s.Block
	case kind == "cabinet":
		return "set." + s.Block
	case kind == "filler" || kind == "end_panel":
		return "fit." + s.Block
	}
	return "fix." + s.Block // anchors, counters, bar tops
}

// Tasks are the keys of the tasks that may do it, by the first of which that there is it is numbered: a
// counter is laid dry before it is fixed.
func (s *SettingStep) Tasks() [2]string { return [...]string{"dry." + s.Block, s.Task()} }

// inFrom tells a first slide, which has no beginning. For lookup only.
var inFrom = map[string]string{
	"to the rear": "in from the front", "to the front": "in from the rear", "to the left": "in from the right",
	"to the right": "in from the left", "down": "down from above", "up": "up from below",
}
