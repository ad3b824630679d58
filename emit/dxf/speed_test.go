package dxf

import (
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

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

func BenchmarkWrite100000Entities(b *testing.B) {
	p := perforated(manyEntities - 1) // and its outline
	for _, version := range versions {
		b.Run(version.name, func(b *testing.B) {
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
			b.ReportMetric(manyEntities*float64(b.N)/b.Elapsed().Seconds(), "entities/s")
		})
	}
}

// BenchmarkAgainstLibrary has python3-ezdxf build and write the same entities
// in the same run, both to a file, and reports how many times as long it takes.
// It runs the library once, whatever -benchtime says: that takes long enough.
func BenchmarkAgainstLibrary(b *testing.B) {
	python := dxftest.Python(b)
	for _, version := range versions {
		b.Run(version.name, func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "many.dxf")
			out, err := exec.Command(python, "testdata/write.py", version.name, strconv.Itoa(manyEntities), path).Output()
			if err != nil {
				b.Fatal(err)
			}
			theirs, err := strconv.ParseFloat(strings.TrimSpace(string(out)), 64)
			if err != nil {
				b.Fatal(err)
			}
			var ours time.Duration
			for b.Loop() {
				began := time.Now()
				file, err := os.Create(path)
				if err != nil {
					b.Fatal(err)
				}
				if err := WritePart(file, perforated(manyEntities-1), Options{Version: version.Version}); err != nil {
					b.Fatal(err)
				}
				if err := file.Close(); err != nil {
					b.Fatal(err)
				}
				ours += time.Since(began)
			}
			b.ReportMetric(theirs, "library-s")
			b.ReportMetric(theirs*float64(b.N)/ours.Seconds(), "times-as-fast")
		})
	}
}
