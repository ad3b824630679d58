package dxf

import (
	"bufio"
	"bytes"
	"io"
	"strconv"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// groups writes group codes and their values: two lines each, ended by CR LF.
// The first error of the writer below sticks; flush returns it.
type groups struct {
	w    *bufio.Writer
	inch bool // lengths in inches, otherwise in millimetres
}

func newGroups(w io.Writer) *groups { return &groups{w: bufio.NewWriterSize(w, 1<<16)} }

func (g *groups) flush() error { return g.w.Flush() }

// open returns room in the buffer that begins with the code, right-justified
// to three columns; close ends the value appended to it.
func (g *groups) open(code int) []byte {
	b := g.w.AvailableBuffer()
	for width := 100; width > max(code, 1); width /= 10 {
		b = append(b, ' ')
	}
	return append(strconv.AppendInt(b, int64(code), 10), '\r', '\n')
}

func (g *groups) close(b []byte) { g.w.Write(append(b, '\r', '\n')) }

func (g *groups) str(code int, s string) { g.close(append(g.open(code), s...)) }

func (g *groups) int(code int, n int) {
	g.close(strconv.AppendInt(g.open(code), int64(n), 10))
}

// hex writes a handle, or a reference to one.
func (g *groups) hex(code int, h handle) {
	g.close(appendHex(g.open(code), uint64(h)))
}

func (g *groups) real(code int, x float64) { g.close(appendReal(g.open(code), x)) }

// length writes a length in the unit of the file.
func (g *groups) length(code int, l length.Length) {
	b := g.open(code)
	if g.inch {
		b = appendInches(b, l)
	} else {
		b = appendMM(b, l)
	}
	g.close(b)
}

// xy writes a point of the plane: X under the code, Y under code + 10.
func (g *groups) xy(code int, p geom.Point) {
	g.length(code, p.X)
	g.length(code+10, p.Y)
}

// xyz writes a point at z = 0: Z is under code + 20.
func (g *groups) xyz(code int, p geom.Point) {
	g.xy(code, p)
	g.length(code+20, 0)
}

func appendHex(b []byte, n uint64) []byte {
	const digits = "0123456789ABCDEF"
	if n >= 16 {
		b = appendHex(b, n/16)
	}
	return append(b, digits[n%16])
}

// appendMM appends a length in millimetres, exactly: one to six decimals, no
// exponent, no negative zero.
func appendMM(b []byte, l length.Length) []byte {
	return pointed(length.AppendDecimal(b, l, length.Millimetres, 6), len(b))
}

// appendInches appends a length in inches to nine decimals, which tell all nanometres
// apart.
func appendInches(b []byte, l length.Length) []byte {
	return pointed(length.AppendDecimal(b, l, length.Inches, 9), len(b))
}

// appendReal appends the shortest decimal that reads back as x, with at least
// one decimal and no exponent. x must be finite.
func appendReal(b []byte, x float64) []byte {
	if x == 0 {
		x = 0 // no negative zero
	}
	return pointed(strconv.AppendFloat(b, x, 'f', -1, 64), len(b))
}

// pointed gives the number that begins at start a decimal where it has none.
func pointed(b []byte, start int) []byte {
	if bytes.IndexByte(b[start:], '.') < 0 {
		b = append(b, ".0"...)
	}
	return b
}
