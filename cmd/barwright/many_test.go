package main

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"
)

// What comes of things is handed on in their order, however they end; no more than there
// are processors for are done at once, and all of these.
func TestInOrder(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(3))
	const n = 12
	var running, most atomic.Int64
	var ended [n]chan struct{}
	for i := range ended {
		ended[i] = make(chan struct{})
	}
	var got []int
	inOrder(n, func(i int) int {
		now := running.Add(1)
		for m := most.Load(); now > m && !most.CompareAndSwap(m, now); m = most.Load() {
		}
		if i%3 != 2 { // each third begins when two wait for it
			<-ended[i-i%3+2]
		}
		close(ended[i])
		running.Add(-1)
		return i * i
	}, func(i, square int) {
		if square != i*i {
			t.Errorf("%d came for %d", square, i)
		}
		got = append(got, i)
	})
	if !slices.IsSorted(got) || len(got) != n {
		t.Errorf("handed on in the order %d", got)
	}
	if most.Load() != 3 {
		t.Errorf("%d at once, not 3", most.Load())
	}
	inOrder(0, func(int) int { t.Error("done"); return 0 }, func(int, int) { t.Error("handed on") })
}

// shops are descriptions to build at once: some sound, with findings and without, one with
// errors, one that is not there.
func shops(t *testing.T) []string {
	t.Helper()
	dir := t.TempDir()
	var paths []string
	for _, step := range []string{"1", "2", "3"} {
		paths = append(paths, filepath.Join(dir, "step"+step))
		if err := os.CopyFS(paths[len(paths)-1], os.DirFS(filepath.Join(example("steps"), step))); err != nil {
			t.Fatal(err)
		}
	}
	text, err := os.ReadFile(filepath.Join(paths[0], "bar.hcl"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string][]byte{"wrong": misspelt(text), "odd": append([]byte("given {\n  spare = 1\n}\n"), text...)} {
		if err := os.Mkdir(filepath.Join(dir, name), 0o777); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(dir, name, "bar.hcl"), text, 0o666); err != nil {
			t.Fatal(err)
		}
	}
	return []string{paths[2], filepath.Join(dir, "wrong"), filepath.Join(dir, "missing"), filepath.Join(dir, "odd"), paths[0], paths[1]}
}

// Many builds at once print and write what they do one by one.
func TestManyAtOnce(t *testing.T) {
	paths := shops(t)
	for _, command := range [][]string{{"build"}, {"check"}, {"check", "--format", "json"}, {"check", "--format", "sarif"}} {
		var first [3]string
		for i, procs := range []int{1, 8} {
			previous := runtime.GOMAXPROCS(procs)
			got := ran(t, command, paths...)
			runtime.GOMAXPROCS(previous)
			if i == 0 {
				first = got
			}
			if got != first {
				t.Errorf("%s: eight at once give something else than one by one", command)
			}
		}
		if len(command) > 1 { // one document for all
			continue
		}
		var alone [3]string
		for i, path := range paths {
			got := ran(t, command, path)
			if i > 0 {
				alone[1] += "\n"
			}
			alone[0] += got[0]
			alone[1] += got[1]
			alone[2] += got[2]
		}
		if first != alone {
			t.Errorf("%s: together they give\n%s%s\nnot\n%s%s", command, first[0], first[1], alone[0], alone[1])
		}
	}
}

// ran is what a command prints on standard output and on standard error, and a list of what
// it writes.
func ran(t *testing.T, command []string, paths ...string) [3]string {
	t.Helper()
	out := filepath.Join(memory(t), "out")
	args := slices.Concat(command, paths)
	if command[0] == "build" {
		to := out
		if len(paths) == 1 {
			to = filepath.Join(out, filepath.Base(paths[0]))
		}
		args = append(args, "-o", to)
	}
	var stdout, stderr bytes.Buffer
	status := run(args, streams{out: &stdout, err: &stderr})
	if len(paths) > 1 && status != exitFiles {
		t.Errorf("%s: exit status %d, not that of the worst, %d", command, status, exitFiles)
	}
	var files strings.Builder
	for _, path := range paths {
		dir := filepath.Join(out, filepath.Base(path))
		if _, err := os.Stat(dir); err != nil {
			continue
		}
		written := filesIn(t, dir)
		for _, name := range slices.Sorted(maps.Keys(written)) {
			fmt.Fprintf(&files, "%s/%s %x\n", path, name, sha256.Sum256(written[name]))
		}
	}
	return [3]string{strings.ReplaceAll(stdout.String(), out, "OUT"), strings.ReplaceAll(stderr.String(), out, "OUT"), files.String()}
}

// A build is a function of its files alone: another process at another time, with another
// environment, in another place, with other times of files, gives the same bytes.
func TestPure(t *testing.T) {
	dir := memory(t)
	build := func(name, from string, at time.Time, env ...string) map[string][]byte {
		t.Helper()
		source, out := filepath.Join(dir, name, "bar"), filepath.Join(dir, name, "out")
		if err := os.CopyFS(source, os.DirFS(filepath.Join(example("steps"), "5"))); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(filepath.Join(source, "bar.hcl"), at, at); err != nil {
			t.Fatal(err)
		}
		if from == "." {
			from = source
		}
		arg, err := filepath.Rel(from, source)
		if err != nil {
			t.Fatal(err)
		}
		cmd := program(t, "build", arg, "-o", out)
		cmd.Dir, cmd.Env = from, append(os.Environ(), env...)
		if said, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("%s: %v\n%s", name, err, said)
		}
		return filesIn(t, out)
	}
	year := func(y int) time.Time { return time.Date(y, 2, 3, 4, 5, 6, 0, time.UTC) }
	first := build("first", dir, year(2020), "TZ=UTC", "LC_ALL=C")
	for began := time.Now().Unix(); time.Now().Unix() == began; { // in another second
		time.Sleep(10 * time.Millisecond)
	}
	for name, got := range map[string]map[string][]byte{
		"from another place":     build("place", ".", year(2020), "LC_ALL=tr_TR.UTF-8", "LANG=ar_EG", "TZ=Pacific/Kiritimati"),
		"of files of the past":   build("past", dir, year(1902), "GOMAXPROCS=1", "GOGC=20"),
		"of files of the future": build("future", os.TempDir(), year(2399), "HOME=", "USER=", "TMPDIR=/nowhere", "NO_COLOR=1"),
	} {
		if !maps.EqualFunc(got, first, bytes.Equal) {
			t.Errorf("a build %s gives other files", name)
		}
	}
}

// memory is a folder for a test, in memory where the system has a place for that: so that
// bringing it to the disk does not wait for all that others write.
func memory(t *testing.T) string {
	t.Helper()
	dir, err := os.MkdirTemp("/dev/shm", "barwright-test-*")
	if err != nil {
		return t.TempDir()
	}
	t.Cleanup(func() { os.RemoveAll(dir) })
	return dir
}
