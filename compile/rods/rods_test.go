package rods

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strconv"
	"testing"
	"time"
)

func TestBench(t *testing.T) {
	best := map[string]int{}
	for _, r := range rows(t, "../../../shared/bench/bounds.csv") {
		if r[3] == "1D" {
			best[r[0]], _ = strconv.Atoi(r[2])
		}
	}
	files, _ := filepath.Glob("../../../shared/bench/stick-*.csv")
	for _, f := range files {
		jobs := map[string]*Job{}
		var names []string
		for _, r := range rows(t, f) {
			n := func(i int) int64 { v, _ := strconv.Atoi(r[i]); return int64(v) }
			j := jobs[r[0]]
			if j == nil {
				j = &Job{Stocks: []Stock{{n(1), 1}}}
				jobs[r[0]] = j
				names = append(names, r[0])
			}
			j.Demands = append(j.Demands, Demand{n(2), int(n(3))})
		}
		sort.Strings(names)
		for _, name := range names {
			start := time.Now()
			r := Solve(jobs[name], 50_000_000)
			took := time.Since(start)
			have := make([]int, len(jobs[name].Demands))
			var price int64
			for _, p := range r.Patterns {
				var sum int64
				for i, n := range p.Counts {
					have[i] += n * p.Times
					sum += int64(n) * jobs[name].Demands[i].Length
				}
				if sum > jobs[name].Stocks[p.Stock].Length {
					t.Fatal("too long")
				}
				price += int64(p.Times)
			}
			for i, n := range have {
				if n != jobs[name].Demands[i].Count {
					t.Fatal("demand", i, n, jobs[name].Demands[i].Count)
				}
			}
			mark := ""
			if int(r.Price) != best[name] || price != r.Price {
				mark = "<<<<"
			}
			fmt.Println(name, len(jobs[name].Demands), "have", r.Price, "bound", r.AtLeast, "best", best[name], r.Work, took, mark)
		}
	}
}

func rows(t *testing.T, name string) [][]string {
	f, err := os.Open(name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return all[1:]
}
