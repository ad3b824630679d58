package cutlist

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

func read(text string, form Form) List {
	return Read(source.File{Name: "list.csv", Text: []byte(text)}, form)
}

// told is a list as short lines: "shelf 4 of 600 x 300 turns (edge oak)".
func told(l List) (out []string) {
	for _, line := range l.Lines {
		text := fmt.Sprintf("%s %d of %s x %s %s", line.Piece, line.Pieces, line.Along.Decimal(length.Millimetres, 6), line.Across.Decimal(length.Millimetres, 6),
			[...]string{Unsaid: "unsaid", MayTurn: "turns", Fixed: "stays"}[line.Turn])
		if line.More != "" {
			text += " (" + line.More + ")"
		}
		out = append(out, text)
	}
	return out
}

func TestRead(t *testing.T) {
	inches, mm := Form{Unit: length.Inches}, Form{Unit: length.Millimetres}
	shelf := []string{"shelf 4 of 596.9 x 298.45 turns"}
	for _, c := range []struct {
		about, text string
		form        Form
		want        []string
	}{
		{"as it stands", "piece,pieces,along_grain,across_grain,may_turn\nshelf,4,23 1/2,11 3/4,yes\n", inches, shelf},
		{"any order, capitals, blanks", "May turn, Across grain ,pieces,PIECE,Along-Grain\ny, 11 3/4 , 4 , shelf,23 1/2", inches, shelf},
		{"units", "piece,pieces,along_grain,across_grain,may_turn\nshelf,4,596.9mm,298.45,1\n", mm, shelf},
		{"semicolons, a mark, other ends of lines", "\ufeffpiece;pieces;along_grain;across_grain;may_turn\r\nshelf;4;1ft 11 1/2in;11.75in;TRUE\r\n\r\n;;;;\r\n", mm, shelf},
		{"tabs and old ends of lines", "piece\tpieces\talong_grain\tacross_grain\tmay_turn\rshelf\t4\t23 1/2\t11 3/4\tyes\r", inches, shelf},
		{"decimal commas", "piece;pieces;along_grain;across_grain;may_turn\nshelf;4;596,9;\"298,45 mm\";yes\n", mm, shelf},
		{"inch marks, bare and in quotes", "piece,pieces,along_grain,across_grain,may_turn\n\"shelf\",4,23 1/2\",\"11 3/4\"\"\",yes\n", mm, shelf},
		{"a comma in quotes, quotes in a name", "piece,pieces,along_grain,across_grain\n\"shelf, \"\"low\"\"\",1,10,20\n4\" rail,0,1,1\n4\" rail,1,1,1",
			mm, []string{`shelf, "low" 1 of 10 x 20 unsaid`, `4" rail 1 of 1 x 1 unsaid`}},
		{"further columns, and a short line", "piece,room,pieces,along_grain,across_grain,,may_turn,edge\nend,tap room,2,700,300,x,no,oak\nlid,,1,700,300",
			mm, []string{"end 2 of 700 x 300 stays (room tap room, x, edge oak)", "lid 1 of 700 x 300 unsaid"}},
	} {
		l := read(c.text, c.form)
		if diff := cmp.Diff(c.want, told(l)); diff != "" || len(l.Findings) > 0 {
			t.Errorf("%s (-want +got):\n%s%v", c.about, diff, l.Findings)
		}
	}
}

func TestLengths(t *testing.T) {
	l := read("pieces,piece,along_grain\n3,rail,8ft\n", Form{Unit: length.Inches, Lengths: true})
	if diff := cmp.Diff([]string{"rail 3 of 2438.4 x 0 unsaid"}, told(l)); diff != "" || len(l.Findings) > 0 {
		t.Errorf("(-want +got):\n%s%v", diff, l.Findings)
	}
}

// TestFindings tells each mistake with the words that it points at, how it is said, and its mend.
func TestFindings(t *testing.T) {
	const head = "piece,pieces,along_grain,across_grain,may_turn\n"
	for _, c := range []struct{ text, slug, words, says, mend string }{
		{"", "no-pieces", "", "empty", "piece,pieces,along_grain"},
		{"\ufeff\r\n ;; \n", "no-pieces", "", "empty", "piece,pieces"},
		{head, "no-pieces", "piece,pieces,along_grain,across_grain,may_turn", "no pieces", "a line for each"},
		{head + "a,0,1,1,\n", "no-pieces", "piece,pieces,along_grain,across_grain,may_turn", "counted 0", ""},
		{"a,4,600,300\n", "column-missing", "a,4,600,300", "no columns piece, pieces, along_grain, across_grain.", "piece, pieces, along_grain, across_grain"},
		{"name,qty,length,width\na,4,6,3\n", "column-missing", "name,qty,length,width", "no columns piece, pieces, along_grain, across_grain.", "write piece for name, pieces for qty, along_grain for length, across_grain for width, if that is what they hold"},
		{"name,qty,length\na,4,6\n", "column-missing", "name,qty,length", "no columns piece, pieces, along_grain, across_grain.", "name the columns in the first line: piece, pieces, along_grain, across_grain"},
		{"piece,pieces,along_gran,across_grain\na,1,1,1\n", "unknown-column", "along_gran", "along_grain is missing", `"along_grain"`},
		{"piece,pieces,along_grain,across_grain,Pieces\na,1,1,1,1\n", "column-twice", "Pieces", "called pieces", "leave one"},
		{"piece,pieces,along_grain\na,1,1\n", "column-missing", "piece,pieces,along_grain", "across_grain", "across_grain"},
		{head + "a,-2,600,300,\n", "not-a-count", "-2", "cannot be -2 pieces", ""},
		{head + "a,1.5,600,300,\n", "not-a-count", "1.5", "no count of pieces", ""},
		{head + "a,,600,300,\n", "not-a-count", "", "how many", "4"},
		{head + "a,99999,600,300,\n", "not-a-count", "99999", "0 to 20000", ""},
		{head + "a,20000,600,300,\nb,1,600,300,\n", "too-many", "b,1,600,300,", "20001 pieces; the most is 20000", "parts"},
		{head + "a,1,71/2,300,\n", "unreadable-length", "71/2", "was 7 1/2 meant?", "7 1/2"},
		{head + "a,1,\"596,9\",300,\n", "unreadable-length", "\"596,9\"", "was 596.9 meant?", "596.9"},
		{"piece;pieces;along_grain;across_grain\na;1;1,200;300\n", "unreadable-length", "1,200", "thousands", ""},
		{head + "a,1,0,300,\n", "unreadable-length", "0", "larger than 0 in along_grain", ""},
		{head + "a,1,600,-300,\n", "unreadable-length", "-300", "larger than 0 in across_grain", ""},
		{head + "a,1,600\n", "unreadable-length", "", "across_grain", "600mm"},
		{head + "a,1,600,300,perhaps\n", "unknown-word", "perhaps", "may turn", "yes or no"},
		{head + "a,1,600,300,yes,oak\n", "list-unreadable", "oak", "6 cells, and the list 5 columns: 1 too many", "point"},
		{head + "\"a,1,600,300,yes\nb,1,1,1,\n", "list-unreadable", "\"a,1,600,300,yes", "no second one", "quotes"},
		{head + "a\xff,1,600,300,\n", "not-utf8", "\xff", "not UTF-8", "UTF-8"},
		{"p\x00i\x00", "not-utf8", "\x00", "not UTF-8", "UTF-8"},
	} {
		l := read(c.text, Form{Unit: length.Millimetres})
		told := false
		for _, f := range l.Findings {
			words := string(l.File.Text[f.At.Start.Byte:f.At.End.Byte])
			told = told || f.Slug == c.slug && words == c.words && strings.Contains(f.Text, c.says) && strings.Contains(f.Mend, c.mend) && (c.mend != "") == (f.Mend != "")
		}
		if !told || !l.Findings.HasErrors() {
			t.Errorf("%q: no %s at %q that says %q with the mend %q in\n%+v", c.text, c.slug, c.words, c.says, c.mend, l.Findings)
		}
	}
}

// TestManyMistakes holds back what would be said a thousand times.
func TestManyMistakes(t *testing.T) {
	l := read("piece,pieces,along_grain,across_grain\n"+strings.Repeat("a,1,wide,1\n", 1000), Form{})
	if n := l.Findings.Count(finding.Error); n != mostErrors {
		t.Errorf("%d errors are told, not %d", n, mostErrors)
	}
}

// FuzzRead reads anything: what is sound is within the limits, and each finding points into the text.
func FuzzRead(f *testing.F) {
	f.Add([]byte("piece,pieces,along_grain,across_grain,may_turn\nshelf,4,23 1/2,11 3/4,yes\n"), true)
	f.Add([]byte("\ufeffpiece;pieces;along_grain;;x\r\n\"a\"\"b\";1;\"7ft 1in\";;\r\r\"open"), false)
	f.Fuzz(func(t *testing.T, text []byte, lengths bool) {
		l := Read(source.File{Name: "list.csv", Text: text}, Form{Unit: length.Inches, Lengths: lengths})
		for _, found := range l.Findings {
			at := found.At
			if at.Start.Byte < 0 || at.End.Byte < at.Start.Byte || at.End.Byte > len(l.File.Text) || at.Start.Line != at.End.Line {
				t.Fatalf("%s points at %+v of %d bytes", found.Slug, at, len(l.File.Text))
			}
		}
		if l.Findings.HasErrors() {
			return
		}
		pieces := 0
		for _, line := range l.Lines {
			pieces += line.Pieces
			if line.Pieces < 1 || line.Along <= 0 || line.Across <= 0 && !lengths || line.Along > length.Max || line.Across > length.Max {
				t.Fatalf("%+v", line)
			}
		}
		if pieces < 1 || pieces > MaxPieces {
			t.Fatalf("%d pieces without a finding", pieces)
		}
	})
}
