package lang

import "testing"

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
