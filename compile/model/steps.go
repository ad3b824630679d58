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
	Through  []string // where there is a doorway: "an end first"; any of them will do
	WeightKg float64  // without fronts, drawers and loose shelves; 0 where it is not known, or framed piece by piece
	Two      bool     // it is more than one person carries
}

// Doing is what a step does with a thing.
type Doing int

const (
	SetInPlace    Doing = iota // it is set
	FramedInPlace              // it is framed where it stands
	MovedAside                 // it stands, and makes way
	MovedBack                  // it goes back to where it stood
)

func (d Doing) String() string {
	return [...]string{"set", "frame", "move aside", "move back"}[d]
}

// Slide is a straight motion, as one sees it who faces the run of what slides.
type Slide struct {
	To   string // "to the left", "to the right", "to the rear", "to the front", "down", "up"
	By   Length
	Over []string // what stands out of the walls and comes into its openings: "stub drain"
}

// Ahead is what must stand before a step, and why.
type Ahead struct{ What, Why string }

// Way tells the slides in words: "in from the front, then 3 1/2 in to the left, over stub drain".
func (s *SettingStep) Way(show func(Length) string) string {
	if s.Does == FramedInPlace {
		return "framed where it stands"
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

// inFrom tells a first slide, which has no beginning. For lookup only.
var inFrom = map[string]string{
	"to the rear": "in from the front", "to the front": "in from the rear", "to the left": "in from the right",
	"to the right": "in from the left", "down": "down from above", "up": "up from below",
}
