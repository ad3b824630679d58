package main

import (
	"bytes"
	"errors"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"testing"
	"time"
)

// wrongTimes are what a clock that was set wrong leaves as the times of files.
var wrongTimes = []time.Time{
	time.Unix(0, 0).UTC(),
	time.Date(1902, 1, 1, 12, 0, 0, 0, time.UTC),
	time.Date(2400, 1, 1, 12, 0, 0, 0, time.UTC),
}

// date gives a folder and all in it a time.
func date(t *testing.T, dir string, at time.Time) {
	t.Helper()
	err := filepath.WalkDir(dir, func(path string, _ fs.DirEntry, err error) error {
		return errors.Join(err, os.Chtimes(path, at, at))
	})
	if err != nil {
		t.Fatal(err)
	}
}

// A clock that was wrong when the text was written, wrong when the last build was, or steps
// backwards between two builds changes nothing: the text of now is built, to the byte, over
// whatever stands there, and what a build that was killed has left goes.
func TestClockSetWrong(t *testing.T) {
	dir := memory(t)
	texts := [2]string{filepath.Join(dir, "a"), filepath.Join(dir, "b")}
	var wants [2]map[string][]byte
	for i, text := range texts {
		if err := os.CopyFS(text, os.DirFS(filepath.Join(example("steps"), []string{"1", "2"}[i]))); err != nil {
			t.Fatal(err)
		}
		wants[i] = buildInto(t, text, filepath.Join(dir, "want"))
	}
	if maps.EqualFunc(wants[0], wants[1], bytes.Equal) {
		t.Fatal("both builds are the same: the test proves nothing")
	}
	out := filepath.Join(dir, "out")
	for i, then := range wrongTimes {
		now := wrongTimes[(i+1)%len(wrongTimes)] // back twice, and forwards once
		date(t, texts[0], then)
		if !maps.EqualFunc(buildInto(t, texts[0], out), wants[0], bytes.Equal) {
			t.Errorf("a text of %d gives other files", then.Year())
		}
		killed := filepath.Join(dir, ".out.barwright-1")
		if err := os.CopyFS(filepath.Join(killed, "new"), os.DirFS(out)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(killed, "marker"), nil, 0o600); err != nil {
			t.Fatal(err)
		}
		date(t, killed, then)
		for i, text := range texts { // the same again, then another
			date(t, out, then)
			date(t, text, now)
			if !maps.EqualFunc(buildInto(t, text, out), wants[i], bytes.Equal) {
				t.Errorf("a text of %d over a build of %d gives other files", now.Year(), then.Year())
			}
		}
		if got := folders(t, dir); got != "a b out want" {
			t.Errorf("a build in %d after one in %d leaves %s", now.Year(), then.Year(), got)
		}
	}
}

// buildInto runs the built program, and gives what then stands in the folder.
func buildInto(t *testing.T, text, out string) map[string][]byte {
	t.Helper()
	if said, err := program(t, "build", text, "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	return filesIn(t, out)
}

// Whatever saves are dated, view shows each, and the text of the last.
func TestViewClockSetWrong(t *testing.T) {
	v := serveCopy(t, "steps/5", func(dir string) { date(t, dir, wrongTimes[len(wrongTimes)-1]) })
	v.listen(t)
	text := v.read(t, "bar.hcl")
	for i, at := range slices.Concat(wrongTimes, wrongTimes) { // forwards, and back between the rounds
		top := strconv.Itoa(43 + i)
		saved := filepath.Join(v.dir, "bar.hcl~")
		if err := os.WriteFile(saved, bytes.Replace(text, []byte("bar_top = 42"), []byte("bar_top = "+top), 1), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(saved, at, at); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(saved, filepath.Join(v.dir, "bar.hcl")); err != nil {
			t.Fatal(err)
		}
		v.sees(t, strconv.Itoa(2+i), []string{"<dt>bar_top</dt><dd>" + top + "</dd>"}, []string{noBuild, lastBuild})
	}
}
