package paper

import (
	"bytes"
	"fmt"
	"testing"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// TestDeflate: the outcome is what the library writes where it compresses pages itself, also for pages
// without a text, and for more objects than the table's numbers have figures in common.
func TestDeflate(t *testing.T) {
	for _, pages := range []int{1, 2, 60} {
		write := func(compressed bool) []byte {
			f := fpdf.New("P", "mm", "A4", "")
			f.SetCompression(compressed)
			f.SetCatalogSort(true)
			f.SetCreationDate(time.Unix(0, 0).UTC())
			f.SetModificationDate(time.Unix(0, 0).UTC())
			f.SetFont("Courier", "", 10)
			for i := range pages {
				f.AddPage()
				for k := range 40 * (i % 3) {
					f.Text(10, float64(10+k), fmt.Sprintf("endstream endobj xref %d of %d", k, i))
				}
			}
			var out bytes.Buffer
			if err := f.Output(&out); err != nil {
				t.Fatal(err)
			}
			return out.Bytes()
		}
		if got, want := deflate(write(false)), write(true); !bytes.Equal(got, want) {
			t.Errorf("%d pages: %d bytes, not the library's %d", pages, len(got), len(want))
		}
	}
}
