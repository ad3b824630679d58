package sticks

import (
	"errors"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Of few pieces the purchase is the best there is, and proved to be.
func TestSmallJobsAreBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := &Job{
			Kerf: rapid.SampledFrom([]int64{0, 0, 1, 3, 7}).Draw(t, "kerf"),
			Ends: rapid.SampledFrom([]int64{0, 0, 2, 5}).Draw(t, "ends"),
		}
		for range rapid.IntRange(1, 3).Draw(t, "stocks") {
			j.Stocks = append(j.Stocks, Stock{
				Length: rapid.Int64Range(30, 120).Draw(t, "length"),
				Price:  rapid.Int64Range(0, 12).Draw(t, "price"),
				Limit:  rapid.SampledFrom([]int{0, 0, 1, 2}).Draw(t, "limit"),
			})
		}
		var pieces []int64
		for range rapid.IntRange(1, 6).Draw(t, "kinds") {
			p := Piece{rapid.Int64Range(5, 70).Draw(t, "piece"), rapid.IntRange(1, 3).Draw(t, "count")}
			if len(pieces)+p.Count > 7 {
				break
			}
			j.Pieces = append(j.Pieces, p)
			for range p.Count {
				pieces = append(pieces, p.Length)
			}
		}
		best, ok := exhaust(j, pieces)
		r, err := Solve(j, Default)
		if !ok {
			if !errors.Is(err, ErrLong) && !errors.Is(err, ErrShort) {
				t.Fatalf("%v, but nothing does", err)
			}
			return
		}
		if err == nil {
			err = check(j, r)
		}
		if err != nil {
			t.Fatal(err)
		}
		if got := (purse{r.Price, int64(r.Sticks), r.Offcut}); got != best {
			t.Fatalf("%+v, but %+v is the best", got, best)
		}
		if !r.Least() {
			t.Fatalf("not proved: %+v", r)
		}
	})
}

// Whatever is asked, sticks can be cut so, the bound holds, and the same comes out on one processor.
func TestAnyJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := &Job{Kerf: rapid.Int64Range(0, 4_000_000).Draw(t, "kerf"), Ends: rapid.SampledFrom([]int64{0, 10_000_000}).Draw(t, "ends")}
		for k := range rapid.IntRange(1, 4).Draw(t, "stocks") {
			s := Stock{Length: rapid.Int64Range(1_000_000_000, 5_000_000_000).Draw(t, "length"), Price: rapid.Int64Range(0, 3000).Draw(t, "price")}
			if k > 0 {
				s.Limit = rapid.IntRange(0, 4).Draw(t, "limit")
			}
			j.Stocks = append(j.Stocks, s)
		}
		for range rapid.IntRange(1, 25).Draw(t, "pieces") {
			j.Pieces = append(j.Pieces, Piece{rapid.Int64Range(20_000_000, 950_000_000).Draw(t, "piece"), rapid.IntRange(1, 9).Draw(t, "count")})
		}
		r, err := Solve(j, 1_000_000)
		if err == nil {
			err = check(j, r)
		}
		if err != nil {
			t.Fatal(err)
		}
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
		again, _ := Solve(j, 1_000_000)
		if diff := cmp.Diff(r, again); diff != "" {
			t.Fatal(diff)
		}
	})
}

// Of two stocks at one price the longer is bought where it leaves the longer offcut, be it by less than
// the unit that all pieces are a multiple of.
func TestLongerOffcutAtOnePrice(t *testing.T) {
	j := &Job{Pieces: []Piece{{11, 2}}, Stocks: []Stock{{30, 4, 0}, {31, 4, 0}}}
	r, err := Solve(j, Default)
	if err != nil {
		t.Fatal(err)
	}
	if r.Offcut != 9 {
		t.Errorf("an offcut of %d, not 9", r.Offcut)
	}
}

func TestErrors(t *testing.T) {
	one := []Stock{{Length: 10, Price: 1}}
	cases := []struct {
		name string
		job  Job
		want error
	}{
		{"nothing on sale", Job{Pieces: []Piece{{1, 1}}}, ErrLong},
		{"nothing asked for", Job{}, nil},
		{"longer than any", Job{Pieces: []Piece{{11, 1}}, Stocks: one}, ErrLong},
		{"longer than what the ends leave", Job{Pieces: []Piece{{10, 1}}, Stocks: one, Ends: 1}, ErrLong},
		{"just", Job{Pieces: []Piece{{8, 1}}, Stocks: one, Ends: 1, Kerf: 5}, nil},
		{"no length", Job{Pieces: []Piece{{0, 1}}, Stocks: one}, ErrWrong},
		{"no count", Job{Pieces: []Piece{{1, 0}}, Stocks: one}, ErrWrong},
		{"a kerf under zero", Job{Pieces: []Piece{{1, 1}}, Stocks: one, Kerf: -1}, ErrWrong},
		{"a price under zero", Job{Pieces: []Piece{{1, 1}}, Stocks: []Stock{{10, -1, 0}}}, ErrWrong},
		{"too few in stock", Job{Pieces: []Piece{{9, 3}}, Stocks: []Stock{{10, 1, 2}}}, ErrShort},
		{"very many", Job{Pieces: []Piece{{1, 1_000_000_000}}, Stocks: one}, ErrLarge},
		{"many in all", Job{Pieces: []Piece{{1, 99_999}, {2, 99_999}}, Stocks: one}, ErrLarge},
		{"very long", Job{Pieces: []Piece{{1, 1}}, Stocks: []Stock{{1 << 60, 1, 0}}}, ErrLarge},
		{"very dear", Job{Pieces: []Piece{{1, 100}}, Stocks: []Stock{{10, 1 << 60, 0}}}, ErrLarge},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r, err := Solve(&c.job, Default)
			if !errors.Is(err, c.want) {
				t.Fatalf("%v, want %v", err, c.want)
			}
			if err != nil {
				return
			}
			if err := check(&c.job, r); err != nil {
				t.Error(err)
			}
		})
	}
}

// What is asked for out of spite costs no more than it may.
func TestSteps(t *testing.T) {
	long := []Stock{{6_000_000_000, 1234, 0}, {5_000_000_001, 1033, 0}, {4_000_000_003, 829, 7}}
	var all, many, wide []Piece
	for i := range int64(MostKinds) {
		all = append(all, Piece{3_000_000_000 + 100_003*i, 1}) // one to a stick
	}
	for i := range int64(2000) {
		many = append(many, Piece{1_000_000_000 + 7919*i*i%3_000_000_000, 40})
		wide = append(wide, Piece{1 + i, 50})
	}
	jobs := map[string]Job{
		"one nanometre":      {Pieces: []Piece{{1, MostPieces}}, Stocks: long, Kerf: 3},
		"one and a long one": {Pieces: []Piece{{1, MostPieces - 9}, {3_999_999_999, 9}}, Stocks: long},
		"many kinds":         {Pieces: many, Stocks: long, Kerf: 3_000_000},
		"all kinds":          {Pieces: all, Stocks: long},
		"short kinds":        {Pieces: wide, Stocks: long},
		"half of a kind":     {Pieces: many[:400], Stocks: long, Kerf: 1},
	}
	for name, j := range jobs {
		t.Run(name, func(t *testing.T) {
			const effort = 10_000_000
			r, err := Solve(&j, effort)
			if err == nil {
				err = check(&j, r)
			}
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d sticks, at least %d of %d, %d steps", r.Sticks, r.LeastPrice, r.Price, r.Steps)
			if r.Steps > 10*effort {
				t.Errorf("%d steps", r.Steps)
			}
		})
	}
}
