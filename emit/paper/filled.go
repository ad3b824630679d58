package paper

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"slices"
	"strconv"
	"sync"
)

// filled writes a file that the library has made with empty pages, and what belongs on them in their place:
// objects one after another, those of pages first and then object 1, their list; then a table of where
// each begins (ISO 32000, 7.5, from memory). The error is the writer's. It panics where a file is not so.
func filled(w io.Writer, file []byte, pages []*page) error {
	const begin, entry = "xref\n0 ", len("0000000000 00000 n \n")
	table := bytes.LastIndex(file, []byte("\n"+begin)) + 1
	trailer := table + bytes.Index(file[table:], []byte("trailer\n"))
	counted := table + len(begin)
	n := figures(file[counted:])
	first := trailer - n*entry // of object 0, which is none
	at := make([]int, n)
	for i := range at {
		at[i] = figures(file[first+i*entry:])
	}
	order := make([]int, 0, n)
	for i := 1; i < n; i++ {
		order = append(order, i)
	}
	slices.SortFunc(order, func(i, j int) int { return at[i] - at[j] })

	out := counting{to: w}
	out.put(file[:at[order[0]]])
	moved := slices.Clone(at)
	for k, i := range order {
		end := table
		if k+1 < len(order) {
			end = at[order[k+1]]
		}
		moved[i] = out.n
		object := file[at[i]:end]
		if name, rest, ok := bytes.Cut(object, []byte("<</Length ")); ok && at[i] < at[1] {
			_, stream, _ := bytes.Cut(rest, []byte("stream\n"))
			fmt.Fprintf(&out, "%s<</Filter /FlateDecode /Length %d>>\nstream\n", name, pages[0].packed.Len())
			out.put(pages[0].packed.Bytes())
			object, pages = stream[figures(rest):], pages[1:]
		}
		out.put(object)
	}
	start := out.n
	out.put(file[table : first+entry])
	for _, to := range moved[1:] {
		fmt.Fprintf(&out, "%010d 00000 n \n", to)
	}
	rest, _, _ := bytes.Cut(file[trailer:], []byte(strconv.Itoa(table)+"\n%%EOF"))
	out.put(rest)
	fmt.Fprintf(&out, "%d\n%%%%EOF\n", start)
	return out.err
}

// figures reads the figures that a text begins with.
func figures(text []byte) int {
	n, err := strconv.Atoi(string(text[:bytes.IndexAny(text, " \n>")]))
	if err != nil {
		panic(err)
	}
	return n
}

// counting counts what it writes, and keeps the first error.
type counting struct {
	to  io.Writer
	n   int
	err error
}

func (c *counting) Write(b []byte) (int, error) {
	c.put(b)
	return len(b), nil
}

func (c *counting) put(b []byte) {
	if c.err == nil {
		_, c.err = c.to.Write(b)
	}
	c.n += len(b)
}

// press is what pages are made with, one after another.
type press struct {
	*zlib.Writer
	text []byte // room for that of a page
}

// newPresses keeps presses, for making one takes longer than what it does for a page.
func newPresses() *sync.Pool {
	return &sync.Pool{New: func() any {
		c, _ := zlib.NewWriterLevel(nil, zlib.BestSpeed) // there is such a level
		return &press{Writer: c}
	}}
}

// pack compresses a page that begins in a state, and gives its room back.
func (f *page) pack(begin state, p *press) {
	p.Reset(&f.packed)
	p.Write(begin.begin()) // memory takes it all
	p.Write(f.text)
	p.Close()
	p.text, f.text = f.text[:0], nil
}
