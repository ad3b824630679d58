package revise

import (
	"strings"
	"testing"

	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/lang/length"
)

// BenchmarkCompare compares two builds of 1 000 cabinets, no two alike, which differ in
// the width of one of them, or in the height of all; the latter is tried both ways.
func BenchmarkCompare(b *testing.B) {
	files := manybuild.Files(1000, "in", 1)
	const cabinet = "cabinet \"c500\" {\n    width = "
	base := mustBuild(b, files)
	wider := mustBuild(b, edited(b, files, cabinet, cabinet+"0.5 + "))
	lower := mustBuild(b, edited(b, files, "height   = 34.5", "height   = 34"))
	for _, test := range []struct {
		name     string
		old, new *model.Model
	}{{"one_wider", base, wider}, {"all_lower", base, lower}, {"all_higher", lower, base}} {
		b.Run("1000_cabinets/"+test.name, func(b *testing.B) {
			b.ReportAllocs()
			var r *model.Revision
			for b.Loop() {
				r = Compare(test.old, test.new, Options{Within: length.Inch / 64})
			}
			for kind := model.Unchanged; kind <= model.Dropped; kind++ {
				b.ReportMetric(float64(r.Count(kind)), strings.ReplaceAll(kind.String(), " ", "_"))
			}
		})
	}
}

// BenchmarkChanges compares the values and places of such builds alone: of nearly all cabinets
// something moved, or nothing did.
func BenchmarkChanges(b *testing.B) {
	files := manybuild.Files(1000, "in", 1)
	base, lower := mustBuild(b, files), mustBuild(b, edited(b, files, "height   = 34.5", "height   = 34"))
	for name, other := range map[string]*model.Model{"all_lower": lower, "nothing": base} {
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				changes(base, other)
			}
		})
	}
}
