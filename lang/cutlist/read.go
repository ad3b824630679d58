package cutlist

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// Columns that are known, by their place in columnNames.
const (
	pieceColumn = iota
	piecesColumn
	alongColumn
	acrossColumn
	turnColumn
	columns
)

var columnNames = [columns]string{"piece", "pieces", "along_grain", "across_grain", "may_turn"}

// mostErrors is how many mistakes of lines are told; the rest are of the same kind as a rule.
const mostErrors = 50

type reader struct {
	Form
	file     source.File
	line     lineStart
	comma    byte     // that parts the cells
	heads    []string // of the first line, as written
	place    [columns]int
	lines    []Line
	pieces   int
	findings finding.List
}

func (r *reader) list() {
	all, comma := rows(r.file.Text)
	r.comma = comma
	if len(all) == 0 {
		r.findings.Errorf("no-pieces", r.at(0, 0), "write "+strings.Join(columnNames[:], ",")+" into the first line, and a line for each piece",
			"The list is empty.")
		return
	}
	if !r.header(all[0]) {
		return
	}
	if len(all) == 1 {
		r.findings.Errorf("no-pieces", r.at(all[0].from, all[0].to), "add a line for each piece", "The list has columns and no pieces.")
		return
	}
	for _, row := range all[1:] {
		if len(r.findings) >= mostErrors || !r.row(row) {
			return
		}
	}
	if r.pieces == 0 && len(r.findings) == 0 {
		r.findings.Errorf("no-pieces", r.at(all[0].from, all[0].to), "", "All pieces of the list are counted 0.")
	}
}

// header finds the columns that the first line names.
func (r *reader) header(head row) bool {
	r.place = [columns]int{-1, -1, -1, -1, -1}
	for i, c := range head.cells {
		r.heads = append(r.heads, c.text)
		known := slices.Index(columnNames[:], columnWord(c.text))
		if known < 0 {
			continue
		}
		if before := r.place[known]; before >= 0 {
			b := head.cells[before]
			r.findings.Errorf("column-twice", r.at(c.from, c.to), "leave one of them out", "Two columns are called %s.", columnNames[known]).
				Also(r.at(b.from, b.to), "the first one")
			continue
		}
		r.place[known] = i
	}
	misspelt := map[string]int{} // the column that is near to a missing one; lookup only
	var missing []string
	for k, name := range columnNames {
		if r.place[k] < 0 {
			missing = append(missing, name)
		}
	}
	for i, c := range head.cells {
		word := columnWord(c.text)
		if slices.Contains(columnNames[:], word) || word == "" {
			continue
		}
		if near := finding.Nearest(word, missing); near != "" && misspelt[near] == 0 {
			misspelt[near] = i + 1
			r.findings.Errorf("unknown-column", r.at(c.from, c.to), fmt.Sprintf("did you mean %q?", near),
				"The column %q is none that is known, and %s is missing. Columns that only describe a piece are taken, if they are not called almost as one of these.", c.text, near)
		}
	}
	missing = slices.DeleteFunc(missing, func(name string) bool {
		return name == columnNames[turnColumn] || name == columnNames[acrossColumn] && r.Lengths || misspelt[name] > 0
	})
	if len(missing) > 0 {
		word := "column "
		if len(missing) > 1 {
			word = "columns "
		}
		r.findings.Errorf("column-missing", r.at(head.from, head.to), cmp.Or(r.meant(missing), "name the columns in the first line: "+r.wanted()),
			"The first line names no %s%s.", word, strings.Join(missing, ", "))
	}
	return len(r.findings) == 0
}

// oftenCalled is what columns are called elsewhere.
var oftenCalled = map[string]int{ // lookup only
	"name": pieceColumn, "part": pieceColumn, "label": pieceColumn, "description": pieceColumn,
	"qty": piecesColumn, "quantity": piecesColumn, "count": piecesColumn, "pcs": piecesColumn,
	"length": alongColumn, "long": alongColumn, "width": acrossColumn, "wide": acrossColumn,
}

// meant tells which columns could be those that are missing, where all of these have one.
func (r *reader) meant(missing []string) string {
	var renamed []string
	for _, head := range r.heads {
		known, often := oftenCalled[columnWord(head)]
		if i := slices.Index(missing, columnNames[known]); often && i >= 0 {
			renamed = append(renamed, missing[i]+" for "+head)
			missing = slices.Delete(slices.Clone(missing), i, i+1)
		}
	}
	if len(missing) > 0 {
		return ""
	}
	return "write " + strings.Join(renamed, ", ") + ", if that is what they hold"
}

// wanted are the columns that a list needs.
func (r *reader) wanted() string {
	if r.Lengths {
		return strings.Join(columnNames[:acrossColumn], ", ")
	}
	return strings.Join(columnNames[:turnColumn], ", ")
}

// columnWord is the name of a column as it is compared: "Along grain" is along_grain.
func columnWord(text string) string {
	return strings.NewReplacer(" ", "_", "-", "_").Replace(strings.ToLower(text))
}

// row reads one line; it is false where no more are to be read.
func (r *reader) row(row row) bool {
	for _, c := range row.cells {
		if c.open {
			r.findings.Errorf("list-unreadable", r.at(c.from, c.to), "close the quotes, or leave them out; inches are written in, or doubled inside quotes",
				"The quotation mark here has no second one on its line.")
			return true
		}
	}
	if over := len(row.cells) - len(r.heads); over > 0 {
		first := row.cells[len(r.heads)]
		r.findings.Errorf("list-unreadable", r.at(first.from, row.to), "put what holds a separator in quotes, and write decimals with a point",
			"The line has %d cells, and the list %d columns: %d too many.", len(row.cells), len(r.heads), over)
		return true
	}
	line := Line{At: r.at(row.from, row.to), More: r.more(row)}
	before := len(r.findings)
	line.Piece = r.cell(row, pieceColumn).text
	line.Pieces = r.count(row)
	line.Along, line.AlongAt = r.size(row, alongColumn)
	if !r.Lengths {
		line.Across, line.AcrossAt = r.size(row, acrossColumn)
		line.Turn, line.TurnAt = r.turn(row)
	}
	if len(r.findings) > before || line.Pieces == 0 {
		return true
	}
	if r.pieces += line.Pieces; r.pieces > MaxPieces {
		r.findings.Errorf("too-many", line.At, "lay the list out in parts", "Up to here the list has %d pieces; the most is %d.", r.pieces, MaxPieces)
		return false
	}
	r.lines = append(r.lines, line)
	return true
}

// cell is the cell of a column, an empty one at the end of the line where the line is too short or
// the list has no such column.
func (r *reader) cell(row row, column int) cell {
	if i := r.place[column]; i >= 0 && i < len(row.cells) {
		return row.cells[i]
	}
	return cell{from: row.to, to: row.to}
}

func (r *reader) count(row row) int {
	c := r.cell(row, piecesColumn)
	n, err := strconv.Atoi(c.text)
	switch at := r.at(c.from, c.to); {
	case c.text == "":
		r.findings.Errorf("not-a-count", at, "write how many there are, as 4", "The line does not say how many pieces there are.")
	case err == nil && n < 0:
		r.findings.Errorf("not-a-count", at, "", "There cannot be %d pieces: a count is a whole number from 0 to %d.", n, MaxPieces)
	case err != nil || n > MaxPieces:
		r.findings.Errorf("not-a-count", at, "", "%q is no count of pieces: that is a whole number from 0 to %d.", c.text, MaxPieces)
	}
	return n
}

func (r *reader) size(row row, column int) (length.Length, source.Range) {
	c, name := r.cell(row, column), columnNames[column]
	at := r.at(c.from, c.to)
	if c.text == "" {
		r.findings.Errorf("unreadable-length", at, "write the size, as 23 1/2 or 600mm", "The line does not say how large the piece is in %s.", name)
		return 0, at
	}
	l, err := length.Parse(r.pointed(c.text), r.Unit)
	switch {
	case err != nil:
		r.findings.Errorf("unreadable-length", at, err.Mend, "%q is no length: %s", c.text, err.Sentence())
	case l <= 0:
		r.findings.Errorf("unreadable-length", at, "", "%q is no size: a piece is larger than 0 in %s.", c.text, name)
	}
	return l, at
}

// decimalComma is a figure as lists are saved where the decimal point is a comma. Three digits
// behind it could as well be thousands.
var decimalComma = regexp.MustCompile(`^\d+,(\d{1,2}|\d{4,})\D*$`)

// pointed is a length with a point for its decimal comma, in a list that commas do not part.
func (r *reader) pointed(text string) string {
	if r.comma != ',' && decimalComma.MatchString(text) {
		return strings.Replace(text, ",", ".", 1)
	}
	return text
}

// turnWords are what may stand under may_turn.
var turnWords = []string{"yes", "no", "y", "n", "true", "false", "1", "0"}

func (r *reader) turn(row row) (Turn, source.Range) {
	c := r.cell(row, turnColumn)
	at := r.at(c.from, c.to)
	if c.text == "" {
		return Unsaid, at
	}
	i := slices.Index(turnWords, strings.ToLower(c.text))
	if i < 0 {
		r.findings.Errorf("unknown-word", at, "write yes or no", "%q does not say whether the piece may turn.", c.text)
		return Unsaid, at
	}
	return Turn(1 + i%2), at
}

// more joins what further columns say of a piece: "edge oak, room 2".
func (r *reader) more(row row) string {
	var out []string
	for i, c := range row.cells {
		if c.text != "" && !slices.Contains(r.place[:], i) {
			out = append(out, strings.TrimSpace(r.heads[i]+" "+c.text))
		}
	}
	return strings.Join(out, ", ")
}
