package finding

import (
	"slices"
	"strings"
)

// Rule is what a slug stands for: one entry of the table of all findings.
type Rule struct {
	Slug     string
	Severity Severity
	Milder   []Severity // what it can be too, where less hangs on it
	Says     string     // one line, as it stands in SPEC.md
	Explains string     // paragraphs, parted by empty lines, for a person with a tape
	Wrong    string     // a few lines that are answered by it, where few will do
	Right    string     // the same lines, mended
	Source   string     // standard and clause, or "common practice"; empty where it is plain arithmetic or the language's own
	Caution  string     // what a rule that touches people's safety defers to
}

// Severities are the words for all that a finding of the rule can be, the
// gravest first: "error", or "error or note".
func (r Rule) Severities() string {
	words := []string{r.Severity.String()}
	for _, s := range r.Milder {
		words = append(words, s.String())
	}
	return strings.Join(words, " or ")
}

// Sentence is what the rule says, as a sentence.
func (r Rule) Sentence() string { return Capital(r.Says) + "." }

// Paragraphs is what the rule explains, a line each.
func (r Rule) Paragraphs() []string {
	text := strings.TrimSpace(r.Explains)
	return strings.Split(strings.ReplaceAll(strings.ReplaceAll(text, "\n\n", "\x00"), "\n", " "), "\x00")
}

// Section is a section of SPEC.md and the rules that it states.
type Section struct {
	Number, Title string // "6.2", "Runs"
	Rules         []Rule
}

// Sections is the table of all findings, in the order of SPEC.md.
func Sections() []Section {
	return slices.Concat(aboutText, aboutValues, aboutRoom, aboutReference, aboutBoxes,
		aboutFraming, aboutInterior, aboutFronts, aboutEnds,
		aboutKneeOutlets, aboutSkins, aboutSpacing, aboutTops, aboutOpenings, aboutLimits,
		aboutStanding, aboutAccess, aboutFinish, aboutSeats, aboutScrews, aboutLoads, aboutBoards, aboutWiring, aboutWater, aboutPassing,
		aboutCutting, aboutSetting, aboutFiles, aboutDialects, aboutTemplates, aboutFloor, aboutScribes, aboutOrder, aboutWays, aboutWork, aboutLists)
}

// Lookup finds a rule and the section that states it.
func Lookup(slug string) (Rule, Section, bool) {
	for _, s := range Sections() {
		for _, r := range s.Rules {
			if r.Slug == slug {
				return r, s, true
			}
		}
	}
	return Rule{}, Section{}, false
}

// Slugs lists all slugs, in the order of the table.
func Slugs() []string {
	var out []string
	for _, s := range Sections() {
		for _, r := range s.Rules {
			out = append(out, r.Slug)
		}
	}
	return out
}

// What decides where people's safety hangs on it.
const (
	wiringDecides = "Local code and licensed practice decide what is wired where, and how. " +
		"Switch off, lock and test before a box is opened."
	passingDecides = "An opening in the right place says nothing of what may run through it: for wiring and water " +
		"local code and licensed practice decide. Switch off and shut off before anything is cut."
	waterDecides = "These are single checks of a drain as it is described, no approval: " +
		"local code and licensed practice decide how water is led in and out. Shut off before anything is opened."
	loadDecides = "This is arithmetic, no judgement of wood, steel, stone, wall or load: " +
		"local code and licensed practice decide."
	machineDecides = "The manuals of the machine and of the bit decide speeds, depths and how the work is held. " +
		"A program runs in the air first, then in scrap; guards stay on, eyes, ears and lungs are protected."
)
