package main

import (
	"html"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"barwright/compile/geom"
)

// What is cut and packed in the servery, worked out on paper from what was read there.
//
// The floor, in mm below its highest reading: P (0, 0) 4, Q (3600, 0) 9, M (1800, 1000) 0,
// S (0, 2600) 5, T (3600, 2600) 6. All triangles meet at M: the circle of P, Q, M has its
// centre at (1800, -1120) and a radius of 2120, that of S, T, M (1800, 2812.5) and 1812.5,
// that of P, S, M (455.6, 1300) and 1377.5, Q, T, M as much from the other side; none holds
// a fourth reading. The depth d is
//
//	PQM  d = 4 + x/720 - 0.0065 y                        as at M 4 + 2.5 = 6.5
//	QMT  d = 9 - 3 y/2600 - 0.00435897 (3600 - x)        as at M 9 - 1.153846 = 7.846154
//	MST  d = 5 + x/3600 - 0.0034375 (2600 - y)           as at M 5 + 0.5 = 5.5
//	PMS  d = 4 + y/2600 - 0.0024359 x                    as at M 4 + 0.384615 = 4.384615
//
// and PM is y = x/1.8. Run "back" ends at x = 3622 - 580 tan 0.4 = 3617.951, as the wall
// leans in there, so that it begins at 877.951. Its rear is 5 out (below).
//
// The datum is under urn, leg 3, whose middle is 50 from the left and 480 from the rear, at
// (927.951, 485): PM is at 515.5 there, so PQM: d = 4 + 1.288821 - 3.1525 = 2.136. Next is
// the front end of the left block at (1504.951, 535) with 4 + 2.090210 - 3.4775 = 2.613, and
// trays, front right, with 2.820. So the line is 1002.136 above it, and the gap is d - 2.136:
//
//	urn, leg 4 (1427.951, 485)        4 + 1.983265 - 3.1525 = 2.831; 0.694, wound to 150.694
//	left block, rear end, 30 out      4 + 2.090210 - 0.195  = 5.895; 3.759 -> 4, on blocks of 40
//	till, leg 2 (3547.951, 55)        QM is at 28.9 there, so QMT: 9 - 0.063462 - 0.226880
//	                                  = 8.709658; 6.573, wound to 156.573
//	sink, front left                  below; 4.729 -> 4.5
//	trays, front right                below; 0.683 -> 0.5
//
// Run "front" stands on wall "yard", which turns by 90.4 degrees, sin 0.4 = 0.0069813, cos 0.4
// = 0.9999756: its rear is at 2380 along and 3.429 out (below), and a point (u, v) of it at
//
//	x = 3622 - 2380 * 0.0069813 - 3.429 * 0.9999756 - 0.9999756 u + 0.0069813 v = 3601.955 - …
//	y = 2380 * 0.9999756 - 3.429 * 0.0069813 - 0.0069813 u - 0.9999756 v        = 2379.918 - …
//
//	sink, front left    (0, 530): 3605.655, outside, so as at (3600, 1849.931): 9 - 2.134536
//	                    = 6.865464; 4.729
//	trays, front right  (2000, 530): (1605.704, 1835.968), MST: 5 + 0.446029 - 2.626360
//	                    = 2.819669; 0.683
//
// Wall "hatch", along and up: E (900, 100) 0, F (3600, 100) 0, G (2250, 450) 5, H (900, 900)
// -4, I (3600, 900) -3. All triangles meet at G: the circle of E, F, G has its centre at
// (2250, -2328.6) and a radius of 2778.6, that of H, I, G (2250, 2700) and 2250, that of E, H,
// G (1516.7, 500) and 735. Run "back" is from 878 to 3618 along, so that it stands on G. The
// face is
//
//	EHG  -(z - 100)/200 + (x - 900)/200                  as at G -1.75 + 6.75
//	HIG  -4 + (x - 900)/2700 + 0.0188889 (900 - z)       as at G -3.5 + 8.5
//	FIG  -0.00375 (z - 100) + 0.00467593 (3600 - x)      as at G -1.3125 + 6.3125
//
// A full top leaves its stretcher from 744.2 to 844.2 up; screws are 50 inside the sides:
//
//	urn, left      x = 877.951 + 67.8 = 945.751, EHG: -3.471 + 0.228754 = -3.242; 8.242 -> 8
//	plates, left   x = 877.951 + 1272.8 = 2150.751, HIG: -4 + 0.463241 + 1.998444
//	               = -1.538; 6.538 -> 6.5
//	till, right    x = 877.951 + 2652.2 = 3530.151, FIG: -2.60325 + 0.326610 = -2.277; 7.277 -> 7.5
//
// Wall "yard": A (600, 100) 0, B (600, 900) 5, C (2400, 900) 3, D (2500, 100) 1. The circle of
// A, B, C has its centre at (1500, 500) and a radius of 984.9, and D is 1077 from there; so
// A, B, C and A, C, D. Run "front" is from 1800 to 2380 along and 862 high; the highest of ABC,
// 0.00625 (z - 100) - (x - 600)/900, is there 4.7625 - 1.333333 = 3.429 at (1800, 862).
//
// The end panel's outer face is at x = 877.951 - 17.8 = 860.151, off H and E: the wall's face is
// there as at 900, -(z - 100)/200, 0 under 100. At the top, 862 up, that is -3.81, and the blank
// goes 12 beyond it, to -15.81; its front is 585 out, so that it is 600.81 wide. What comes off
// is 15.81 - (z - 100)/200; the rest of 600.81 is left, and 50 less beside its toe kick, under
// 150 up. The floor under that face is as at y = 0 behind it, 2.136321 - 4 - 1.194654 = -3.058
// high, its lowest, so that the blank begins at -15.058 and is 877.058 high. PM is at 477.861.
// From the front, at 585 - y, comes off
//
//	50 (its toe kick)  PMS: 15.058 + 2.136 - (4 + 0.205769 - 2.095240) = 15.084
//	107.139 (PM)       PQM: 12 + 0.0065 * 477.861 = 15.106
//	150, 300, 450      12 + 0.0065 * 435, 285, 135 = 14.8275, 13.8525, 12.8775
//	585 to 600.81      12
//
// On the page, what is set out is to the nearest mark, of 0.5; the hundredths are in the cut file.
var surveyByHand = []string{
	"cabinet urn leg 3 928 485 0 wound out 150", "cabinet urn leg 4 1428 485 0.69 wound out 150.5",
	"bay fridge left block, rear end 1505 30 3.76 4 44", "cabinet till leg 2 3548 55 6.57 wound out 156.5",
	"cabinet sink front left corner 3605.5 1850 4.73 4.5", "cabinet trays front right corner 1605.5 1836 0.68 0.5",

	"cabinet urn back 946 794 8.24 8", "cabinet plates back 2151 794 6.54 6.5", "cabinet till back 3530 794 7.28 7.5",

	"GABLE-E left wall hatch top 0 12 589", "150 13 588", "300 13.5 587.5", "450 14.5 586.5", "600 15 586",
	"750 16 535", "762 16 535", "877 16 535",
	"GABLE-E bottom floor right 50 15 862", "107 15 862", "150 15 862", "300 14 863",
	"450 13 864", "585 12 865", "601 12 865",
}

// TestSurveyByHand looks for the figures above among those that the page prints, and for the
// end panel's lines in its cut file.
func TestSurveyByHand(t *testing.T) {
	page := string(filesIn(t, built(t, "servery"))["index.html"])
	var rows []string
	for row := range strings.Lines(plain(page)) {
		rows = append(rows, strings.Join(strings.Fields(row), " "))
	}
	for _, want := range surveyByHand {
		if !slices.Contains(rows, want) {
			t.Errorf("no row says %q", want)
		}
	}
	for _, want := range []string{
		"under cabinet urn, leg 3, 928 mm along the first wall and 485 mm out from it.", "lies 1002 mm above it",
		"Run back stands 5 mm out from the line of wall hatch, where its face stands out most: 2250 mm along and 450 mm up.",
		"Run front stands 3.5 mm out from the line of wall yard, where its face stands out most: 1800 mm along and 862 mm up.",
	} {
		if !strings.Contains(plain(page), want) {
			t.Errorf("the page does not say %q", want)
		}
	}

	var got [][4]float64
	for _, l := range read(t, compiled(t, "servery"))["parts/GABLE-E.dxf"].Lines {
		if l.Layer == "SCRIBE" {
			got = append(got, [4]float64{hundredths(l.From.X), hundredths(l.From.Y), hundredths(l.To.X), hundredths(l.To.Y)})
		}
	}
	want := [][4]float64{
		{0, 12, 15.81, 12}, {15.81, 12, 493.67, 15.11}, {493.67, 15.11, 550.81, 15.08}, // from the rear, at 0
		{15.81, 0, 15.81, 115.06}, {15.81, 115.06, 12, 877.06}, // from below up
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("scribes of the end panel (-by hand +in its file):\n%s", diff)
	}
}

// plain is the text of a page, a row of a table on each line.
func plain(page string) string {
	page = regexp.MustCompile(`</tr>|</p>`).ReplaceAllString(page, "\n")
	page = regexp.MustCompile(`</t[dh]>`).ReplaceAllString(page, " ")
	return html.UnescapeString(regexp.MustCompile(`<[^>]*>`).ReplaceAllString(page, ""))
}

func hundredths(l geom.Length) float64 { return math.Round(l.MM()*100) / 100 }
