package main

import (
	"regexp"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// shimsByHand is what stands under the boat shed, worked out on paper from its seven
// readings. In thirty-seconds below the highest reading (47 15/16 in), they are
//
//	A (0, 0) 2      B (68, 0) 8     C (136, 0) 16
//	D (0, 96) 4     E (68, 96) 10   F (136, 96) 16     G (60, 45) 0
//
// The circles about the triangles with G hold no other reading: that of G, C, F has its
// centre at x = 113.1, y = 48 and a radius of 53.2, and B and E are 65.9 from there; those
// of the others lie farther out. So all triangles meet at G, and the depth d in each is the
// plane through its corners:
//
//	ABG  d = 2 + 6/68 x - 0.16209 y     as at G 2 + 5.294 = 7.294 = 45 * 0.16209
//	BCG  d = 8/68 x - 0.15686 y         as at G 7.0588 = 45 * 0.15686
//	CFG  d = 16 (x - 60)/76
//	DFG  d = 4 + 6/68 x - 0.18224 (96 - y), as D, E, F are on one line
//	                                    and at G 4 + 5.294 = 9.294 = 51 * 0.18224
//	DAG  d = 2 + 2/96 y - 0.048958 x    as at G 2 + 0.9375 = 2.9375 = 60 * 0.048958
//
// GA is y = 0.75 x, GB is x = 68 - 8/45 y, GC is y = 45 - 45/76 (x - 60), GF is
// y = 45 + 51/76 (x - 60), GD is y = 45 + 51/60 (60 - x).
//
// Boxes of the run "back" bear at y = 7/32 (its back is applied) and, the toe kick set back
// by 3, at y = 20 1/4. The run "front" meets the wall "east" with its rear at 89 1/4 along
// it; that wall turns by 90.4 degrees, sin 0.4 = 0.006981, cos 0.4 = 0.999976. So a point
// (u, v) of it lies at
//
//	x = 136 1/8 + 89.25 * 0.006981 - 0.999976 u - 0.006981 v = 136.748 - 0.999976 u - 0.006981 v
//	y = 89.25 * 0.999976 + 0.006981 u - 0.999976 v           = 89.248 + 0.006981 u - 0.999976 v
//
// The datum. The least d of a point that bears is that of kettle, front right (30, 20.25),
// in ABG: 2 + 2.647 - 3.282 = 1.365; next is the left block of the cooler with 1.552. The
// gap is d - 1.365. In full, in thirty-seconds:
//
//	kettle, rear left   (0, 0.219)   DAG, as y > 0: 2 + 0.005 = 2.005; 0.640 -> 1
//	kettle, rear right  (30, 0.219)  ABG: 2 + 2.647 - 0.035 = 4.612; 3.247 -> 3
//	cooler, left block, front end (30 3/8 + 1 3/4 = 32.125, 20.25)
//	                                 ABG: 2 + 2.835 - 3.282 = 1.552; 0.187 -> 0
//	cooler, right block, rear end (30 3/8 + 23 1/2 - 1 3/4 = 52.125, 0.75)
//	                                 ABG: 2 + 4.599 - 0.122 = 6.478; 5.113 -> 5
//	cups, rear right    (96.25, 0.219) BCG: 11.324 - 0.034 = 11.289; 9.924 -> 10
//	beans, front right  (134.625, 20.25) GC is at y = 0.81 there, so CFG:
//	                                 16 * 74.625/76 = 15.711; 14.346 -> 14
//	sink, rear left     u 1.5, v 0.219: x = 136.748 - 1.500 - 0.002 = 135.247,
//	                                 y = 89.248 + 0.010 - 0.219 = 89.040; GF is at 95.5
//	                                 there, so CFG: 16 * 75.247/76 = 15.841; 14.477 -> 14
//	bins, front right   u 55.5, v 20.25: x = 136.748 - 55.499 - 0.141 = 81.108,
//	                                 y = 89.248 + 0.387 - 20.250 = 69.386; GF is at 59.2, so
//	                                 DFG: 4 + 7.157 - 4.850 = 6.306; 4.942 -> 5
//	kegs, front right   u 109.5, v 20.25: x = 136.748 - 109.497 - 0.141 = 27.109,
//	                                 y = 89.248 + 0.764 - 20.250 = 69.763; GD is at 73.0, so
//	                                 DAG: 2 + 1.453 - 1.327 = 2.126; 0.761 -> 1
//	framing, left end   u 0, v -1.75: x = 136.760, outside; the nearest of CF has 16;
//	                                 14.635 -> 15
//	framing, right end  u 109.5, v -1.75: x = 27.263, y = 91.762, DFG: 4 + 2.406 - 0.772
//	                                 = 5.633; 4.269 -> 4
//
// The studs between stand at 16, 32, 48, 64, 79 19/32, 84 31/32 and 96. On the line of the
// framing d falls by 6/68 * 0.999976 - 0.18224 * 0.006981 = 0.08696 an inch from left to
// right in DFG, so that stud n at u has 5.633 + 0.08696 (109.5 - u): 13.764, 12.373, 10.981,
// 9.590, 8.234, 7.767, 6.807. Stud 2, at x = 120.76, is past GF (at y = 85.8).
// The others go the same way.
var shimsByHand = [][3]string{
	{"cabinet kettle", "rear left corner", "1/32"}, {"cabinet kettle", "rear right corner", "3/32"},
	{"cabinet kettle", "front left corner", "1/32"}, {"cabinet kettle", "front right corner", "0"},
	{"bay cooler", "left block, rear end", "3/32"}, {"bay cooler", "left block, front end", "0"},
	{"bay cooler", "right block, rear end", "5/32"}, {"bay cooler", "right block, front end", "1/16"},
	{"cabinet cups", "rear left corner", "5/32"}, {"cabinet cups", "rear right corner", "5/16"},
	{"cabinet cups", "front left corner", "1/16"}, {"cabinet cups", "front right corner", "7/32"},
	{"cabinet beans", "rear left corner", "5/16"}, {"cabinet beans", "rear right corner", "7/16"},
	{"cabinet beans", "front left corner", "7/32"}, {"cabinet beans", "front right corner", "7/16"},
	{"cabinet sink", "rear left corner", "7/16"}, {"cabinet sink", "rear right corner", "5/16"},
	{"cabinet sink", "front left corner", "7/16"}, {"cabinet sink", "front right corner", "7/32"},
	{"cabinet bins", "rear left corner", "5/16"}, {"cabinet bins", "rear right corner", "9/32"},
	{"cabinet bins", "front left corner", "7/32"}, {"cabinet bins", "front right corner", "5/32"},
	{"cabinet mugs", "rear left corner", "9/32"}, {"cabinet mugs", "rear right corner", "3/16"},
	{"cabinet mugs", "front left corner", "5/32"}, {"cabinet mugs", "front right corner", "3/32"},
	{"cabinet kegs", "rear left corner", "3/16"}, {"cabinet kegs", "rear right corner", "1/8"},
	{"cabinet kegs", "front left corner", "3/32"}, {"cabinet kegs", "front right corner", "1/32"},
	{"knee wall bar", "left end", "15/32"}, {"knee wall bar", "stud 2", "3/8"}, {"knee wall bar", "stud 3", "11/32"},
	{"knee wall bar", "stud 4", "5/16"}, {"knee wall bar", "stud 5", "1/4"}, {"knee wall bar", "stud 6", "7/32"},
	{"knee wall bar", "stud 7", "3/16"}, {"knee wall bar", "stud 8", "5/32"}, {"knee wall bar", "right end", "1/8"},
}

// TestShimsByHand compares the table that is printed with the one above.
func TestShimsByHand(t *testing.T) {
	page := string(filesIn(t, built(t, "boatshed"))["index.html"])
	row := regexp.MustCompile(`data-h="under">([^<]*)</td><td[^>]*data-h="point">([^<]*)</td>.*?data-h="shim">([^<]*)</td>`)
	var printed [][3]string
	for _, m := range row.FindAllStringSubmatch(page, -1) {
		printed = append(printed, [3]string{m[1], m[2], m[3]})
	}
	if diff := cmp.Diff(shimsByHand, printed); diff != "" {
		t.Errorf("shims (-by hand +printed):\n%s", diff)
	}
}
