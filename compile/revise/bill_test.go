package revise

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/model"
)

// TestBill pairs lines by what is bought, and tells those that differ.
func TestBill(t *testing.T) {
	ply := model.BillLine{Section: "sheets", Item: "sheet.ply", Text: "ply 18 mm", Use: "cabinet a", Quantity: 2, Unit: "sheet", Needed: "9 pieces; 2 sheets at least", WeightKg: 30, Price: 80, Priced: true}
	stick := func(long string, n float64, price float64) model.BillLine {
		return model.BillLine{Section: "sticks", Item: "stick.cls", Text: "cls, " + long, Use: "knee wall bar", Quantity: n, Unit: "stick", Needed: "4 pieces", Price: price, Priced: true}
	}
	slab := func(use, size string, area float64) model.BillLine {
		return model.BillLine{Section: "slabs", Item: "slab.oak", Text: "oak 40 mm", Use: use, Quantity: area, Unit: "m2", Needed: size}
	}
	with := func(l model.BillLine, edit func(*model.BillLine)) model.BillLine { edit(&l); return l }
	for name, c := range map[string]struct {
		old, new []model.BillLine
		want     []string
	}{
		"the same":        {[]model.BillLine{ply}, []model.BillLine{ply}, nil},
		"for another use": {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Use = "cabinet b" })}, nil},
		"in other words":  {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Needed = "9 parts; at least 2 sheets" })}, []string{}},
		"one more":        {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Quantity = 3 })}, []string{"ply 18 mm 2 sheet = 160.00 -> ply 18 mm 3 sheet = 240.00"}},
		"one piece more":  {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Needed = "10 pieces; 2 sheets at least" })}, []string{"ply 18 mm 2 sheet = 160.00 -> ply 18 mm 2 sheet = 160.00"}},
		"lighter, in pounds": {
			[]model.BillLine{with(ply, func(l *model.BillLine) { l.Needed += "; 66.1 lb" })},
			[]model.BillLine{with(ply, func(l *model.BillLine) { l.Needed += "; 65.9 lb" })}, nil,
		},
		"dearer":            {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Price = 85 })}, []string{"ply 18 mm 2 sheet = 160.00 -> ply 18 mm 2 sheet = 170.00"}},
		"no price any more": {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Price, l.Priced = 0, false })}, []string{"ply 18 mm 2 sheet = 160.00 -> ply 18 mm 2 sheet unpriced"}},
		"came and went":     {[]model.BillLine{ply}, []model.BillLine{stick("2400", 1, 4)}, []string{" -> cls, 2400 1 stick = 4.00", "ply 18 mm 2 sheet = 160.00 -> "}},
		"lengths are told apart": {
			[]model.BillLine{stick("2400", 2, 4), stick("3000", 3, 5)}, []model.BillLine{stick("3000", 4, 5), stick("2400", 2, 4)},
			[]string{"cls, 3000 3 stick = 15.00 -> cls, 3000 4 stick = 20.00"},
		},
		"one length for another": {
			[]model.BillLine{stick("2400", 2, 4)}, []model.BillLine{stick("3000", 2, 5)},
			[]string{" -> cls, 3000 2 stick = 10.00", "cls, 2400 2 stick = 8.00 -> "},
		},
		"another label": {
			[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Text = "spruce 18 mm" })},
			[]string{" -> spruce 18 mm 2 sheet = 160.00", "ply 18 mm 2 sheet = 160.00 -> "},
		},
		"another name of the block": {[]model.BillLine{ply}, []model.BillLine{with(ply, func(l *model.BillLine) { l.Item = "sheet.birch" })}, nil},
		"two blocks of one label, and one of them dearer": {
			[]model.BillLine{ply, with(ply, func(l *model.BillLine) { l.Item, l.Quantity = "sheet.rest", 5 })},
			[]model.BillLine{with(ply, func(l *model.BillLine) { l.Item, l.Quantity, l.Price = "sheet.rest", 5, 90 }), ply},
			[]string{"ply 18 mm 5 sheet = 400.00 -> ply 18 mm 5 sheet = 450.00"},
		},
		"slabs are told apart by their use": {
			[]model.BillLine{slab("counter a", "2000", 1.2), slab("counter b", "1000", 0.6)}, []model.BillLine{slab("counter b", "1100", 0.66)},
			[]string{"oak 40 mm 0.6 m2 unpriced -> oak 40 mm 0.66 m2 unpriced", "oak 40 mm 1.2 m2 unpriced -> "},
		},
		"a slab of another name": {[]model.BillLine{slab("counter a", "2000", 1.2)}, []model.BillLine{slab("counter c", "2000", 1.2)}, nil},
		"a slab for another": {
			[]model.BillLine{slab("counter a", "2000", 1.2)}, []model.BillLine{slab("counter c", "1000", 0.6)},
			[]string{" -> oak 40 mm 0.6 m2 unpriced", "oak 40 mm 1.2 m2 unpriced -> "},
		},
	} {
		var have []string
		for _, b := range billed(c.old, c.new) {
			have = append(have, lineText(b.Old)+" -> "+lineText(b.New))
		}
		if diff := cmp.Diff(strings.Join(c.want, "\n"), strings.Join(have, "\n")); diff != "" {
			t.Errorf("%s: %s", name, diff)
		}
	}
}

func lineText(l *model.BillLine) string {
	switch {
	case l == nil:
		return ""
	case !l.Priced:
		return fmt.Sprintf("%s %g %s unpriced", l.Text, l.Quantity, l.Unit)
	}
	return fmt.Sprintf("%s %g %s = %.2f", l.Text, l.Quantity, l.Unit, l.Cost())
}

// TestAgain buys anew for what is to be made again, and for nothing else: all parts of a
// build take what its bill says, none take nothing, and what comes out of an offcut is
// not counted.
func TestAgain(t *testing.T) {
	for _, name := range []string{"boatshed", "servery"} {
		m := mustBuild(t, example(t, name))
		r := &model.Revision{Old: m, New: m}
		if lines := again(r); len(lines) > 0 {
			t.Errorf("%s: nothing is to be made again, and takes %v", name, lines)
		}
		for i := range m.Parts {
			r.Fates = append(r.Fates, model.Fate{Kind: model.FateKind(int(model.MakeAgain) + i%2), Old: -1, New: i, Offcut: -1})
		}
		var want []model.BillLine
		for _, l := range m.Bill {
			switch l.Section {
			case "sheets", "sticks", "steel", "slabs":
				want = append(want, l)
			}
		}
		if diff := cmp.Diff(want, again(r)); diff != "" {
			t.Errorf("%s: all of it anew (-bill +again): %s", name, diff)
		}
		for i := range r.Fates {
			switch {
			case i%3 == 0:
				r.Fates[i].Offcut = 0
			case i%3 == 1:
				r.Fates[i].Kind = model.Patch
			}
		}
		pieces := map[string]int{} // lookup only
		for i := 2; i < len(m.Parts); i += 3 {
			pieces[m.Parts[i].Stock]++
		}
		for _, l := range again(r) {
			if l.Section != "sheets" {
				continue
			}
			if counted := fmt.Sprintf("%d piece", pieces[l.Item]); !strings.HasPrefix(l.Needed, counted) {
				t.Errorf("%s: %s needs %q, want %ss", name, l.Item, l.Needed, counted)
			}
		}
	}
}
