package dxf

import (
	"bytes"
	"io"
	"strconv"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// bufferSize is how much of a file is held before it is passed on; a small file takes no more than
// smallFile.
const (
	bufferSize = 1 << 16
	smallFile  = 1 << 12
)

// groups writes group codes and their values: two lines each, ended by CR LF.
// The first error of the writer below sticks; flush returns it.
type groups struct {
	w    io.Writer
	b    []byte // what is not passed on yet
	err  error
	inch bool // lengths in inches, otherwise in millimetres

	// Most arcs of a file are alike, and a bulge takes longer to print than all
	// else of its vertex: the last one, and its digits.
	bulged       float64
	bulgedDigits []byte
}

func newGroups(w io.Writer) *groups {
	return &groups{w: w, b: make([]byte, 0, smallFile)}
}

func (g *groups) flush() error {
	if g.err == nil {
		_, g.err = g.w.Write(g.b)
	}
	g.b = g.b[:0]
	return g.err
}

// code begins a group: the code, which has three digits at most, right-justified.
func (g *groups) code(code int) {
	if len(g.b) >= bufferSize {
		g.flush()
	}
	hundreds, tens := byte(' '), byte(' ')
	if code >= 10 {
		tens = '0' + byte(code/10%10)
	}
	if code >= 100 {
		hundreds = '0' + byte(code/100)
	}
	g.b = append(g.b, hundreds, tens, '0'+byte(code%10), '\r', '\n')
}

func (g *groups) crlf() { g.b = append(g.b, '\r', '\n') }

func (g *groups) str(code int, s string) {
	g.code(code)
	g.b = append(g.b, s...)
	g.crlf()
}

func (g *groups) int(code int, n int) {
	g.code(code)
	g.b = strconv.AppendInt(g.b, int64(n), 10)
	g.crlf()
}

// hex writes a handle, or a reference to one.
func (g *groups) hex(code int, h handle) {
	g.code(code)
	g.b = appendHex(g.b, uint64(h))
	g.crlf()
}

func (g *groups) real(code int, x float64) {
	g.code(code)
	g.b = appendReal(g.b, x)
	g.crlf()
}

// length writes a length in the unit of the file.
func (g *groups) length(code int, l length.Length) {
	g.code(code)
	if g.inch {
		g.b = appendInches(g.b, l)
	} else {
		g.b = appendMM(g.b, l)
	}
	g.crlf()
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
	n := uint64(l)
	if l < 0 {
		b = append(b, '-')
		n = -n
	}
	b = strconv.AppendUint(b, n/uint64(length.Millimetre), 10)
	rest := n % uint64(length.Millimetre)
	if rest == 0 {
		return append(b, '.', '0')
	}
	digits := [...]byte{'.', '0', '0', '0', '0', '0', '0'}
	end := 1
	for i := 6; i > 0; i-- {
		digit := byte(rest % 10)
		if rest /= 10; digit != 0 && end == 1 {
			end = i + 1
		}
		digits[i] += digit
	}
	return append(b, digits[:end]...)
}

// appendInches appends a length in inches to nine decimals, which tell all nanometres
// apart.
func appendInches(b []byte, l length.Length) []byte {
	return pointed(length.AppendDecimal(b, l, length.Inches, 9), len(b))
}

// appendReal appends the shortest decimal that reads back as x, with at least
// one decimal and no exponent. x must be finite.
func appendReal(b []byte, x float64) []byte {
	start := len(b)
	if x == 0 {
		x = 0 // no negative zero
	}
	return pointed(strconv.AppendFloat(b, x, 'f', -1, 64), start)
}

// pointed gives the number that begins at start a decimal where it has none.
func pointed(b []byte, start int) []byte {
	if bytes.IndexByte(b[start:], '.') < 0 {
		b = append(b, ".0"...)
	}
	return b
}
