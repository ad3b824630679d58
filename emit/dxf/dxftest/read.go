// Package dxftest checks drawing exchange files in tests: a small reader of
// our own that gets the contours back, and an independent inspector for what a
// cutting table needs.
package dxftest

import (
	"bufio"
	"fmt"
	"io"
	"math/big"
	"strconv"
	"strings"

	"barwright/compile/geom"
	"barwright/lang/length"
)

// File is what a file says.
type File struct {
	Version        string // "AC1009"
	Unit           string // of $INSUNITS, empty where absent
	ExtMin, ExtMax geom.Point
	Layers         []string
	Contours       []Contour // in the order of the file
	Lines          []Line
	Texts          []Text
}

// Line is a straight line by itself.
type Line struct {
	Layer    string
	From, To geom.Point
}

// Contour is a closed polyline, or a circle as two half arcs.
type Contour struct {
	Layer string
	Shape geom.Contour
}

// Text is a line of text and where it begins.
type Text struct {
	Layer, Text string
	At          geom.Point
	Height      length.Length
}

// record is a group 0 and what follows it.
type record struct {
	kind   string
	groups []group
}

type group struct {
	code  int
	value string
}

// Read gets the contours and texts back from a file as this project writes it,
// in R12 or R2000. It is strict: line ends are CR LF, coordinates are exact
// nanometres, in the unit of the header, z is 0, no other entity is
// known. Polylines are closed, but for those of scribes, whose pieces are read as lines.
func Read(r io.Reader) (*File, error) {
	f := &File{}
	layer := func(rec record) error {
		if rec.kind == "LAYER" {
			f.Layers = append(f.Layers, rec.get(2))
		}
		return nil
	}
	if err := readSections(r, f.header, layer, f.entity); err != nil {
		return nil, err
	}
	f.open()
	return f, nil
}

// readSections hands on what stands in the sections of a file, which ends with EOF: the
// groups of its header, and each record of its tables and of its entities.
func readSections(r io.Reader, header func([]group) error, table, entity func(record) error) error {
	records, err := readRecords(r)
	if err != nil {
		return err
	}
	section := ""
	for i, rec := range records {
		switch {
		case rec.kind == "SECTION":
			section = rec.get(2)
			if section == "HEADER" {
				err = header(rec.groups[1:])
			}
		case rec.kind == "ENDSEC":
			section = ""
		case section == "TABLES":
			err = table(rec)
		case section == "ENTITIES":
			err = entity(rec)
		}
		if err != nil {
			return fmt.Errorf("record %d, %s: %w", i, rec.kind, err)
		}
	}
	if len(records) == 0 || records[len(records)-1].kind != "EOF" {
		return fmt.Errorf("no EOF")
	}
	return nil
}

// scribes is the layer of what is cut on site: its polylines are open, and no others.
const scribes = "SCRIBE"

// open makes lines of open polylines, from point to point.
func (f *File) open() {
	var closed []Contour
	for _, c := range f.Contours {
		if c.Layer != scribes {
			closed = append(closed, c)
			continue
		}
		for i, to := range c.Shape[1:] {
			f.Lines = append(f.Lines, Line{c.Layer, c.Shape[i].Point, to.Point})
		}
	}
	f.Contours = closed
}

func readRecords(r io.Reader) ([]record, error) {
	in := bufio.NewReader(r)
	line := func() (string, error) {
		s, err := in.ReadString('\n')
		if err == nil && !strings.HasSuffix(s, "\r\n") {
			return "", fmt.Errorf("line end is not CR LF: %q", s)
		}
		return strings.TrimSuffix(s, "\r\n"), err
	}
	var records []record
	for {
		first, err := line()
		if err == io.EOF && first == "" {
			return records, nil
		}
		if err != nil {
			return nil, err
		}
		code, err := strconv.Atoi(strings.TrimLeft(first, " "))
		if err != nil {
			return nil, err
		}
		value, err := line()
		if err != nil {
			return nil, fmt.Errorf("group %d: %w", code, err)
		}
		if code == 0 {
			records = append(records, record{kind: value})
			continue
		}
		if len(records) == 0 {
			return nil, fmt.Errorf("group %d before any record", code)
		}
		last := &records[len(records)-1]
		last.groups = append(last.groups, group{code, value})
	}
}

// get returns the first value under a code.
func (r record) get(code int) string {
	for _, g := range r.groups {
		if g.code == code {
			return g.value
		}
	}
	return ""
}

func (f *File) header(groups []group) (err error) {
	variable := ""
	for _, g := range groups {
		if g.code == 9 {
			variable = g.value
			continue
		}
		switch variable {
		case "$ACADVER":
			f.Version = g.value
		case "$INSUNITS":
			f.Unit = g.value
		case "$EXTMIN":
			err = f.setPoint(&f.ExtMin, g)
		case "$EXTMAX":
			err = f.setPoint(&f.ExtMax, g)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

func (f *File) entity(r record) error {
	switch r.kind {
	case "POLYLINE", "LWPOLYLINE":
		if closed := r.get(70) == "1"; closed == (r.get(8) == scribes) {
			return fmt.Errorf("closed %t", closed)
		}
		c, err := f.vertices(r)
		if r.kind == "POLYLINE" {
			c = nil // its own point is the elevation
		}
		f.Contours = append(f.Contours, Contour{r.get(8), c})
		return err
	case "VERTEX":
		last := &f.Contours[len(f.Contours)-1]
		if last.Layer != r.get(8) {
			return fmt.Errorf("on layer %s, its polyline on %s", r.get(8), last.Layer)
		}
		c, err := f.vertices(r)
		last.Shape = append(last.Shape, c...)
		return err
	case "CIRCLE":
		c, err := f.vertices(r)
		if err != nil {
			return err
		}
		radius, err := f.length(r.get(40))
		f.Contours = append(f.Contours, Contour{r.get(8), geom.CircleContour(c[0].Point, radius)})
		return err
	case "LINE":
		c, err := f.vertices(r)
		if err != nil {
			return err
		}
		line := Line{Layer: r.get(8), From: c[0].Point}
		for _, g := range r.groups {
			if g.code == 11 || g.code == 21 || g.code == 31 {
				if err := f.setPoint(&line.To, group{g.code - 1, g.value}); err != nil {
					return err
				}
			}
		}
		f.Lines = append(f.Lines, line)
		return nil
	case "TEXT":
		c, err := f.vertices(r)
		if err != nil {
			return err
		}
		height, err := f.length(r.get(40))
		f.Texts = append(f.Texts, Text{r.get(8), r.get(1), c[0].Point, height})
		return err
	case "SEQEND":
		return nil
	}
	return fmt.Errorf("unknown entity")
}

// vertices returns the points of a record, each with the bulge after it.
func (f *File) vertices(r record) (c geom.Contour, err error) {
	for _, g := range r.groups {
		switch g.code {
		case 10:
			c = append(c, geom.Vertex{})
			fallthrough
		case 20, 30:
			if len(c) == 0 {
				return nil, fmt.Errorf("group %d before any 10", g.code)
			}
			err = f.setPoint(&c[len(c)-1].Point, g)
		case 42:
			c[len(c)-1].Bulge, err = strconv.ParseFloat(g.value, 64)
		}
		if err != nil {
			return nil, err
		}
	}
	return c, nil
}

func (f *File) setPoint(p *geom.Point, g group) (err error) {
	switch g.code {
	case 10:
		p.X, err = f.length(g.value)
	case 20:
		p.Y, err = f.length(g.value)
	case 30:
		if g.value != "0.0" {
			return fmt.Errorf("z is %s", g.value)
		}
	}
	return err
}

// length reads a coordinate in the unit that the header states, mm where it states none.
func (f *File) length(s string) (length.Length, error) {
	if f.Unit == "1" {
		return inches(s)
	}
	return millimetres(s)
}

// inches reads a decimal with one to nine decimals, to the nearest nanometre.
func inches(s string) (length.Length, error) {
	_, part, ok := strings.Cut(s, ".")
	exact, isNumber := new(big.Rat).SetString(s)
	if !ok || part == "" || len(part) > 9 || s == "-0.0" || !isNumber {
		return 0, fmt.Errorf("%q is no coordinate with one to nine decimals", s)
	}
	exact.Mul(exact, big.NewRat(25_400_000, 1))
	nm, err := strconv.ParseInt(exact.FloatString(0), 10, 64)
	return length.Length(nm), err
}

// millimetres reads a decimal with one to six decimals, exactly.
func millimetres(s string) (length.Length, error) {
	whole, part, ok := strings.Cut(s, ".")
	if !ok || part == "" || len(part) > 6 || s == "-0.0" {
		return 0, fmt.Errorf("%q is no coordinate with one to six decimals", s)
	}
	nm, err := strconv.ParseInt(whole+part+strings.Repeat("0", 6-len(part)), 10, 64)
	return length.Length(nm), err
}
