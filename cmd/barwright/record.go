package main

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"barwright/compile/model"
	"barwright/emit/record"
)

// recordName is what build calls the record in the folder that it writes.
const recordName = "model.json"

// maxRecordBytes bounds a file that may be the record of a build. That of a thousand
// cabinets has a fifth of it.
const maxRecordBytes = 1 << 28

// isRecord tells the record of a build from a description: no description begins with
// a brace.
func isRecord(name string, text []byte) bool {
	return bytes.HasPrefix(bytes.TrimLeft(text, " \t\r\n"), []byte("{")) || filepath.Ext(name) == ".json"
}

// recordIn is the path of the record in a folder that build wrote; any other path is
// left as it is.
func recordIn(path string) string {
	record := filepath.Join(path, recordName)
	if _, err := os.Stat(record); err != nil || len(hclFiles(path)) > 0 {
		return path
	}
	return record
}

// readRecord reads the record in a file, or in a folder that build wrote; ok is false of
// a folder with a description, and of what is none.
func (o options) readRecord(path string) (m *model.Model, ok bool, err error) {
	path = recordIn(path)
	info, err := os.Stat(path)
	if err != nil || !info.Mode().IsRegular() {
		return nil, false, err
	}
	f, err := os.Open(path)
	if err != nil {
		return nil, false, err
	}
	defer f.Close()
	text := bufio.NewReader(f)
	if head, _ := text.Peek(512); !isRecord(path, head) {
		return nil, false, nil
	}
	m, err = o.recorded(path, text)
	return m, true, err
}

// recorded reads a record, whose givens are what they were. Its errors begin with the name.
func (o options) recorded(name string, text io.Reader) (*model.Model, error) {
	if len(o.set)+len(o.setFiles) > 0 {
		return nil, misused(name + " is the record of a build: its givens take no other values")
	}
	bounded := &io.LimitedReader{R: text, N: maxRecordBytes}
	m, _, err := record.Read(bounded)
	switch {
	case bounded.N == 0:
		return nil, fmt.Errorf("%s has %d bytes or more, which no record has", name, maxRecordBytes)
	case err != nil:
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return m, nil
}
