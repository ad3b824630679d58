package lang

import (
	"slices"
	"testing"
)

// TestWith: a copy says the words, and the source itself nothing new.
func TestWith(t *testing.T) {
	src := read(t, file("bar.hcl", `build "b" { unit = "in" }
room {
  wall "w" {
    length = 100
    stub "s" {
      at         = [10, 10]
      diameter   = 2
      stands_out = 3
      cut        = "notch"
    }
  }
}
`))
	stub := func(s *Source) *Block { return s.Top("room")[0].Inner("wall")[0].Inner("stub")[0] }
	tried := src.With(stub(src), Word{"cut", "slot"}, Word{"open_to", "rear"})
	for name, want := range map[string]string{"cut": "slot", "open_to": "rear"} { // lookup only
		a := stub(tried).Attr(name)
		if a == nil || a.Spec == nil || a.Expr.Eval(nil).Text != want {
			t.Errorf("%s: %+v", name, a)
		}
	}
	if a := stub(src).Attr("cut"); a.Expr.Eval(nil).Text != "notch" || stub(src).Attr("open_to") != nil {
		t.Error("the source itself has changed")
	}
	if stub(tried).Parent == stub(src).Parent || stub(tried).Parent.Parent != tried.Top("room")[0] {
		t.Error("the copy stands in the old tree")
	}
}

// TestInTwo: two blocks with what the one holds, the second under its own name, in a copy.
func TestInTwo(t *testing.T) {
	src := read(t, file("bar.hcl", `build "b" { unit = "in" }
run "r" {
  carcass = carcass.c
  cabinet "a" { width = 10 }
  cabinet "b" {
    width   = 30
    shelves = 2
  }
  cabinet "c" { width = 10 }
}
`))
	run := func(s *Source) *Block { return s.Top("run")[0] }
	tried := src.InTwo(run(src).Inner("cabinet")[1], "b_right", Word{"width", "15in"})
	var names []string
	for _, c := range run(tried).Inner("cabinet") {
		names = append(names, c.Name)
		if c.Parent != run(tried) {
			t.Errorf("%s stands in another tree", c.Name)
		}
	}
	if want := []string{"a", "b", "b_right", "c"}; !slices.Equal(names, want) {
		t.Errorf("%v, want %v", names, want)
	}
	for _, c := range run(tried).Inner("cabinet")[1:3] {
		if c.Attr("width").Expr.Eval(nil).Text != "15in" || c.Attr("shelves") == nil {
			t.Errorf("%s: %+v", c.Name, c)
		}
	}
	if len(run(src).Inner("cabinet")) != 3 || run(src).Inner("cabinet")[1].Attr("width").Expr.Eval(nil).Text == "15in" {
		t.Error("the source itself has changed")
	}
}
