package paper

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"slices"
	"strconv"
)

// deflated takes a file that the library has written without compressing its pages, all at once, and hands it on
// with pages compressed, object by object, and its type under the name that it is to have: objects one after
// another, those of pages first and then object 1, their list; then a table of where
// each begins (ISO 32000, 7.5, from memory). The library would make a compressor for each page anew, which takes
// longer than what it does. It panics where a file is not so.
type deflated struct{ to io.Writer }

func (d deflated) Write(file []byte) (int, error) {
	const begin, entry = "xref\n0 ", len("0000000000 00000 n \n")
	table := bytes.LastIndex(file, []byte("\n"+begin)) + 1
	trailer := table + bytes.Index(file[table:], []byte("trailer\n"))
	n := figures(file[table+len(begin):])
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

	out := counted{to: d.to}
	out.write(file[:at[order[0]]])
	compressor := newCompressor()
	moved := slices.Clone(at)
	for k, i := range order {
		end := table
		if k+1 < len(order) {
			end = at[order[k+1]]
		}
		moved[i] = out.size
		object := file[at[i]:end]
		if at[i] < at[1] {
			out.write(compressor.page(object))
		} else {
			out.write(bytes.ReplaceAll(object, []byte("/utf8"+face), []byte(tagged)))
		}
	}
	start := out.size
	out.write(file[table : first+entry])
	for _, to := range moved[1:] {
		out.write(fmt.Appendf(nil, "%010d 00000 n \n", to))
	}
	rest, _, _ := bytes.Cut(file[trailer:], []byte(strconv.Itoa(table)+"\n%%EOF"))
	out.write(rest)
	out.write(fmt.Appendf(nil, "%d\n%%%%EOF\n", start))
	return len(file), out.err
}

// counted counts what is written, up to the first error.
type counted struct {
	to   io.Writer
	size int
	err  error
}

func (c *counted) write(p []byte) {
	if c.err != nil {
		return
	}
	n, err := c.to.Write(p)
	c.size, c.err = c.size+n, err
}

// figures reads the figures that a text begins with.
func figures(text []byte) int {
	n, err := strconv.Atoi(string(text[:bytes.IndexAny(text, " \n>")]))
	if err != nil {
		panic(err)
	}
	return n
}

// compressor compresses one page after another.
type compressor struct {
	*zlib.Writer
	packed, object bytes.Buffer
}

func newCompressor() *compressor {
	c := new(compressor)
	c.Writer, _ = zlib.NewWriterLevel(&c.packed, zlib.BestSpeed) // there is such a level
	return c
}

// page is an object with its stream compressed; one that has none stays as it is. It is good until the next.
func (c *compressor) page(object []byte) []byte {
	name, rest, ok := bytes.Cut(object, []byte("<</Length "))
	if !ok {
		return object
	}
	_, stream, _ := bytes.Cut(rest, []byte("stream\n"))
	size := figures(rest)
	c.packed.Reset()
	c.Reset(&c.packed)
	c.Write(stream[:size]) // memory takes it all
	c.Close()
	c.object.Reset()
	fmt.Fprintf(&c.object, "%s<</Filter /FlateDecode /Length %d>>\nstream\n%s%s", name, c.packed.Len(), c.packed.Bytes(), stream[size:])
	return c.object.Bytes()
}
