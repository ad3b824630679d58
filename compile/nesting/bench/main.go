// Command bench lays out the published instances of a folder and prints, for each class, how
// many sheets were needed, the sums of bounds and of the best known, how far above these it is,
// and how long it took.
//
//	go run ./compile/nesting/bench -instances FOLDER -only class -work 2000000 -turn -free
//
// Files are CSV with the columns instance, bin_w, bin_h, item_w, item_h, copies; bounds.csv has
// instance, lower_bound, best_known, variant.
package main

import (
	"flag"
	"fmt"
	"os"
	"time"

	"barwright/compile/nesting"
	"barwright/compile/nesting/nestingtest"
)

func main() {
	var o options
	folder := flag.String("instances", "../shared/bench", "folder of the instances")
	only := flag.String("only", "class", "how the names of files begin")
	flag.IntVar(&o.work, "work", nesting.Quick, "how long to search for each")
	flag.BoolVar(&o.turn, "turn", false, "pieces may be turned")
	flag.BoolVar(&o.free, "free", false, "pieces lie anywhere, for a router")
	flag.BoolVar(&o.each, "each", false, "print those that are above the best known")
	flag.Parse()
	if err := run(*folder, *only, o); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

type options struct {
	work             int
	turn, free, each bool
}

// variant is the name of the kind of instances in the table of bounds.
func (o options) variant() string {
	v := [2]string{"2BP|O|", "2BP|R|"}[index(o.turn)]
	return v + [2]string{"G", "F"}[index(o.free)]
}

func index(b bool) int {
	if b {
		return 1
	}
	return 0
}

type sum struct {
	sheets, bound, published, best int
	took, longest                  time.Duration
}

func run(folder, only string, o options) error {
	classes, err := nestingtest.Read(folder, only, o.variant())
	if err != nil {
		return err
	}
	var all sum
	for _, c := range classes {
		var s sum
		for _, in := range c.Instances {
			if err := s.solve(in, o); err != nil {
				return fmt.Errorf("%s: %w", in.Name, err)
			}
		}
		s.print(c.Name)
		all.sheets, all.bound, all.published, all.best = all.sheets+s.sheets, all.bound+s.bound, all.published+s.published, all.best+s.best
		all.took, all.longest = all.took+s.took, max(all.longest, s.longest)
	}
	all.print("all")
	return nil
}

func (s *sum) solve(in nestingtest.Instance, o options) error {
	j := in.Job(o.turn)
	j.Free, j.Work = o.free, o.work
	start := time.Now()
	l := j.Solve()
	took := time.Since(start)
	if err := nestingtest.Check(j, l); err != nil {
		return err
	}
	if len(l.Used) < in.AtLeast || len(l.Out) > 0 {
		return fmt.Errorf("%d sheets are under the bound %d, or pieces are out", len(l.Used), in.AtLeast)
	}
	if l.Fewest > in.Best {
		return fmt.Errorf("bound %d is above the best known %d", l.Fewest, in.Best)
	}
	if o.each && len(l.Used) > in.Best {
		fmt.Printf("  %s: %d pieces, %d sheets, bounds %d and %d, best known %d, work %d, %v\n", in.Name, len(j.Pieces), len(l.Used), l.Fewest, in.AtLeast, in.Best, l.Work, took)
	}
	s.sheets, s.bound, s.published, s.best = s.sheets+len(l.Used), s.bound+l.Fewest, s.published+in.AtLeast, s.best+in.Best
	s.took, s.longest = s.took+took, max(s.longest, took)
	return nil
}

func (s *sum) print(name string) {
	gap := 100 * float64(s.sheets-s.best) / float64(max(1, s.best))
	fmt.Printf("%-12s %4d sheets, bound %4d, published %4d, best known %4d, %+.2f %%, %.2f s, longest %.2f s\n",
		name, s.sheets, s.bound, s.published, s.best, gap, s.took.Seconds(), s.longest.Seconds())
}
