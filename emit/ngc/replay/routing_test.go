package replay_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/emit/ngc/replay"
)

// panel is cut out of a blank of 140 x 100 x 6 mm by a bit of 6 mm: a part of 120 x 80 mm
// with a bored and a wider hole, a groove that runs out at its left edge, and an opening
// that is cut round; tabs of 8 x 2 mm hold the offcut, and the part.
func panel() *model.Routing {
	at := func(x, y float64) geom.Point {
		return geom.Point{X: model.Length(x * float64(mm)), Y: model.Length(y * float64(mm))}
	}
	piece := geom.RectContour(geom.R(10*mm, 10*mm, 130*mm, 90*mm))
	through := []model.Length{2 * mm, 4 * mm, 64 * mm / 10}
	tab := func(x, y float64) model.Tab { return model.Tab{At: at(x, y), Width: 8 * mm, Height: 2 * mm} }
	return &model.Routing{
		Name: "panel", Stock: geom.R(0, 0, 140*mm, 100*mm), Piece: piece, Thick: 6 * mm, Under: 4 * mm / 10,
		Works: []model.Work{
			{Kind: "pin", Name: "shelf pin", Shape: geom.CircleContour(at(25, 25), 3*mm), Depth: 5 * mm, Levels: []model.Length{5 * mm}},
			{Kind: "pin", Name: "hinge plate", Shape: geom.CircleContour(at(25, 75), 4*mm), Depth: 4 * mm, Levels: []model.Length{4 * mm}},
			{Kind: "groove", Name: "back", Depth: 3 * mm, Levels: []model.Length{3 * mm}, Shape: geom.Contour{
				{Point: at(4, 45)}, {Point: at(37, 45), Bulge: 1}, {Point: at(37, 51)}, {Point: at(4, 51)},
			}},
			{Kind: "opening", Name: "cable", Shape: geom.RoundedContour(geom.R(60*mm, 30*mm, 110*mm, 70*mm), 3*mm),
				Freed: true, Tabs: []model.Tab{tab(85, 30), tab(85, 70)}, Levels: through},
			{Kind: "outline", Name: "outline", Shape: piece, Freed: true, Tabs: []model.Tab{tab(70, 90), tab(70, 10)}, Levels: through},
		},
		Tool: model.Tool{
			Number: 1, Diameter: 6 * mm, RPM: 18000, Feed: 2000 * mm, Plunge: 600 * mm,
			Stepdown: 32 * mm / 10, RampDegrees: 20, Clearance: 10 * mm, Rapid: 6000 * mm, Accelerate: 500,
			Dialect: model.Dialect{Decimals: 4},
		},
	}
}

// The panel's program, work by work.
const (
	begin = "(CAUTION)\nG17 G21 G40 G49 G54 G80 G90 G94\nT1\nS18000 M3\nG4 P3.\nG0 Z10.\n"

	bored = `(bored)
G0 X25. Y25.
G0 Z2.
G1 Z-3. F600.
G0 Z2.
G1 Z-5.
G0 Z10.
`
	helix = `(helix)
G0 X26. Y75.
G0 Z2.
G1 Z0. F600.
G3 X24. Y75. Z-1. I-1. J0.
G3 X26. Y75. Z-2. I1. J0.
G3 X24. Y75. Z-3. I-1. J0.
G3 X26. Y75. Z-4. I1. J0.
G3 X24. Y75. I-1. J0. F2000.
G3 X26. Y75. I1. J0.
G1 X25.
G0 Z10.
`
	groove = `(groove)
G0 X37. Y48.
G0 Z2.
G1 Z0. F600.
G1 X7. Z-3.
G1 X37. F2000.
G0 Z10.
`
	opening = `(opening)
G0 X63. Y60.
G0 Z2.
G1 Z0. F600.
G1 Y40. Z-2.
G1 Y33. F2000.
G1 X107.
G1 Y67.
G1 X63.
G1 Y40.
G1 Y33. Z-4. F600.
G1 X107. F2000.
G1 Y67.
G1 X63.
G1 Y33.
G1 X75. Z-6.4 F600.
G1 X63. F2000.
G1 X78.
G1 Z-4.
G1 X92.
G1 X104. Z-6.4 F600.
G1 X92. F2000.
G1 X107.
G1 Y67.
G1 X92.
G1 Z-4.
G1 X78.
G1 X66. Z-6.4 F600.
G1 X78. F2000.
G1 X63.
G1 Y33.
G0 Z10.
`
	outline = `(outline)
G0 X7. Y20.
G0 Z2.
G1 Z0. F600.
G1 Y40. Z-2.
G1 Y90. F2000.
G2 X10. Y93. I3. J0.
G1 X130.
G2 X133. Y90. I0. J-3.
G1 Y10.
G2 X130. Y7. I-3. J0.
G1 X10.
G2 X7. Y10. I0. J3.
G1 Y40.
G1 Y60. Z-4. F600.
G1 Y90. F2000.
G2 X10. Y93. I3. J0.
G1 X130.
G2 X133. Y90. I0. J-3.
G1 Y10.
G2 X130. Y7. I-3. J0.
G1 X10.
G2 X7. Y10. I0. J3.
G1 Y60.
G1 Y80. Z-6.4 F600.
G1 Y60. F2000.
G1 Y90.
G2 X10. Y93. I3. J0.
G1 X63.
G1 Z-4.
G1 X77.
G1 X97. Z-6.4 F600.
G1 X77. F2000.
G1 X130.
G2 X133. Y90. I0. J-3.
G1 Y10.
G2 X130. Y7. I-3. J0.
G1 X77.
G1 Z-4.
G1 X63.
G1 X43. Z-6.4 F600.
G1 X63. F2000.
G1 X10.
G2 X7. Y10. I0. J3.
G1 Y60.
G0 Z10.
`
	end = "M5\nG0 X0. Y0.\nM30\n"
)

func panelText() string { return begin + bored + helix + groove + opening + outline + end }

// TestCheckRoutingCatchesDamage: the panel's program passes; damaged in one place, or
// held against another panel, it does not.
func TestCheckRoutingCatchesDamage(t *testing.T) {
	if err := replay.CheckRouting([]byte(panelText()), panel()); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, section, old, new string
		want                    string
	}{
		{"groove 0.02 mm aside", groove, "Y48.", "Y48.02", "into wood that must stay"},
		{"groove 0.02 mm too long", groove, "X37. F2000.", "X37.02 F2000.", "into wood that must stay"},
		{"groove 0.06 mm too short", groove, "X37.", "X36.94", "groove back: wood is left"},
		{"groove not to the part's edge", groove, "X7.", "X13.2", "groove back: wood is left"},
		{"groove 0.02 mm too deep", groove, "Z-3.", "Z-3.02", "into wood that must stay|none of the levels"},
		{"groove 0.02 mm too shallow", groove, "Z-3.", "Z-2.98", "none of the levels"},
		{"plunge in the groove", groove, "G1 Z0. F600.\nG1 X7. Z-3.\n", "G1 Z-3. F600.\nG1 X7.\n", "too steep"},
		{"ramp too steep", groove, "X7. Z-3.", "X30. Z-3.\nG1 X7.", "too steep"},
		{"groove far beyond the edge", groove, "X7.", "X-8.", "far from what it cuts"},
		{"ramp at the feed of cuts", groove, "F600.\nG1 X7.", "F600.\nG1 X7. F2000.", "feed 2000.0 mm/min instead of 600.0"},

		{"hole 0.02 mm aside", bored, "X25.", "X25.02", "into wood that must stay"},
		{"hole 0.02 mm too deep", bored, "Z-5.", "Z-5.02", "in wood that must stay"},
		{"hole 0.02 mm too shallow", bored, "Z-5.", "Z-4.98", "pin shelf pin: wood is left"},
		{"one peck of 5 mm", bored, "G1 Z-3. F600.\nG0 Z2.\nG1 Z-5.\n", "G1 Z-5. F600.\n", "takes 5.000 mm at once"},
		{"pecks without coming up", bored, "G1 Z-3. F600.\nG0 Z2.\n", "G1 Z-3. F600.\n", "without having been above the top"},
		{"pecks at the feed of cuts", bored, "F600.", "F2000.", "feed 2000.0 mm/min instead of 600.0"},
		{"no hole", bored, bored, "", "pin shelf pin: wood is left"},

		{"helix 0.02 mm too wide", helix, "I-1. J0. F2000.\nG3 X26.", "I-1. J0. F2000.\nG3 X26.02", "misses its circle|into wood that must stay"},
		{"helix without its last turn", helix, "G3 X24. Y75. I-1. J0. F2000.\nG3 X26. Y75. I1. J0.\nG1 X25.", "G1 X25. F2000.", "pin hinge plate: wood is left"},
		{"helix with half its last turn", helix, "J0. F2000.\nG3 X26. Y75. I1. J0.\n", "J0. F2000.\n", "pin hinge plate: wood is left"},
		{"helix the other way round", helix, "G3 X24. Y75. I-1. J0. F2000.\nG3 X26. Y75. I1. J0.\n", "G2 X24. Y75. I-1. J0. F2000.\nG2 X26. Y75. I1. J0.\n", "the wrong way round"},
		{"plunge in the helix", helix, "G1 Z0. F600.", "G1 Z-1. F600.", "too steep"},
		{"helix 0.02 mm too deep", helix, "Z-4.", "Z-4.02", "in wood that must stay"},

		{"opening 0.02 mm too wide", opening, "X107.", "X107.02", "into wood that must stay"},
		{"opening 0.06 mm too narrow", opening, "X107.", "X106.94", "opening cable is not cut through"},
		{"opening 0.02 mm too deep", opening, "Z-6.4", "Z-6.42", "below the floor"},
		{"opening 0.02 mm too shallow", opening, "Z-6.4", "Z-6.38", "none of the levels"},
		{"opening without its first level", opening, "G1 Y40. Z-2.\n", "G1 Y40. Z0. F2000.\n", "too steep|at once"},
		{"opening without a level, steeper", opening, section([]byte(opening), "G1 Y40. Z-2.", "G1 X107. F2000.\nG1 Y67.\nG1 X63.\nG1 Y33.\n"),
			"G1 Y33. Z-4.\n", "at once"},
		{"opening's last quarter not cut", opening, "G1 X63.\nG1 Y33.\nG0", "G1 X63.\nG0", "opening cable is not cut through"},
		{"opening's last side short", opening, "G1 X63.\nG1 Y33.\nG0", "G1 X63.\nG1 Y42.\nG0", "opening cable is not cut through from X60"},
		{"a ramp left in the opening", opening, "G1 X92. F2000.\nG1 X107.\n", "G1 X107. F2000.\n", "opening cable is not cut through"},
		{"tab missing", opening, "G1 X78.\nG1 Z-4.\nG1 X92.\nG1 X104. Z-6.4 F600.\nG1 X92. F2000.\n", "", "into wood that must stay"},
		{"tab moved by 0.1 mm", opening, "G1 X78.\nG1 Z-4.\nG1 X92.\n", "G1 X78.1\nG1 Z-4.\nG1 X92.1\n", "into wood that must stay"},
		{"tab 0.1 mm narrower", opening, "G1 Z-4.\nG1 X92.\nG1 X104. Z-6.4 F600.\nG1 X92.", "G1 Z-4.\nG1 X92.\nG1 X104. Z-6.4 F600.\nG1 X91.9", "into wood that must stay"},
		{"tab 0.1 mm wider", opening, "G1 X78.\nG1 Z-4.\nG1 X92.\n", "G1 X77.9\nG1 Z-4.\nG1 X92.\n", "opening cable is not cut through from X80.9"},
		{"tab 0.1 mm lower", opening, "G1 Z-4.\nG1 X92.\n", "G1 Z-4.1\nG1 X92.\n", "none of the levels"},
		{"tab 0.1 mm higher", opening, "G1 Z-4.\nG1 X92.\n", "G1 Z-3.9\nG1 X92.\n", "none of the levels"},
		{"opening the wrong way round", opening, opening, reversedOpening, "the wrong way round"},

		{"outline 0.02 mm inside", outline, "X133. Y90. I0. J-3.\nG1 Y10.\nG2 X130. Y7. I-3. J0.\nG1 X77.", "X133. Y90. I0. J-3.\nG1 X132.98\nG1 Y10.\nG1 X133.\nG2 X130. Y7. I-3. J0.\nG1 X77.", "into wood that must stay"},
		{"outline with a side left", outline, "G2 X7. Y10. I0. J3.\nG1 Y60.\nG0", "G2 X7. Y10. I0. J3.\nG1 Y55.\nG1 Y20.\nG0", "follows|the wrong way round|not cut through"},
		{"outline's last corner not cut", outline, "G2 X7. Y10. I0. J3.\nG1 Y60.\nG0", "G0", "outline outline is not cut through"},
		{"outline's tab missing", outline, "G1 X63.\nG1 Z-4.\nG1 X77.\nG1 X97. Z-6.4 F600.\nG1 X77. F2000.\n", "", "into wood that must stay"},
		{"outline with a third tab", outline, "G1 Y10.\nG2 X130. Y7. I-3. J0.\nG1 X77.", "G1 Y60.\nG1 Z-4.\nG1 Y46.\nG1 Y26. Z-6.4 F600.\nG1 Y46. F2000.\nG1 Y10.\nG2 X130. Y7. I-3. J0.\nG1 X77.", "outline outline is not cut through"},
		{"through the part", outline, "G1 X63.\nG1 Z-4.\nG1 X77.\n", "G1 X63.\nG1 Y89.\nG1 Y93.\nG1 Z-4.\nG1 X77.\n", "into wood that must stay"},
		{"rapid through the cut", outline, "G1 Z-4.\nG1 X77.", "G1 Z-4.\nG0 X77.", "below the clearance"},
		{"outline at a crawl", outline, "F2000.", "F1.", "feed 1.0 mm/min instead of 2000.0"},
		{"spindle off", outline, "G1 Y40. Z-2.", "M5\nG1 Y40. Z-2.", "spindle stands"},
	} {
		t.Run(c.name, func(t *testing.T) {
			if !strings.Contains(c.section, c.old) {
				t.Fatalf("no %q in the section", c.old)
			}
			bad := strings.Replace(panelText(), c.section, strings.ReplaceAll(c.section, c.old, c.new), 1)
			err := alreadyCut(t).CheckRouting([]byte(bad), panel())
			if err == nil {
				t.Fatal("passes")
			}
			for _, want := range strings.Split(c.want, "|") {
				if strings.Contains(err.Error(), want) {
					return
				}
			}
			t.Errorf("got %v, want %s", err, c.want)
		})
	}
}

// alreadyCut has cut the panel as it should be.
func alreadyCut(t *testing.T) *replay.Checker {
	build := new(replay.Checker)
	if err := build.CheckRouting([]byte(panelText()), panel()); err != nil {
		t.Fatal(err)
	}
	return build
}

// reversedOpening is the opening, its last pass the other way round.
var reversedOpening = section([]byte(opening), "(opening)", "G1 X75. Z-6.4") + `G1 Y45. Z-6.4 F600.
G1 Y33. F2000.
G1 Y67.
G1 X78.
G1 Z-4.
G1 X92.
G1 X104. Z-6.4 F600.
G1 X92. F2000.
G1 X107.
G1 Y33.
G1 X92.
G1 Z-4.
G1 X78.
G1 X66. Z-6.4 F600.
G1 X78. F2000.
G1 X63.
G0 Z10.
`

// TestCheckRoutingWantsAnotherPanel: a sound program is refused for a panel that is a
// little different.
func TestCheckRoutingWantsAnotherPanel(t *testing.T) {
	for name, change := range map[string]func(r *model.Routing){
		"a wider bit":          func(r *model.Routing) { r.Tool.Diameter += mm / 20 },
		"a narrower bit":       func(r *model.Routing) { r.Tool.Diameter -= mm / 10 },
		"a thicker board":      func(r *model.Routing) { r.Thick += mm / 10 },
		"less below the board": func(r *model.Routing) { r.Under -= mm / 50 },
		"a smaller step-down":  func(r *model.Routing) { r.Tool.Stepdown = 22 * mm / 10 },
		"a gentler ramp":       func(r *model.Routing) { r.Tool.RampDegrees = 10 },
		"another level":        func(r *model.Routing) { r.Works[3].Levels = []model.Length{2 * mm, 3 * mm, 4 * mm, 64 * mm / 10} },
		"a wider tab":          func(r *model.Routing) { r.Works[3].Tabs[0].Width += mm / 5 },
		"a narrower tab":       func(r *model.Routing) { r.Works[3].Tabs[0].Width -= mm / 5 },
		"a higher tab":         func(r *model.Routing) { r.Works[4].Tabs[1].Height += mm / 10 },
		"a lower tab":          func(r *model.Routing) { r.Works[4].Tabs[0].Height -= mm / 10; r.Works[4].Tabs[1].Height -= mm / 10 },
		"a tab elsewhere":      func(r *model.Routing) { r.Works[4].Tabs[1].At.X += mm / 10 },
		"one tab less":         func(r *model.Routing) { r.Works[4].Tabs = r.Works[4].Tabs[:1] },
		"no tabs":              func(r *model.Routing) { r.Works[3].Tabs = nil },
		"an opening cleared":   func(r *model.Routing) { r.Works[3].Freed, r.Works[3].Tabs = false, nil },
		"a wider hole": func(r *model.Routing) {
			r.Works[0].Shape = geom.CircleContour(geom.Point{X: 25 * mm, Y: 25 * mm}, 305*mm/100)
		},
		"a hole less":       func(r *model.Routing) { r.Works = r.Works[1:] },
		"an outline less":   func(r *model.Routing) { r.Works = r.Works[:4] },
		"a part elsewhere":  func(r *model.Routing) { r.Works[4].Shape = r.Piece.Shifted(geom.Point{X: mm / 50}) },
		"less travel":       func(r *model.Routing) { r.Tool.Travel.X = 132 * mm },
		"a slower feed":     func(r *model.Routing) { r.Tool.Feed -= 10 * mm },
		"a slower plunge":   func(r *model.Routing) { r.Tool.Plunge -= 10 * mm },
		"a blank too small": func(r *model.Routing) { r.Stock.X.Lo = 5 * mm },
	} {
		t.Run(name, func(t *testing.T) {
			r := panel()
			change(r)
			err := alreadyCut(t).CheckRouting([]byte(panelText()), r)
			if t.Log(err); err == nil {
				t.Error("passes")
			}
		})
	}
}

// TestCheckRoutingWantsTheOutlineClockwise: with the clockwise spindle the part is on the
// bit's right; the same way mirrored, which runs counter-clockwise, is refused.
func TestCheckRoutingWantsTheOutlineClockwise(t *testing.T) {
	r := panel()
	r.Works = r.Works[4:]
	if err := replay.CheckRouting([]byte(begin+outline+end), r); err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.WriteString(begin)
	for line := range strings.Lines(outline) {
		words := strings.Fields(line)
		for i, w := range words {
			v, err := strconv.ParseFloat(w[1:], 64)
			switch {
			case w == "G2":
				words[i] = "G3"
			case err == nil && w[0] == 'X':
				words[i] = fmt.Sprintf("X%.4f", 140-v)
			case err == nil && w[0] == 'I' && v != 0:
				words[i] = fmt.Sprintf("I%.4f", -v)
			}
		}
		b.WriteString(strings.Join(words, " ") + "\n")
	}
	b.WriteString(end)
	if err := replay.CheckRouting([]byte(b.String()), r); err == nil || !strings.Contains(err.Error(), "the wrong way round") {
		t.Errorf("got %v\n%s", err, b.String())
	}
}
