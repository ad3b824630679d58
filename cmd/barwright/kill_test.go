package main

import (
	"bytes"
	"flag"
	"maps"
	"math/rand"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

var kills = flag.Int("kills", 12, "how many builds are killed, and how many interrupted")

// program is the command line of the program that is tested.
func program(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("OUTSIDE CHECK SKIPPED: signals are not told to programs here")
	}
	cmd := exec.Command("barwright", args...) // which TestMain has put on the path
	if cmd.Err != nil {
		t.Fatal(cmd.Err)
	}
	return cmd
}

// stopped is a folder that is built in turn from two descriptions, and what it holds of each.
type stopped struct {
	parent, out string
	builds      [2]string // descriptions
	wants       [2]map[string][]byte
	takes       time.Duration // a whole run, about
	now         int           // which is in the folder
	moments     *rand.Rand
}

func newStopped(t *testing.T) *stopped {
	t.Helper()
	s := &stopped{parent: memory(t), moments: rand.New(rand.NewSource(1))}
	s.out = filepath.Join(s.parent, "out")
	for i, step := range []string{"1", "2"} {
		s.builds[i] = filepath.Join(example("steps"), step)
		began := time.Now()
		if said, err := program(t, "build", s.builds[i], "-o", s.out).CombinedOutput(); err != nil {
			t.Fatalf("%v\n%s", err, said)
		}
		s.takes = time.Since(began)
		s.wants[i], s.now = filesIn(t, s.out), i
	}
	if maps.EqualFunc(s.wants[0], s.wants[1], bytes.Equal) {
		t.Fatal("both builds are the same: the test proves nothing")
	}
	return s
}

// stop begins to build the other description and signals at a moment: while it writes, where
// that is asked for, or at any. It wants the folder to be whole after, and tells whether the
// run was ended by the signal, and what it said.
func (s *stopped) stop(t *testing.T, signal syscall.Signal, writing bool) (ended bool, said string) {
	t.Helper()
	cmd := program(t, "build", s.builds[1-s.now], "-o", s.out)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	old := s.litter(t)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	wait := time.Duration(s.moments.Int63n(int64(s.takes)*3/2 + 1))
	for began := time.Now(); writing && time.Since(began) < 5*s.takes; {
		if fresh := s.litter(t); fresh != "" && fresh != old {
			wait /= 2
			break
		}
		time.Sleep(200 * time.Microsecond)
	}
	time.Sleep(wait)
	cmd.Process.Signal(signal)
	cmd.Wait()
	got := filesIn(t, s.out)
	switch {
	case maps.EqualFunc(got, s.wants[s.now], bytes.Equal):
	case maps.EqualFunc(got, s.wants[1-s.now], bytes.Equal):
		s.now = 1 - s.now
	default:
		t.Fatalf("after signal %v the folder is neither the old one nor the new one: %d files", signal, len(got))
	}
	status := cmd.ProcessState.Sys().(syscall.WaitStatus)
	return status.Signaled() && status.Signal() == signal, stderr.String()
}

// litter is what lies beside the folder, empty where nothing does.
func (s *stopped) litter(t *testing.T) string {
	t.Helper()
	entries, err := os.ReadDir(s.parent)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, e := range entries {
		if e.Name() != "out" {
			names = append(names, e.Name())
		}
	}
	return strings.Join(names, " ")
}

// Killed at any moment, a build leaves the old folder or the new one, whole, and the next
// one nothing beside it.
func TestKilledBuilds(t *testing.T) {
	if runtime.GOOS != "linux" {
		t.Skip("OUTSIDE CHECK SKIPPED: this system cannot exchange two names in one step")
	}
	s := newStopped(t)
	killed, littered, fresh := 0, 0, 0
	for i := range *kills {
		before := s.now
		if ended, _ := s.stop(t, syscall.SIGKILL, i%2 == 0); ended {
			killed++
		}
		if s.now != before {
			fresh++
		}
		if s.litter(t) != "" {
			littered++
		}
	}
	t.Logf("%d of %d runs were killed, %d left a staging folder, %d the new folder", killed, *kills, littered, fresh)
	if littered == 0 {
		t.Error("no kill fell into the writing: this test proves nothing")
	}
	if said, err := program(t, "build", s.builds[s.now], "-o", s.out).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	if left := s.litter(t); left != "" {
		t.Errorf("litter: %s", left)
	}
}

// Interrupted at any moment, a build leaves the old folder or the new one, whole, and
// nothing beside it; it says so, and ends by the signal.
func TestInterruptedBuilds(t *testing.T) {
	s := newStopped(t)
	interrupted, writing := 0, 0
	for i := range *kills {
		signal := []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP}[i%3]
		before := s.now
		ended, said := s.stop(t, signal, i%2 == 0)
		told := strings.HasSuffix(said, "barwright: interrupted. What was not finished is as it was.\n")
		switch {
		case !ended && s.now == before:
			t.Errorf("after signal %v it wrote nothing and ended otherwise: %s", signal, said)
		case told && !ended || ended && !told && i%2 == 0 && s.now == before: // earlier it may not be listening yet, and at last not any more
			t.Errorf("after signal %v it said %q", signal, said)
		}
		if strings.Contains(said, "context") {
			t.Errorf("after signal %v it said %q", signal, said)
		}
		if left := s.litter(t); left != "" {
			t.Fatalf("signal %v leaves %s", signal, left)
		}
		if ended {
			interrupted++
		}
		if ended && i%2 == 0 && s.now == before {
			writing++
		}
	}
	t.Logf("%d of %d runs were interrupted, %d of them in the writing", interrupted, *kills, writing)
	if writing == 0 {
		t.Error("no signal fell into the writing: this test proves nothing")
	}
}
