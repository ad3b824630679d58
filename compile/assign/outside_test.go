package assign

import (
	"bytes"
	"encoding/json"
	"math/rand/v2"
	"os"
	"os/exec"
	"testing"
)

// python is the interpreter that has the scipy library (Debian python3-scipy).
const python = "/usr/bin/python3"

// scipy solves instances with linear_sum_assignment, which takes full tables only: a pair
// that cannot be costs more than all others together.
const scipy = `
import json, sys
import numpy
from scipy.optimize import linear_sum_assignment
answers = []
for rows, cols, edges in json.load(sys.stdin):
    never = 1 + sum(abs(e[2]) for e in edges)
    table = numpy.full((rows, cols), never, dtype=numpy.float64)
    for row, col, cost in edges:
        table[row, col] = min(table[row, col], cost)
    own, given = linear_sum_assignment(table)
    costs = [int(c) for c in table[own, given] if c < never]
    answers.append([len(costs), sum(costs)])
json.dump(answers, sys.stdout)
`

type instance struct {
	rows, cols int
	edges      []Edge
}

func (in instance) MarshalJSON() ([]byte, error) {
	edges := make([][3]int64, len(in.edges))
	for n, e := range in.edges {
		edges[n] = [3]int64{int64(e.Row), int64(e.Col), e.Cost[1]}
	}
	return json.Marshal([]any{in.rows, in.cols, edges})
}

// A library of others makes as many pairs at the same cost.
func TestAgainstScipy(t *testing.T) {
	if err := exec.Command(python, "-c", "import scipy").Run(); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal("outside check required, but", python, "with the scipy library is not installed")
		}
		t.Skip("OUTSIDE CHECK SKIPPED:", python, "with the scipy library is not installed")
	}
	chance := rand.New(rand.NewPCG(7, 7))
	var all []instance
	for _, share := range []float64{1, 0.3, 0.02, 0.01} { // of the pairs that can be
		for _, most := range []int64{1, 10, 1_000_000} {
			for range 8 {
				in := instance{rows: 1 + chance.IntN(200), cols: 1 + chance.IntN(200)}
				for i := range in.rows {
					for j := range in.cols {
						if chance.Float64() < share {
							in.edges = append(in.edges, Edge{i, j, Cost{0, chance.Int64N(most+1) - most/3}})
						}
					}
				}
				all = append(all, in)
			}
		}
	}
	ask, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(python, "-c", scipy)
	var stderr bytes.Buffer
	cmd.Stdin, cmd.Stderr = bytes.NewReader(ask), &stderr
	reply, err := cmd.Output()
	if err != nil {
		t.Fatalf("%v\n%s", err, stderr.Bytes())
	}
	var answers [][2]int64
	if err := json.Unmarshal(reply, &answers); err != nil || len(answers) != len(all) {
		t.Fatalf("%d answers to %d instances, %v", len(answers), len(all), err)
	}
	for n, in := range all {
		pairs, cost := sum(t, in.cols, in.edges, Least(in.rows, in.cols, in.edges))
		if answers[n] != [2]int64{int64(pairs), cost[1]} {
			t.Errorf("%d rows, %d columns, %d edges: %d pairs at %d, scipy %d", in.rows, in.cols, len(in.edges), pairs, cost[1], answers[n])
		}
	}
}
