package page

import (
	"bytes"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"barwright/compile/model"
)

// large is the page of a build as if it were a large one, with a file for each drawing of many parts.
func large(t *testing.T, m *model.Model, how shown) string {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b, m, how, filesOf(m)); err != nil {
		t.Fatal(err)
	}
	balanced(t, strings.Replace(b.String(), foldScript, "", 1))
	return b.String()
}

func filesOf(m *model.Model) map[string]string {
	files := map[string]string{}
	for _, views := range [][]model.View{m.Views, m.Sheets} {
		for i := range views {
			files[views[i].Name] = "drawings/" + views[i].Name + ".svg"
		}
	}
	return files
}

var rowOf = regexp.MustCompile(`<tr role="row" id="row-\d+" data-part="([^"]*)"`)

// The page of a large build has each row that the other has, once, and leads to each drawing.
func TestLarge(t *testing.T) {
	for _, name := range examples {
		m := example(t, name)
		page, small := large(t, m, beside), written(t, m)
		if got, want := len(rowOf.FindAllString(page, -1)), len(m.Parts); got != want {
			t.Errorf("%s: %d rows of %d parts", name, got, want)
		}
		for _, row := range []string{"<tr ", `<li id="work-`, "<summary>"} {
			got, want := strings.Count(page, row), strings.Count(small, row)
			if row == "<tr " { // each table has a head
				got, want = got-strings.Count(page, "<thead"), want-strings.Count(small, "<thead")
			}
			if (got == want) != (row != "<summary>") {
				t.Errorf("%s: %d of %s; not folded there are %d", name, got, row, want)
			}
		}
		for view, file := range filesOf(m) {
			if !strings.Contains(page, `href="`+file+`"`) || strings.Contains(page, `id="`+view+`"`) {
				t.Errorf("%s: the page does not lead to %s", name, view)
			}
		}
		if got := strings.Count(page, "<svg"); got != len(m.Sticks) {
			t.Errorf("%s: %d pictures, not the %d of sticks", name, got, len(m.Sticks))
		}
	}
}

// A view that no file shows is drawn in the page.
func TestLargeWithoutFiles(t *testing.T) {
	m := bar()
	var b bytes.Buffer
	if err := write(&b, m, beside, nil); err != nil {
		t.Fatal(err)
	}
	if got, want := strings.Count(b.String(), "<svg"), strings.Count(written(t, m), "<svg"); got != want || want == 0 {
		t.Errorf("%d pictures, not %d", got, want)
	}
}

// A build of 3000 parts is shown whole, one of more is folded, and both pages say so.
func TestLargeFromWhere(t *testing.T) {
	for parts, want := range map[int]bool{3000: false, 3001: true} {
		m := &model.Model{}
		for i := range parts {
			m.Parts = append(m.Parts, model.Part{ID: fmt.Sprint("part-", i)})
		}
		for what, page := range map[string]string{"beside": written(t, m), "made": live(t, Live{Model: m})} {
			if strings.Contains(page, "<details") != want || strings.Contains(page, "This is a large build") != want {
				t.Errorf("%d parts, drawings %s: folded is not %v", parts, what, want)
			}
		}
	}
}

var asks = regexp.MustCompile(`data-asks="([^"]*)"`)

// What the page of a large build asks for is there: the same rows, and a place for each picture.
func TestLargeAsks(t *testing.T) {
	m := example(t, "servery")
	for len(m.Parts) <= 3000 {
		m.Parts = append(m.Parts, model.Part{ID: fmt.Sprint("more-", len(m.Parts))})
	}
	var b bytes.Buffer
	lists, err := WriteLive(&b, Live{Model: m})
	if err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "<svg"); n > 0 {
		t.Errorf("%d pictures are sent unasked", n)
	}
	all := b.String()
	for _, ask := range asks.FindAllStringSubmatch(b.String(), -1) {
		var list bytes.Buffer
		found, err := lists.Write(&list, ask[1])
		if err != nil || found != strings.HasPrefix(ask[1], "fold-") {
			t.Errorf("%s: found is %v, %v", ask[1], found, err)
		}
		all += list.String()
	}
	if got := len(rowOf.FindAllString(all, -1)); got != len(m.Parts) {
		t.Errorf("%d rows of %d parts", got, len(m.Parts))
	}
	for name := range filesOf(m) {
		if !strings.Contains(all, `data-asks="`+name+`"`) {
			t.Errorf("%s is never asked for", name)
		}
	}
	if found, _ := lists.Write(&b, "no-such"); found {
		t.Error("there is a list of nothing")
	}
}
