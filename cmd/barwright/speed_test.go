package main

import (
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"
	"strconv"
	"testing"
)

// BenchmarkCheck reads and checks the examples, the boat shed of about 100 parts and the servery of
// about 60.
func BenchmarkCheck(b *testing.B) { benchmarkCommand(b, "check") }

// BenchmarkBuild writes every file of the same examples over those of the build before.
func BenchmarkBuild(b *testing.B) { benchmarkCommand(b, "build") }

func benchmarkCommand(b *testing.B, command string) {
	defer debug.SetGCPercent(debug.SetGCPercent(garbage)) // as the program has it
	for _, example := range []string{"boatshed", "servery"} {
		b.Run(example, func(b *testing.B) {
			args := []string{command, filepath.Join("..", "..", "examples", example)}
			if command == "build" {
				args = append(args, "-o", filepath.Join(b.TempDir(), "out"))
			}
			for b.Loop() {
				if status := run(args, streams{out: io.Discard, err: io.Discard}); status != exitClean {
					b.Fatal(fmt.Errorf("%s ends with status %d", command, status))
				}
			}
		})
	}
}

// BenchmarkOpenPage opens the page of each example in a tab of its own, until it is loaded, painted and
// free to hear what a person does: by the page's own clock, from when it was asked for.
func BenchmarkOpenPage(b *testing.B) {
	for _, example := range []string{"boatshed", "servery"} {
		b.Run(example, func(b *testing.B) {
			page := filepath.Join(built(b, example), "index.html")
			w := browse(b)
			sum := 0.0
			for b.Loop() {
				w = w.tab(b)
				w.open(b, "file://"+page)
				ready, err := strconv.ParseFloat(w.value(b, "new Promise((done) => requestAnimationFrame(() => setTimeout(() => done(performance.now()))))"), 64)
				if err != nil {
					b.Fatal(err)
				}
				sum += ready
			}
			b.ReportMetric(sum/float64(b.N), "ms-to-ready")
		})
	}
}
