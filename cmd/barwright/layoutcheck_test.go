package main

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// lying is a piece as cutlist.csv has it, in hundredths of a millimetre.
type lying struct {
	piece, sheet   string
	own            bool
	length, width  int // of the sheet
	along, across  int
	x, y, toX, toY int
	turned         bool
}

// asked is a random list and how it is to be cut, in hundredths of a millimetre.
type asked struct {
	sizes       [][2]int
	left        map[[2]int]int // offcuts, by size
	pieces      map[string][2]int
	count       map[string]int
	turn        map[string]string
	kerf, trim  int
	free, grain bool
}

// TestListsAreCutAsAsked lays out random lists by the command, and checks the file of positions by
// rules of cutting alone: each piece once, as large as asked for, inside its sheet, turned only
// where it may be, a kerf from the next, and parted by cuts from edge to edge.
func TestListsAreCutAsAsked(t *testing.T) {
	dir := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		a := &asked{pieces: map[string][2]int{}, count: map[string]int{}, turn: map[string]string{}, left: map[[2]int]int{}}
		args, list := a.draw(t)
		out := filepath.Join(dir, "out")
		var told, errs bytes.Buffer
		std := streams{in: strings.NewReader(list), out: &told, err: &errs}
		if status := run(append(args, "-o", out), std); status != exitClean || errs.Len() > 0 {
			t.Fatalf("%q: status %d\n%s\n%s", args, status, list, errs.String())
		}
		if err := a.check(filepath.Join(out, "cutlist.csv")); err != nil {
			t.Fatalf("%q: %v\n%s\n%s", args, err, list, told.String())
		}
	})
}

// plainMM writes hundredths of a millimetre.
func plainMM(n int) string { return strconv.FormatFloat(float64(n)/100, 'f', -1, 64) }

func (a *asked) draw(t *rapid.T) (args []string, list string) {
	to := func(lo, hi int, label string) int { return rapid.IntRange(lo, hi).Draw(t, label) }
	a.kerf, a.trim = to(0, 800, "kerf"), to(0, 1500, "trim")
	a.free, a.grain = rapid.Bool().Draw(t, "free"), rapid.Bool().Draw(t, "grain")
	args = []string{"layout", "-", "--unit", "mm", "--kerf", plainMM(a.kerf), "--trim", plainMM(a.trim)}
	for range to(1, 3, "sizes") {
		size := [2]int{to(30_000, 250_000, "length"), to(30_000, 130_000, "width")}
		if !slices.Contains(a.sizes, size) {
			a.sizes = append(a.sizes, size)
			args = append(args, "--sheet", plainMM(size[0])+"x"+plainMM(size[1]))
		}
	}
	for range to(0, 2, "offcuts") {
		size, n := [2]int{to(20_000, 100_000, "length"), to(20_000, 60_000, "width")}, to(1, 2, "count")
		a.left[size] += n
		args = append(args, "--offcut", fmt.Sprintf("%sx%s*%d", plainMM(size[0]), plainMM(size[1]), n))
	}
	switch {
	case a.free:
		args = append(args, "--free")
	case rapid.Bool().Draw(t, "staged"):
		args = append(args, "--stages", strconv.Itoa(to(2, 4, "stages")))
	}
	if a.grain {
		args = append(args, "--grain")
	}
	most := a.sizes[0]
	comma := rapid.SampledFrom([]string{",", ";", "\t"}).Draw(t, "comma")
	rows := []string{"may_turn", "pieces", "across_grain", "piece", "along_grain"}
	list = strings.Join(rows, comma) + "\n"
	for i := range to(1, 8, "lines") {
		name := fmt.Sprintf("piece %d", i)
		size := [2]int{to(1000, most[0]-2*a.trim, "along"), to(1000, most[1]-2*a.trim, "across")}
		a.pieces[name], a.count[name] = size, to(1, 6, "count")
		a.turn[name] = rapid.SampledFrom([]string{"yes", "no", ""}).Draw(t, "turn")
		list += strings.Join([]string{a.turn[name], strconv.Itoa(a.count[name]), plainMM(size[1]), name, plainMM(size[0])}, comma) + "\r\n"
	}
	return args, list
}

// positions reads the positions.
func positions(path string) (sheets [][]lying, err error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	records, err := csv.NewReader(f).ReadAll()
	if err != nil {
		return nil, err
	}
	at := map[string]int{}
	for i, name := range records[0] {
		at[name] = i
	}
	for _, r := range records[1:] {
		number := func(name string) int {
			x, wrong := strconv.ParseFloat(strings.TrimSuffix(r[at[name]], " mm"), 64)
			if wrong != nil {
				err = wrong
			}
			return int(x*100 + 0.5)
		}
		p := lying{
			piece: r[at["piece"]], sheet: r[at["sheet"]], own: r[at["own"]] == "yes", turned: r[at["turned"]] == "yes",
			length: number("sheet_length"), width: number("sheet_width"),
			along: number("along_mm"), across: number("across_mm"), x: number("x_mm"), y: number("y_mm"),
		}
		p.toX, p.toY = p.x+p.along, p.y+p.across
		if p.turned {
			p.toX, p.toY = p.x+p.across, p.y+p.along
		}
		if n := len(sheets); n > 0 && sheets[n-1][0].sheet == p.sheet {
			sheets[n-1] = append(sheets[n-1], p)
		} else {
			sheets = append(sheets, []lying{p})
		}
	}
	return sheets, err
}

func (a *asked) check(path string) error {
	sheets, err := positions(path)
	if err != nil {
		return err
	}
	for _, s := range sheets {
		size := [2]int{s[0].length, s[0].width}
		edge := a.trim
		if s[0].own {
			if a.left[size]--; a.left[size] < 0 {
				return fmt.Errorf("there is no offcut of %v more", size)
			}
			if !a.free {
				edge = 0
			}
		} else if !slices.Contains(a.sizes, size) {
			return fmt.Errorf("%v is not on sale", size)
		}
		for i, p := range s {
			a.count[p.piece]--
			switch {
			case [2]int{p.along, p.across} != a.pieces[p.piece]:
				return fmt.Errorf("%s is not as large as asked for: %+v", p.piece, p)
			case p.x < edge || p.y < edge || p.toX > size[0]-edge || p.toY > size[1]-edge:
				return fmt.Errorf("%s lies outside: %+v", p.piece, p)
			case p.turned && (a.turn[p.piece] == "no" || a.grain && a.turn[p.piece] == ""):
				return fmt.Errorf("%s may not turn", p.piece)
			}
			for _, o := range s[:i] {
				if p.x < o.toX+a.kerf && o.x < p.toX+a.kerf && p.y < o.toY+a.kerf && o.y < p.toY+a.kerf {
					return fmt.Errorf("%+v and %+v are less than a kerf apart", p, o)
				}
			}
		}
		if !a.free && !parted(s, a.kerf) {
			return fmt.Errorf("sheet %s cannot be cut from edge to edge", s[0].sheet)
		}
	}
	for name, n := range a.count {
		if n != 0 {
			return fmt.Errorf("%d of %s are missing", n, name)
		}
	}
	return nil
}

// parted reports whether straight cuts, each through all of what it cuts, set every piece free.
func parted(s []lying, kerf int) bool {
	if len(s) < 2 {
		return true
	}
	for _, of := range []func(lying) (int, int){
		func(p lying) (int, int) { return p.x, p.toX }, func(p lying) (int, int) { return p.y, p.toY },
	} {
		row := slices.Clone(s)
		slices.SortFunc(row, func(p, q lying) int {
			a, _ := of(p)
			b, _ := of(q)
			return a - b
		})
		_, reach := of(row[0])
		for i := 1; i < len(row); i++ {
			from, to := of(row[i])
			if from >= reach+kerf {
				return parted(row[:i], kerf) && parted(row[i:], kerf)
			}
			reach = max(reach, to)
		}
	}
	return false
}
