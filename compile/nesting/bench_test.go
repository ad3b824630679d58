package nesting

import (
	"encoding/csv"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"sort"
	"strconv"
	"strings"
	"testing"
	"time"
)

var (
	dir     = flag.String("instances", "../../../shared/bench", "")
	work    = flag.Int("effort", 2_000_000, "")
	match   = flag.String("only", "class", "")
	rotated = flag.Bool("rotated", false, "")
	seed    = flag.Uint64("seed", 1, "")
	verbose = flag.Bool("each", false, "")
)

func TestBench(t *testing.T) {
	type bound struct{ lb, ub int }
	variant := "2BP|O|G"
	if *rotated {
		variant = "2BP|R|G"
	}
	bounds := map[string]bound{}
	for _, r := range rows(t, filepath.Join(*dir, "bounds.csv")) {
		if r[3] == variant {
			lb, _ := strconv.Atoi(r[1])
			ub, _ := strconv.Atoi(r[2])
			bounds[r[0]] = bound{lb, ub}
		}
	}
	files, _ := filepath.Glob(filepath.Join(*dir, *match+"*.csv"))
	total, tlb, tub := 0, 0, 0
	var all time.Duration
	for _, f := range files {
		jobs := map[string]*job{}
		var names []string
		for _, r := range rows(t, f) {
			n := func(i int) int32 { v, _ := strconv.Atoi(r[i]); return int32(v) }
			j := jobs[r[0]]
			if j == nil {
				j = &job{W: n(1), H: n(2), Rotate: *rotated}
				jobs[r[0]] = j
				names = append(names, r[0])
			}
			for range n(5) {
				j.Pieces = append(j.Pieces, rect{n(3), n(4)})
			}
		}
		sort.Strings(names)
		sum, lb, ub := 0, 0, 0
		start := time.Now()
		var longest time.Duration
		for _, name := range names {
			b := bounds[name]
			t1 := time.Now()
			got, trees, w := solve(jobs[name], *work, b.lb, *seed, Default)
			took := time.Since(t1)
			longest = max(longest, took)
			check(t, jobs[name], trees)
			if got < b.lb {
				t.Errorf("%s: %d under the bound %d", name, got, b.lb)
			}
			if *verbose && got > b.ub {
				fmt.Println(name, len(jobs[name].Pieces), got, b.lb, b.ub, w, took)
			}
			sum, lb, ub = sum+got, lb+b.lb, ub+b.ub
		}
		took := time.Since(start)
		all += took
		fmt.Printf("%-14s %4d lb %4d best %4d  %+.2f %%  %.2fs longest %.2f\n", strings.TrimSuffix(filepath.Base(f), ".csv"), sum, lb, ub, 100*float64(sum-ub)/float64(ub), took.Seconds(), longest.Seconds())
		total, tlb, tub = total+sum, tlb+lb, tub+ub
	}
	fmt.Printf("all %d lb %d best %d  %+.2f %%  %.1fs\n", total, tlb, tub, 100*float64(total-tub)/float64(tub), all.Seconds())
}

func check(t *testing.T, j *job, trees []*tree) {
	seen := make([]int, len(j.Pieces))
	for _, tr := range trees {
		tr.walk(t, j, 0, seen)
	}
	for i, n := range seen {
		if n != 1 {
			t.Fatalf("piece %d is %d times there", i, n)
		}
	}
}

func (tr *tree) walk(t *testing.T, j *job, i int32, seen []int) {
	n := tr.nodes[i]
	if n.piece >= 0 {
		seen[n.piece]++
		p := j.Pieces[n.piece]
		if n.turned {
			p.W, p.H = p.H, p.W
		}
		if p.W != n.w || p.H != n.h {
			t.Fatal("size")
		}
		return
	}
	if n.piece != cut {
		return
	}
	var sum int32
	for c := n.child; c != none; c = tr.nodes[c].next {
		k := tr.nodes[c]
		if k.parent != i {
			t.Fatal("parent")
		}
		if n.alongX {
			sum += k.w
			if k.h != n.h {
				t.Fatal("h")
			}
		} else {
			sum += k.h
			if k.w != n.w {
				t.Fatal("w")
			}
		}
		tr.walk(t, j, c, seen)
	}
	if n.alongX && sum != n.w || !n.alongX && sum != n.h {
		t.Fatalf("sum %d of %d x %d", sum, n.w, n.h)
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
