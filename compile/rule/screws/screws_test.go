package screws

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"barwright/compile/geom"
	"barwright/compile/rule/ruletest"
	"barwright/lang/length"
	"barwright/lang/source"
)

// twoBoxes are two cabinets on a wall of studs, with one board t sixteenths of an inch
// thick, a back b, a lining, and a screw for everything.
func twoBoxes(t, back, lining int, diameter float64, long string) source.Files {
	return source.Files{{Name: "bar.hcl", Text: []byte(fmt.Sprintf(`
build "two" { unit = "in" }
room {
  wall "north" {
    length = 100
    lining = %g
  }
}
sheet "side" {
  size      = [96, 48]
  thickness = %g
}
sheet "back" {
  size      = [96, 48]
  thickness = %g
}
screw "wall" {
  diameter = %g
  length   = %s
  per_box  = 100
}
screw "joint" {
  diameter = %g
  length   = %s
  per_box  = 100
}
carcass "base" {
  height = 34.5
  depth  = 24
  board  = sheet.side
  back   = { board = sheet.back }
}
run "back" {
  along        = wall.north
  carcass      = carcass.base
  wall_screws  = screw.wall
  joint_screws = screw.joint
  cabinet "a" { width = 30 }
  cabinet "b" { width = 30 }
}
`, float64(lining)/16, float64(t)/16, float64(back)/16, diameter, long, diameter, long))}}
}

// told are the slugs of what three rules find, each with the attribute that it is at,
// and the mends.
func told(t rapid.TB, files source.Files) (slugs, mends map[string]string) {
	slugs, mends = map[string]string{}, map[string]string{}
	text := string(files[0].Text)
	for _, f := range ruletest.Judged(t, Rules[:3], files) {
		line := text[strings.LastIndex(text[:f.At.Start.Byte], "\n")+1:]
		attr := strings.Fields(line)[0]
		slugs[attr] += f.Slug + " "
		mends[attr] = f.Mend
	}
	return slugs, mends
}

// TestScrewsBySixteenths holds the rules to plain counting in 16ths of an inch: two
// boards t thick, one of which the screw passes; a board, a back and a lining before a
// stud.
func TestScrewsBySixteenths(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		thick, back, lining := rapid.IntRange(6, 20).Draw(t, "board"), rapid.IntRange(2, 8).Draw(t, "back"), rapid.IntRange(0, 12).Draw(t, "lining")
		long, d := rapid.IntRange(4, 64).Draw(t, "length"), rapid.SampledFrom([]int{1, 2, 3}).Draw(t, "diameter")
		have, mends := told(t, twoBoxes(thick, back, lining, float64(d)/16, fmt.Sprint(float64(long)/16)))
		var joint, wall string
		switch left := 2*thick - long; {
		case left <= 0:
			joint = "screw-comes-through "
		case left < 2: // 1/8 in
			joint = "screw-near-face "
		}
		if long-thick < 3*d {
			joint += "screw-too-short "
		}
		if long-thick-back-lining < 6*d {
			wall = "screw-too-short "
		}
		if have["joint_screws"] != joint || have["wall_screws"] != wall {
			t.Fatalf("found %q at the joint and %q at the wall, want %q and %q", have["joint_screws"], have["wall_screws"], joint, wall)
		}
		for _, attr := range []string{"joint_screws", "wall_screws"} {
			follow(t, attr, mends[attr], func(long string) source.Files { return twoBoxes(thick, back, lining, float64(d)/16, long) })
		}
	})
}

var lengthsInMend = regexp.MustCompile(`^a screw of (.+?) in(?: or more| to (.+) in)?$`)

// follow takes each length that a mend names: nothing is found any more.
func follow(t *rapid.T, attr, mend string, with func(long string) source.Files) {
	for _, long := range lengthsInMend.FindStringSubmatch(mend) {
		if long == mend || long == "" {
			continue
		}
		if left, _ := told(t, with(`"`+long+`in"`)); left[attr] != "" {
			t.Fatalf("a screw of %s in, as the mend says, is found %s", long, left[attr])
		}
	}
}

// TestThreadLeftInStud is the example of trade-facts 14, computed there: a screw of
// 2 1/2 in through a rail of 3/4 in and a board of 1/2 in leaves 1 1/4 in in the stud.
func TestThreadLeftInStud(t *testing.T) {
	files := twoBoxes(12, 4, 4, 0.19, "2.5") // back and lining are 1/2 in together
	for _, g := range gripsOf(ruletest.Build(t, files)) {
		if b := ruletest.Build(t, files); g.attr == "wall_screws" && entersBy(b, &g) != 5*length.Inch/4 {
			t.Errorf("%s goes in %s, want 1 1/4 in", g.does, b.Show(entersBy(b, &g)))
		}
	}
}

// TestSixDiameters takes the gauges of ASME B18.6.1 as trade-facts 9 has them (looked
// up), and 6 D of NDS 12.1.5 (from memory).
func TestSixDiameters(t *testing.T) {
	b := ruletest.Build(t, twoBoxes(12, 4, 8, 0.19, "3"))
	for _, c := range []struct{ diameter, six geom.Length }{
		{164 * length.Inch / 1000, 984 * length.Inch / 1000},
		{190 * length.Inch / 1000, 1140 * length.Inch / 1000},
		{216 * length.Inch / 1000, 1296 * length.Inch / 1000},
	} {
		if have := needs(b, &grip{bite: "structure"}, c.diameter); have != c.six {
			t.Errorf("a screw of %s needs %s, want %s", b.Show(c.diameter), b.Show(have), b.Show(c.six))
		}
	}
}

// TestPlateScrewsHoldBack is common practice, of no source: screws of 1 1/4 in down
// through steel of 1/4 in into a plate of 1 1/2 in stay inside it. The steel is let in
// 0.004 in deeper than flush: 1 1/4 - 1/4 = 1 in goes into 1 1/2 - 1/4 - 0.004 =
// 1.246 in, of which 0.246 in are left.
func TestPlateScrewsHoldBack(t *testing.T) {
	files := ruletest.Example(t, "boatshed")
	for i := range files {
		files[i].Text = []byte(strings.Replace(string(files[i].Text), "  thickness = 0.5\n  width     = 3\n", "  thickness = 0.25\n  width     = 3\n", 1))
	}
	b, found := ruletest.Build(t, files), false
	for _, g := range gripsOf(b) {
		if g.does == "go down through the support plates" {
			found = true
			if entersBy(b, &g) != length.Inch || behindTip(b, &g) != 246*length.Inch/1000 {
				t.Errorf("%s goes in and %s is left, want 1 in and 0.246 in", b.Show(entersBy(b, &g)), b.Show(behindTip(b, &g)))
			}
		}
	}
	if !found {
		t.Error("no screws go down through the plates")
	}
}
