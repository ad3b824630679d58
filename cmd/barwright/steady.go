package main

import (
	"fmt"
	"io"
	"io/fs"
	"os"
	"time"

	"barwright/lang"
)

// A file that is changed while it is read is read so many times, so long apart.
const (
	mostReads = 10
	readEvery = 20 * time.Millisecond
)

// readSteady reads a file as it was at one time: where it grows, shrinks or is written
// meanwhile it is read again.
func readSteady(name string, f *os.File) ([]byte, error) {
	return steady(name, f.Stat, func() ([]byte, error) {
		return bounded(name, io.NewSectionReader(f, 0, lang.MaxFileBytes+1))
	})
}

func steady(name string, stat func() (fs.FileInfo, error), read func() ([]byte, error)) ([]byte, error) {
	for range mostReads {
		before, err := stat()
		if err != nil {
			return nil, err
		}
		text, err := read()
		if err != nil {
			return nil, err
		}
		after, err := stat()
		if err != nil {
			return nil, err
		}
		if before.Size() == after.Size() && before.ModTime().Equal(after.ModTime()) {
			return text, nil
		}
		time.Sleep(readEvery)
	}
	return nil, fmt.Errorf("%s is changed again and again while it is read", name)
}
