package solve

import (
	"barwright/compile/geom"
	"barwright/compile/model"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

// knee is a knee wall while it is framed.
type knee struct {
	block, stick *lang.Block
	wall         model.KneeWall
	run          *model.Run
	thick        length.Length // of the lumber
	lower, upper int           // plates
}

// mostPlates bounds the plates of a knee wall, upper and lower ones together.
const mostPlates = 12

// kneeWalls frames each knee wall and lets its supports into the uppermost plate.
func (s *solver) kneeWalls() {
	for _, b := range s.Source.Top("knee_wall") {
		s.kneeWall(b)
	}
}

// runNamed finds a run that has been placed.
func (s *solver) runNamed(name string) *model.Run {
	for i := range s.m.Runs {
		if s.m.Runs[i].Name == name {
			return &s.m.Runs[i]
		}
	}
	panic("no run " + name)
}

func (s *solver) kneeWall(b *lang.Block) {
	run := s.runNamed(s.Ref(b, "behind").Name)
	if !s.checkBehind(b, run) {
		return
	}
	k := s.knee(b, run)
	if !s.soundFraming(&k) {
		return
	}
	s.kneeOutlets(&k)
	s.frame(&k)
}

// knee is a knee wall of which nothing but the extent is known.
func (s *solver) knee(b *lang.Block, run *model.Run) knee {
	stick := s.Ref(b, "lumber")
	w, gap := s.Length(stick, "width"), s.Length(b, "gap")
	return knee{
		block: b, stick: stick, run: run, thick: s.Length(stick, "thickness"),
		lower: s.Count(b, "bottom_plates"), upper: s.Count(b, "top_plates"),
		wall: model.KneeWall{
			Name: b.Name, Run: run.Name, Frame: run.Frame, Why: why(b),
			Framing: geom.Box{
				U: geom.Span{Lo: s.SolvedLength(b, "left"), Hi: s.SolvedLength(b, "right")},
				V: geom.Span{Lo: -gap - w, Hi: -gap},
				Z: geom.Span{Hi: s.SolvedLength(b, "top")},
			},
		},
	}
}

// frame makes the parts of a knee wall. Supports keep clear of the end studs and
// of outlets, the other studs of supports and outlets, and splices of supports.
func (s *solver) frame(k *knee) {
	steel := s.steelOf(k)
	if !s.placeStuds(k, steel) {
		return
	}
	splices, ok := s.splices(k, steel)
	if !ok {
		return
	}
	s.lowerPlates(k, splices)
	s.studParts(k)
	top := s.upperPlates(k, splices)
	if steel != nil {
		s.letIn(k, steel, top)
	}
	s.kneeBears(k)
	s.screwLines(k)
	s.m.KneeWalls = append(s.m.KneeWalls, k.wall)
	s.fastenKneeWall(k, splices)
}

func (s *solver) soundFraming(k *knee) bool {
	b, f, t, apart, plates := k.block, k.wall.Framing, k.thick, s.Length(k.block, "spacing"), k.lower+k.upper
	switch {
	case plates > mostPlates:
		s.Findings.Errorf("too-many", b.Head, "", "This asks for %d plates; %d is the most.", plates, mostPlates)
	case apart < 2*t:
		s.Findings.Errorf("studs-too-close", b.Head, "spacing = \""+s.Show(2*t)+"\" or more",
			"The studs of %s are %s thick and would stand %s from centre to centre.", b.Describe(), s.Show(t), s.Show(apart))
	case f.U.Size()/apart > mostPieces:
		s.tooMany(b.Head, int(f.U.Size()/apart), "studs")
	case f.U.Size() < 2*t:
		s.Findings.Errorf("box-too-small", b.Head, "", "%s is %s long, but two studs alone take up %s.", finding.Capital(b.Describe()), s.Show(f.U.Size()), s.Show(2*t))
	case f.Z.Hi <= length.Length(plates)*t:
		s.Findings.Errorf("box-too-small", b.Head, "", "%s is %s high, but its %s alone take up %s.",
			finding.Capital(b.Describe()), s.Show(f.Z.Hi), finding.Counted(plates, "plate"), s.Show(length.Length(plates)*t))
	default:
		return true
	}
	return false
}

// studSpan is where studs stand between the plates.
func (k *knee) studSpan() geom.Span {
	return geom.Span{Lo: length.Length(k.lower) * k.thick, Hi: k.wall.Framing.Z.Hi - length.Length(k.upper)*k.thick}
}

// stud is the extent of a stud about its centre.
func (k *knee) stud(centre length.Length) geom.Span {
	return geom.About(centre, k.thick)
}
