package nestingtest

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/compile/nesting"
)

// Class is a family of published instances: one file.
type Class struct {
	Name      string
	Instances []Instance
}

// Instance is a published job for one size of sheet, with its bound and what is known best.
type Instance struct {
	Name          string
	Sheet         nesting.Size
	Pieces        []nesting.Size
	AtLeast, Best int
}

// Job is the instance with its lengths taken for nanometres, and pieces that turn if so said.
func (in Instance) Job(turn bool) *nesting.Job {
	j := &nesting.Job{Sheets: []nesting.Sheet{{Size: in.Sheet, Price: 1}}, Work: nesting.Quick}
	for _, p := range in.Pieces {
		j.Pieces = append(j.Pieces, nesting.Piece{Size: p, Turns: turn})
	}
	return j
}

// Read reads the classes of a folder whose names begin so, with the bounds of a variant.
func Read(folder, only, variant string) ([]Class, error) {
	bounds, err := rows(filepath.Join(folder, "bounds.csv"))
	if err != nil {
		return nil, err
	}
	known := map[string][]string{} // for lookup only
	for _, r := range bounds {
		if r[3] == variant {
			known[r[0]] = r
		}
	}
	files, err := filepath.Glob(filepath.Join(folder, only+"*.csv"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no instances %s in %s", only, folder)
	}
	var classes []Class
	for _, f := range files {
		c, err := class(f, known)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", f, err)
		}
		classes = append(classes, c)
	}
	return classes, nil
}

func class(file string, known map[string][]string) (Class, error) {
	c := Class{Name: strings.TrimSuffix(filepath.Base(file), ".csv")}
	all, err := rows(file)
	if err != nil {
		return c, err
	}
	for _, r := range all {
		n, err := numbers(r[1:6])
		if err != nil {
			return c, err
		}
		last := len(c.Instances) - 1
		if last < 0 || c.Instances[last].Name != r[0] {
			in := Instance{Name: r[0], Sheet: nesting.Size{X: geom.Length(n[0]), Y: geom.Length(n[1])}}
			if k := known[r[0]]; k != nil {
				b, err := numbers(k[1:3])
				if err != nil {
					return c, err
				}
				in.AtLeast, in.Best = b[0], b[1]
			}
			c.Instances = append(c.Instances, in)
			last++
		}
		in := &c.Instances[last]
		for range n[4] {
			in.Pieces = append(in.Pieces, nesting.Size{X: geom.Length(n[2]), Y: geom.Length(n[3])})
		}
	}
	return c, nil
}

func numbers(fields []string) (out []int, err error) {
	for _, f := range fields {
		n, err := strconv.Atoi(f)
		if err != nil {
			return nil, err
		}
		out = append(out, n)
	}
	return out, nil
}

// rows are those of a CSV file without its head.
func rows(name string) ([][]string, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil || len(all) == 0 {
		return nil, fmt.Errorf("%s: no rows: %w", name, err)
	}
	return all[1:], nil
}
