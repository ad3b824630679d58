package dxf

import (
	"bytes"
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"barwright/lang/length"
)

func TestAppendMM(t *testing.T) {
	for _, test := range []struct {
		l    length.Length
		want string
	}{
		{0, "0.0"},
		{1, "0.000001"},
		{-1, "-0.000001"},
		{396_875, "0.396875"}, // 1/64 in
		{25_400_000, "25.4"},
		{-25_400_000, "-25.4"},
		{1_000_000, "1.0"},
		{1_010_000, "1.01"},
		{length.Max, "1000000.0"},
		{math.MinInt64, "-9223372036854.775808"},
	} {
		if got := string(appendMM(nil, test.l)); got != test.want {
			t.Errorf("%d nm is %s mm, want %s", test.l, got, test.want)
		}
	}
}

func TestAppendReal(t *testing.T) {
	for _, test := range []struct {
		x    float64
		want string
	}{
		{0, "0.0"},
		{math.Copysign(0, -1), "0.0"},
		{1, "1.0"},
		{-1, "-1.0"},
		{2.5, "2.5"},
		{-0.41421356237309503, "-0.41421356237309503"},
		{1e-12, "0.000000000001"},
		{1e21, "1000000000000000000000.0"},
	} {
		if got := string(appendReal([]byte("."), test.x)); got != "."+test.want {
			t.Errorf("%g is written %s, want .%s", test.x, got, test.want)
		}
	}
}

func TestAppendHex(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.Uint64().Draw(t, "n")
		back, err := strconv.ParseUint(string(appendHex(nil, n)), 16, 64)
		if err != nil || back != n {
			t.Errorf("%d reads back as %d, %v", n, back, err)
		}
	})
}

func TestGroupLines(t *testing.T) {
	var b bytes.Buffer
	g := newGroups(&b)
	g.str(0, "EOF")
	g.int(70, -1)
	g.hex(330, 0x1F)
	g.mm(40, 0)
	if err := g.flush(); err != nil {
		t.Fatal(err)
	}
	if want := "  0\r\nEOF\r\n 70\r\n-1\r\n330\r\n1F\r\n 40\r\n0.0\r\n"; b.String() != want {
		t.Errorf("wrote %q, want %q", b.String(), want)
	}
}
