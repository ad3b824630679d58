package dxf

import (
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"barwright/compile/model"
	"barwright/emit/dxf/dxftest"
)

// versions are those that files are written in, by the library's names for them.
var versions = [...]struct {
	name string
	Version
}{{"R12", R12}, {"R2000", R2000}}

const manyEntities = 100_000

// counter counts what is written to it.
type counter int64

func (c *counter) Write(b []byte) (int, error) {
	*c += counter(len(b))
	return len(b), nil
}

// BenchmarkWrite writes parts of which each has ten times as much in it as the one
// before; what is allocated does not follow.
func BenchmarkWrite(b *testing.B) {
	for _, entities := range []int{10_000, 100_000, 1_000_000} {
		p := perforated(entities - 1) // and its outline
		for _, version := range versions {
			b.Run(fmt.Sprintf("%dEntities/%s", entities, version.name), func(b *testing.B) {
				opt := Options{Version: version.Version}
				var size counter
				if err := WritePart(&size, p, opt); err != nil {
					b.Fatal(err)
				}
				b.SetBytes(int64(size))
				b.ReportAllocs()
				for b.Loop() {
					if err := WritePart(io.Discard, p, opt); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(float64(entities)*float64(b.N)/b.Elapsed().Seconds(), "entities/s")
			})
		}
	}
}

// rounds is how often either side of BenchmarkAgainstLibrary is run.
const rounds = 3

// BenchmarkAgainstLibrary has python3-ezdxf build and write the same entities in the same
// run, and reports how many times as long it takes. Both write a file. Ours is what a build
// does from a solved part to the closed file, all checks included; the library's is
// building the drawing and saving it, its import and a small drawing before left out. Of
// either the best of three rounds counts, in turns, for a busy machine slows both.
// "times-with-part" counts to our side the making of the solved part too, each vertex from
// nothing, as the library makes its own. It runs so often whatever -benchtime says.
func BenchmarkAgainstLibrary(b *testing.B) {
	python := dxftest.Python(b)
	for _, version := range versions {
		b.Run(version.name, func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "many.dxf")
			theirs, ours, withPart := math.Inf(1), math.Inf(1), math.Inf(1)
			for range rounds {
				theirs = min(theirs, libraryWrites(b, python, version.name, path))
				began := time.Now()
				p := perforated(manyEntities - 1)
				made := time.Since(began).Seconds()
				wrote := weWrite(b, p, version.Version, path)
				ours, withPart = min(ours, wrote), min(withPart, made+wrote)
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(theirs, "library-s")
			b.ReportMetric(ours, "ours-s")
			b.ReportMetric(theirs/ours, "times-as-fast")
			b.ReportMetric(theirs/withPart, "times-with-part")
		})
	}
}

// libraryWrites returns how many seconds the library takes.
func libraryWrites(b *testing.B, python, version, path string) float64 {
	out, err := exec.Command(python, "testdata/write.py", version, strconv.Itoa(manyEntities), path).Output()
	if err != nil {
		b.Fatal(err)
	}
	seconds, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
	if err != nil {
		b.Fatal(err)
	}
	return seconds
}

// weWrite returns how many seconds we take.
func weWrite(b *testing.B, p *model.Part, version Version, path string) float64 {
	began := time.Now()
	file, err := os.Create(path)
	if err != nil {
		b.Fatal(err)
	}
	if err := WritePart(file, p, Options{Version: version}); err != nil {
		b.Fatal(err)
	}
	if err := file.Close(); err != nil {
		b.Fatal(err)
	}
	return time.Since(began).Seconds()
}
