// Package paper writes sheets that are printed: sets of them as PDF, with the type embedded and
// each text whole, and single ones as SVG. The papers say where everything lies; this package
// chooses lines, tints and type. The same papers give the same bytes.
package paper

import (
	"bytes"
	"fmt"
	"io"
	"maps"
	"slices"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"github.com/go-fonts/liberation/liberationsansbold"
	"github.com/go-fonts/liberation/liberationsansregular"

	"barwright/compile/model"
	"barwright/lang/length"
)

const mm = float64(length.Millimetre)

// face is the family of type in a PDF: the library calls it so, with utf8 before it. Only the letters that
// are used stand in the file, which is told by a tag of six capitals before the name (ISO 32000, 9.9, from
// memory); ours takes as many bytes.
const (
	face   = "liberationsans-ab"
	tagged = "/PAPERS+LiberationSans"
)

// fonts are the names by which pages call the type, upright and bold: the library's digests of it.
var fonts = [2]string{"60372a1de4a451b620f77ead1d173bdb692d9ec1", "95c3a8fad4e54f5513b434017509b9dfb053aa70"}

// WritePDF writes papers, one at least, as one file, in their order. The library makes the document and its type, with empty
// pages; what stands on them is made meanwhile, several at once, and put in their place. Each does n things, begun in
// their order. The error is the writer's. It panics where the library calls the type otherwise.
func WritePDF(w io.Writer, title string, papers []model.Paper, each func(n int, do func(i int))) error {
	var empty *fpdf.Fpdf
	var pages []*page
	each(2, func(i int) {
		if i == 0 {
			empty = document(title)
		} else {
			pages = drawn(papers, each)
		}
	})
	var used [2]map[rune]bool
	for bold := range used {
		used[bold] = map[rune]bool{}
		for _, p := range pages {
			maps.Copy(used[bold], p.used[bold])
		}
	}
	for i := range papers {
		p := &papers[i]
		empty.AddPageFormat("P", fpdf.SizeType{Wd: float64(p.Size.X) / mm, Ht: float64(p.Size.Y) / mm})
		empty.Bookmark(p.Title, 0, -1)
		if len(p.Lettering) > 0 { // from then on the library writes bookmarks in another way
			empty.SetFont(face, "", 10)
		}
	}
	for bold, runes := range used {
		if len(runes) > 0 {
			empty.SetFont(face, []string{"", "B"}[bold], 10)
			empty.Text(0, 0, string(slices.Sorted(maps.Keys(runes))))
		}
	}
	var file bytes.Buffer
	if err := empty.Output(&file); err != nil {
		return fmt.Errorf("writing %s: %w", title, err)
	}
	for _, name := range fonts {
		if !bytes.Contains(file.Bytes(), []byte("/F"+name+" ")) {
			panic("the library calls its type otherwise than " + name)
		}
	}
	if err := filled(w, bytes.ReplaceAll(file.Bytes(), []byte("/utf8"+face), []byte(tagged)), pages); err != nil {
		return fmt.Errorf("writing %s: %w", title, err)
	}
	return nil
}

// document has no pages yet.
func document(title string) *fpdf.Fpdf {
	// The kind of orientation keeps the sizes as they are given.
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", SizeStr: "A4"})
	f.SetCreationDate(time.Unix(0, 0).UTC())
	f.SetModificationDate(time.Unix(0, 0).UTC())
	f.SetCatalogSort(true)
	f.SetProducer("barwright", true)
	f.SetTitle(title, true)
	f.SetCompression(false) // of pages that are thrown away
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.AddUTF8FontFromBytes(face, "", liberationsansregular.TTF)
	f.AddUTF8FontFromBytes(face, "B", liberationsansbold.TTF)
	return f
}

// drawn are the pages of papers. A page begins with the pens and the type that the one before it ends with, as the
// library writes it: each waits for that when it is drawn, and only then is compressed.
func drawn(papers []model.Paper, each func(n int, do func(i int))) []*page {
	pages := make([]*page, len(papers))
	begins := make([]chan state, len(papers)+1)
	for i := range begins {
		begins[i] = make(chan state, 1)
	}
	begins[0] <- first
	fills := make([]string, len(papers)) // before each
	fill := first.fill
	for i := range papers {
		fills[i] = fill
		if last := lastFill(&papers[i]); last != "" {
			fill = last
		}
	}
	presses := newPresses()
	each(len(papers), func(i int) {
		with := presses.Get().(*press)
		defer presses.Put(with)
		p := newPage(&papers[i], with.text)
		defer func() { // also where it panics: the others wait
			begin := <-begins[i]
			begins[i+1] <- begin.then(p.end)
			p.pack(begin, with)
			pages[i] = p
		}()
		p.paper(&papers[i], fills[i])
	})
	return pages
}
