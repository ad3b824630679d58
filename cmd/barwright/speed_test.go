package main

import (
	"fmt"
	"io"
	"path/filepath"
	"testing"
)

// BenchmarkCheck reads and checks the examples, the boat shed of about 100 parts and the servery of
// about 60.
func BenchmarkCheck(b *testing.B) { benchmarkCommand(b, "check") }

// BenchmarkBuild writes every file of the same examples over those of the build before.
func BenchmarkBuild(b *testing.B) { benchmarkCommand(b, "build") }

func benchmarkCommand(b *testing.B, command string) {
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
