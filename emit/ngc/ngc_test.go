package ngc_test

import (
	"bytes"
	"errors"
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/compile/router"
	"barwright/compile/router/routertest"
	"barwright/emit/ngc"
	"barwright/lang/length"
)

const (
	mm   = length.Millimetre
	inch = length.Inch
)

var shed = model.Build{Name: "tool shed bar", Unit: length.Inches, Marks: inch / 32, Revision: "B"}

var update = flag.Bool("update", false, "write the golden files")

// text returns what Write writes.
func text(t testing.TB, p *model.Program) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := ngc.Write(&b, shed, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s (-want +got):\n%s", name, diff)
	}
}

// closed is a recess away from all edges, for a program in inches.
func closed() router.Request {
	r := routertest.Support()
	r.Name, r.Recess, r.RecessID = "bar-support-2", "support 2", "knee_wall.bar/top-plate/support-2"
	r.Zero = "X0 at the pencil mark of support 2, Y0 at the front edge of the plate"
	r.Mark = 36 * inch
	r.Shape, r.Open = geom.R(-inch, inch/2, inch, 3*inch), nil
	r.Stock = geom.R(-36*inch, 0, 36*inch+inch/4, 3*inch+inch/2)
	r.Depth, r.Corner = inch/8, inch/2
	r.Tool = routertest.Tool(true)
	r.Tool.Stepover = 3 * inch / 16
	return r
}

func TestWriteGolden(t *testing.T) {
	for _, r := range []router.Request{routertest.Support(), closed()} {
		_, text := program(t, r)
		golden(t, r.Name+".ngc", text)
	}
}

func TestWriteSetupGolden(t *testing.T) {
	open, _ := program(t, routertest.Support())
	shut, _ := program(t, closed())
	open.Setup, shut.Setup, shut.MovedOn = 1, 2, shut.Mark-open.Mark
	m := &model.Model{
		Build: shed,
		Parts: []model.Part{{
			ID: open.Part, Label: open.PartLabel, Name: "top plate", Stock: "stick.two_by_four", Face: "top",
			Recesses: []model.Recess{{ID: open.RecessID, Fit: inch / 64}, {ID: shut.RecessID, Fit: inch / 64}},
		}, {
			ID: "knee_wall.bar/support-2", Label: "K1-X2", Name: "support plate 2",
			Outline: geom.RoundedContour(geom.R(0, 0, 63*inch/32, 12*inch), 31*inch/64), // 1/2 in less the fit
		}},
		KneeWalls: []model.KneeWall{{Supports: []model.Support{{Recess: "another", Part: "no part"},
			{Recess: shut.RecessID, Part: "knee_wall.bar/support-2"}}}},
		Programs: []model.Program{*open, *shut},
	}
	var b bytes.Buffer
	if err := ngc.WriteSetup(&b, m); err != nil {
		t.Fatal(err)
	}
	golden(t, "setup.txt", b.Bytes())

	b.Reset()
	m.Programs = nil
	if err := ngc.WriteSetup(&b, m); err != nil || b.Len() > 0 {
		t.Errorf("without programs: %v, %q", err, b.String())
	}
}

// The sheet says how round the steel is as it is drawn, not what the bit leaves:
// 1/8 in less a fit of 0.008 in, 0.117 in; and nothing that it does not know.
func TestSetupCorners(t *testing.T) {
	const fit = 8 * inch / 1000
	square := geom.RectContour(geom.R(0, 0, 5*inch/2, 13*inch))
	round := func(r length.Length) geom.Contour { return geom.RoundedContour(square.Bounds(), r) }
	uneven := round(inch / 8)
	uneven[1].Bulge /= 2
	for _, test := range []struct {
		steel geom.Contour
		want  string
	}{
		{round(inch/8 - fit), "round the steel's corners as X1 is drawn, 0.117 in (2.9718 mm) or more, or square"},
		{round(inch / 4), "round the steel's corners as X1 is drawn, 1/4 in (6.35 mm) or more, or square"},
		{square, "X1 has square corners, which the fit lets in"},
		{uneven, "round the steel's corners as X1 is drawn, or square"},
		{nil, "round the corners of what goes in by as much, or square"},
	} {
		p, _ := program(t, routertest.Support())
		p.Corner = inch / 8
		m := &model.Model{
			Build: model.Build{Unit: length.Inches, Marks: inch / 32},
			Parts: []model.Part{
				{ID: p.Part, Recesses: []model.Recess{{ID: p.RecessID, Fit: fit}}},
				{ID: "steel", Label: "X1", Outline: test.steel},
			},
			Programs: []model.Program{*p},
		}
		if test.steel != nil {
			m.KneeWalls = []model.KneeWall{{Supports: []model.Support{{Recess: p.RecessID, Part: "steel"}}}}
		}
		var b bytes.Buffer
		if err := ngc.WriteSetup(&b, m); err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(strings.Fields(b.String()), " "); !strings.Contains(got, test.want) {
			t.Errorf("no %q in %s", test.want, got[strings.Index(got, "corners"):])
		}
	}
}

// An open side is named by where it lies; bottom and top would be faces.
func TestOpenSidesAreNamedByTheirPlace(t *testing.T) {
	r := routertest.Support()
	r.Open, r.Shape.Y.Hi = []model.Edge{model.Bottom, model.Top}, r.Stock.Y.Hi
	_, through := program(t, r)
	r = routertest.Support()
	r.Shape.X = geom.Span{Lo: r.Stock.X.Lo, Hi: r.Stock.X.Lo + 3*inch}
	r.Shape.Y, r.Open = geom.Span{Lo: inch, Hi: 2 * inch}, []model.Edge{model.LeftEdge}
	_, left := program(t, r)
	_, shut := program(t, closed())
	for want, text := range map[string][]byte{
		"open at the edge at Y 0 and at Y 88.9; not cut through": through,
		"open at the edge at X -311.15; not cut through":         left,
		"closed on all sides; not cut through":                   shut,
	} {
		comments := strings.Join(strings.Fields(strings.NewReplacer("(", "", ")", "").Replace(string(text))), " ")
		if !strings.Contains(comments, want) || strings.Contains(comments, "bottom") {
			t.Errorf("no %q in %s", want, comments)
		}
	}
}

// TestWriteLines states what every line of every program keeps to, after
// NISTIR 6556 and the rules in the package comment.
func TestWriteLines(t *testing.T) {
	number := `-?\d+\.\d*`
	forms := regexp.MustCompile(`^(%|\([^()]*\)|M5|M30|T\d+( M6)?|S\d+ M3|G4 P3\.|G17 G2[01] G40 G49 G54 G80 G90 G94` +
		`|G0( X` + number + `)?( Y` + number + `)?( Z` + number + `)?` +
		`|G1( X` + number + `)?( Y` + number + `)?( Z` + number + `)?( F` + number + `)?` +
		`|G3 X` + number + ` Y` + number + `( Z` + number + `)? I` + number + ` J` + number + `( F` + number + `)?)$`)
	negativeZero := regexp.MustCompile(`-0\.0*( |$)`)
	rapid.Check(t, func(t *rapid.T) {
		p, refusal := router.Plan(routertest.Requests().Draw(t, "request"))
		if refusal != nil {
			t.Fatalf("refused: %+v", refusal)
		}
		var b bytes.Buffer
		if err := ngc.Write(&b, shed, &p); err != nil {
			t.Fatal(err)
		}
		lines := strings.Split(strings.TrimSuffix(b.String(), "\n"), "\n")
		for i, line := range lines {
			if len(line) > 256 || !forms.MatchString(line) || line == "G0" || line == "G1" || negativeZero.MatchString(line) {
				t.Fatalf("line %d: %q", i+1, line)
			}
		}
		if percent := lines[0] == "%" && lines[len(lines)-1] == "%"; percent != p.Tool.Dialect.Percent {
			t.Fatalf("percent lines: %v", percent)
		}
	})
}

// at starts a program whose moves a test sets.
func at(moves ...model.Move) *model.Program {
	tool := routertest.Tool(false)
	tool.Dialect.Percent = false
	return &model.Program{Name: "p", Tool: tool, Moves: append([]model.Move{{Z: 15 * mm}}, moves...)}
}

// body returns the motions of a program, without its first two and last one.
func body(t *testing.T, p *model.Program) string {
	t.Helper()
	s := string(text(t, p))
	s = s[strings.Index(s, "G0 X0. Y0.\n")+len("G0 X0. Y0.\n"):]
	return s[:strings.Index(s, "M5\n")]
}

func TestWriteMoves(t *testing.T) {
	const half = mm / 20000 // half of the last decimal
	for _, c := range []struct {
		name  string
		moves []model.Move
		want  string
	}{
		{"rapid: up, then sideways", []model.Move{{X: mm, Y: 2 * mm, Z: 20 * mm}}, "G0 Z20.\nG0 X1. Y2.\n"},
		{"rapid: sideways, then down", []model.Move{{X: mm, Z: 2 * mm}}, "G0 X1.\nG0 Z2.\n"},
		{"feed said once", []model.Move{
			{Kind: model.MoveLine, X: mm, Z: 15 * mm},
			{Kind: model.MoveLine, X: mm, Y: -mm / 10, Z: 15 * mm},
			{Kind: model.MoveRamp, Y: 0, Z: 14 * mm},
		}, "G1 X1. F2400.\nG1 Y-0.1\nG1 X0. Y0. Z14. F800.\n"},
		{"halves away from zero", []model.Move{{Kind: model.MoveLine, X: half, Y: -half, Z: 15 * mm}}, "G1 X0.0001 Y-0.0001 F2400.\n"},
		{"shorter than the last decimal", []model.Move{
			{Kind: model.MoveLine, X: half - 1, Y: 1 - half, Z: 15 * mm},
			{Kind: model.MoveLine, X: mm, Z: 15 * mm},
		}, "G1 X1. F2400.\n"},
		{"centre from the start as written", []model.Move{
			{Kind: model.MoveLine, X: mm + half, Z: 15 * mm},
			{Kind: model.MoveCW, X: 2*mm + half, Y: mm, CX: 2*mm + half, CY: 0, Z: 15 * mm},
		}, "G1 X1.0001 F2400.\nG2 X2.0001 Y1. I1. J0.\n"},
		{"full circle in halves", []model.Move{
			{Kind: model.MoveCCW, CX: mm, CY: mm, Z: 15 * mm},
		}, "G3 X2. Y2. I1. J1. F2400.\nG3 X0. Y0. I-1. J-1.\n"},
		{"arc that rounds to a point", []model.Move{
			{Kind: model.MoveCCW, X: 10, CX: 5, CY: mm, Z: 15 * mm},
		}, ""},
		{"a circle but for less than the last decimal", []model.Move{
			{Kind: model.MoveCW, X: 10, CX: 5, CY: mm, Z: 15 * mm},
		}, "G2 X0. Y2. I0. J1. F2400.\nG2 X0. Y0. I0. J-1.\n"},
		{"arc whose radius rounds to nothing", []model.Move{
			{Kind: model.MoveLine, X: half - 1, Z: 15 * mm}, // written as X0.
			{Kind: model.MoveCCW, X: half + 1, Y: 2, CX: half - 1, CY: 2, Z: 15 * mm},
		}, "G1 X0.0001 F2400.\n"},
		{"turn of a helix, at the feed of ramps", []model.Move{
			{Kind: model.MoveCCW, CX: mm, Z: 14 * mm},
		}, "G3 X2. Y0. Z14.5 I1. J0. F800.\nG3 X0. Y0. Z14. I-1. J0.\n"},
		{"note in brackets, in ASCII", []model.Move{
			{Kind: model.MoveLine, X: mm, Z: 15 * mm, Note: "level (1)\n½"},
		}, "(level [1] ?)\nG1 X1. F2400.\n"},
	} {
		if diff := cmp.Diff(c.want, body(t, at(c.moves...))); diff != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, diff)
		}
	}
}

func TestWriteFails(t *testing.T) {
	miss := at(model.Move{Kind: model.MoveCCW, X: 2 * mm, Y: mm / 10, CX: mm, Z: 15 * mm})
	coarse := at()
	coarse.Tool.Dialect.Chords, coarse.Tool.Dialect.Chord = true, mm/10_000
	blind := &model.Program{Moves: []model.Move{{Kind: model.MoveLine, X: mm}}, Tool: miss.Tool}
	for want, p := range map[string]*model.Program{"would miss its circle": miss, "straight pieces": coarse, "first move": blind} {
		if err := ngc.Write(&bytes.Buffer{}, shed, p); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("got %v, want ... %s ...", err, want)
		}
	}
	full := errors.New("disk full")
	if err := ngc.Write(broken{full}, shed, at()); !errors.Is(err, full) {
		t.Errorf("got %v, want the writer's error", err)
	}
}

type broken struct{ err error }

func (b broken) Write([]byte) (int, error) { return 0, b.err }
