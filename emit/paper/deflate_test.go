package paper

import (
	"bytes"
	"fmt"
	"io"
	"testing"
	"time"

	"codeberg.org/go-pdf/fpdf"
)

// TestDeflate: the outcome is what the library writes where it compresses pages itself, also for pages
// without a text, and for more objects than the table's numbers have figures in common.
func TestDeflate(t *testing.T) {
	for _, pages := range []int{1, 2, 60} {
		write := func(to func(io.Writer) io.Writer, compressed bool) []byte {
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
			if err := f.Output(to(&out)); err != nil {
				t.Fatal(err)
			}
			return out.Bytes()
		}
		pagesDeflated := func(w io.Writer) io.Writer { return deflated{w} }
		asItIs := func(w io.Writer) io.Writer { return w }
		if got, want := write(pagesDeflated, false), write(asItIs, true); !bytes.Equal(got, want) {
			t.Errorf("%d pages: %d bytes, not the library's %d", pages, len(got), len(want))
		}
	}
}
