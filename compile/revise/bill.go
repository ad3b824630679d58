package revise

import (
	"strings"

	"barwright/compile/model"
)

// billed lists the lines that differ in what is bought, needed or paid, in the order of
// the new bill; then those that went.
func billed(old, new []model.BillLine) []model.BillChange {
	partner := make([]int, len(new)) // in old; -1 where there is none
	for i := range partner {
		partner[i] = -1
	}
	paired := make([]bool, len(old))
	for _, key := range billKeys {
		byKey := map[string][]int{} // lookup only
		for j := range old {
			if k := key(&old[j]); !paired[j] {
				byKey[k] = append(byKey[k], j)
			}
		}
		for i := range new {
			k := key(&new[i])
			if of := byKey[k]; partner[i] < 0 && len(of) > 0 {
				partner[i], paired[of[0]] = of[0], true
				byKey[k] = of[1:]
			}
		}
	}
	var out []model.BillChange
	for i := range new {
		if j := partner[i]; j < 0 {
			out = append(out, model.BillChange{New: &new[i]})
		} else if lineDiffers(&old[j], &new[i]) {
			out = append(out, model.BillChange{Old: &old[j], New: &new[i]})
		}
	}
	for j := range old {
		if !paired[j] {
			out = append(out, model.BillChange{Old: &old[j]})
		}
	}
	return out
}

// billKeys tell lines of two bills for one, the surest first: what is asked for at the
// counter is the same, whatever its block is called. Slabs of one stock are told apart by
// what they are for, or by their size.
var billKeys = []func(*model.BillLine) string{
	func(l *model.BillLine) string { return lineKey(l, l.Item, l.Text, l.Use) },
	func(l *model.BillLine) string {
		if l.Section == "slabs" {
			return lineKey(l, l.Text, l.Use)
		}
		return lineKey(l, l.Item, l.Text)
	},
	func(l *model.BillLine) string {
		if l.Section == "slabs" {
			return lineKey(l, l.Text, l.Needed)
		}
		return lineKey(l, l.Text)
	},
}

func lineKey(l *model.BillLine, words ...string) string {
	return l.Section + "\n" + strings.Join(words, "\n")
}

func lineDiffers(a, b *model.BillLine) bool {
	return a.Quantity != b.Quantity || a.Unit != b.Unit || a.Price != b.Price || a.Priced != b.Priced ||
		figures(a.WithoutWeight()) != figures(b.WithoutWeight())
}

// figures are the numbers of a text.
func figures(text string) string {
	var out []string
	for _, word := range strings.FieldsFunc(text, func(c rune) bool { return !strings.ContainsRune("0123456789./", c) }) {
		if number := strings.Trim(word, "./"); number != "" {
			out = append(out, number)
		}
	}
	return strings.Join(out, " ")
}
