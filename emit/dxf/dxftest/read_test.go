package dxftest

import (
	"strings"
	"testing"

	"barwright/compile/geom"
)

// file is a least file around one entity, given as "code value" words split at
// bars.
func file(entity string) string {
	groups := "0 SECTION|2 ENTITIES|" + entity + "|0 ENDSEC|0 EOF|"
	return strings.NewReplacer(" ", "\r\n", "|", "\r\n").Replace(groups)
}

func TestRead(t *testing.T) {
	f, err := Read(strings.NewReader(file("0 LWPOLYLINE|8 A|70 1|10 0.5|20 0.0|42 1.0|10 2.000001|20 -1.0")))
	if err != nil {
		t.Fatal(err)
	}
	want := geom.Contour{{Point: geom.Point{X: 500_000}, Bulge: 1}, {Point: geom.Point{X: 2_000_001, Y: -1_000_000}}}
	if len(f.Contours) != 1 || f.Contours[0].Layer != "A" || len(f.Contours[0].Shape) != 2 ||
		f.Contours[0].Shape[0] != want[0] || f.Contours[0].Shape[1] != want[1] {
		t.Errorf("read %+v", f.Contours)
	}
}

func TestReadRefuses(t *testing.T) {
	for _, test := range []struct{ file, want string }{
		{file("0 LWPOLYLINE|8 A|70 0|10 0.0|20 0.0"), "closed false"},
		{file("0 LWPOLYLINE|8 SCRIBE|70 1|10 0.0|20 0.0"), "closed true"},
		{file("0 ARC|8 A"), "unknown entity"},
		{file("0 LINE|8 A|10 0.0|20 0.0|30 0.0|11 1.0|21 2|31 0.0"), "no coordinate"},
		{file("0 CIRCLE|8 A|10 0.0|20 0.0|30 1.0|40 5.0"), "z is 1.0"},
		{file("0 CIRCLE|8 A|10 0|20 0.0|30 0.0|40 5.0"), "no coordinate"},
		{file("0 CIRCLE|8 A|10 -0.0|20 0.0|30 0.0|40 5.0"), "no coordinate"},
		{file("0 CIRCLE|8 A|10 1e3.0|20 0.0|30 0.0|40 5.0"), "invalid syntax"},
		{file("0 LWPOLYLINE|8 A|70 1|20 0.0"), "before any 10"},
		{strings.ReplaceAll(file("0 SEQEND"), "\r", ""), "not CR LF"},
		{file("0 SEQEND")[:20], "group 2: EOF"}, // in the middle of a line
		{"", "no EOF"},
	} {
		if _, err := Read(strings.NewReader(test.file)); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%q: error %v, want %q", test.file, err, test.want)
		}
	}
}
