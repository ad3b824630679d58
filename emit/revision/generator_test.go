package revision

import (
	"bytes"
	"testing"

	"barwright/emit/page"
)

// TestIsPage knows a page by its head, and takes no other for one: neither that of a
// build, nor one that tells of it.
func TestIsPage(t *testing.T) {
	r := every()
	if !IsPage([]byte(written(t, "html", r))[:1024]) {
		t.Error("a page is not known by its head")
	}
	r.New.Build.Name = `<meta name="generator" content="barwright diff">`
	var build bytes.Buffer
	if err := page.Write(&build, r.New, nil); err != nil {
		t.Fatal(err)
	}
	for _, text := range []string{"", build.String(), "<title>" + written(t, "html", r)} {
		if IsPage([]byte(text)) {
			t.Errorf("%.80q is taken for a page", text)
		}
	}
}
