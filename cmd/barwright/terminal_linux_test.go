package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"
	"unsafe"
)

// pseudoTerminal opens a terminal: what a program writes to it can be read from screen.
func pseudoTerminal(t *testing.T) (screen, terminal *os.File) {
	t.Helper()
	fd, err := syscall.Open("/dev/ptmx", syscall.O_RDWR|syscall.O_NOCTTY|syscall.O_CLOEXEC, 0)
	if err != nil {
		t.Skip("OUTSIDE CHECK SKIPPED: there is no terminal here:", err)
	}
	screen = os.NewFile(uintptr(fd), "screen")
	t.Cleanup(func() { screen.Close() })
	var number, unlocked uint32
	for request, value := range map[uintptr]*uint32{syscall.TIOCGPTN: &number, syscall.TIOCSPTLCK: &unlocked} {
		if _, _, errno := syscall.Syscall(syscall.SYS_IOCTL, uintptr(fd), request, uintptr(unsafe.Pointer(value))); errno != 0 {
			t.Fatal(errno)
		}
	}
	if terminal, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|syscall.O_NOCTTY, 0); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { terminal.Close() })
	return screen, terminal
}

// occupy stands in for a build that is writing a folder, until it is freed.
func occupy(t *testing.T, out string) (free func()) {
	t.Helper()
	root := filepath.Join(filepath.Dir(out), "."+filepath.Base(out)+".barwright-1")
	if err := os.Mkdir(root, 0o777); err != nil {
		t.Fatal(err)
	}
	marker, err := os.Create(filepath.Join(root, "marker"))
	if err == nil {
		err = syscall.Flock(int(marker.Fd()), syscall.LOCK_EX)
	}
	if err != nil {
		t.Fatal(err)
	}
	return func() { marker.Close() }
}

// What is left on a terminal when a build has said what it does is what would be printed
// without; before that there is one line.
func TestProgressOnATerminal(t *testing.T) {
	for _, env := range []string{"NO_COLOR=", "NO_COLOR=1"} {
		out := filepath.Join(memory(t), "out")
		free := occupy(t, out)
		screen, terminal := pseudoTerminal(t)
		cmd := program(t, "build", example("steps")+"/1", "-o", out)
		cmd.Stdout, cmd.Stderr, cmd.Env = terminal, terminal, append(os.Environ(), "TERM=xterm", env)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		terminal.Close()
		var seen strings.Builder
		buffer := make([]byte, 4096)
		for freed := false; ; {
			n, err := screen.Read(buffer)
			seen.Write(buffer[:n])
			if !freed && strings.Contains(seen.String(), "steps/1: writing") {
				free()
				freed = true
			}
			if err != nil { // the program has ended
				break
			}
		}
		free()
		if err := cmd.Wait(); err != nil {
			t.Fatalf("%v: %s", err, seen.String())
		}
		text := seen.String()
		line := "\r" + example("steps") + "/1: writing"
		if !strings.Contains(text, line) || strings.Contains(text, "\x1b") {
			t.Errorf("%s: the terminal gets %q", env, text)
		}
		said, left := text[:strings.LastIndex(text, "\r../")+1], text[strings.LastIndex(text, "\r../")+1:]
		if strings.Contains(said, "\n") || strings.TrimSpace(said[strings.LastIndex(strings.TrimRight(said, " \r"), "writing")+len("writing"):]) != "" {
			t.Errorf("%s: before the result the terminal gets %q", env, said)
		}
		if want := fmt.Sprintf("%s/1: 7 parts, 0 router programs; 29 files in %s\r\n", example("steps"), out); left != want {
			t.Errorf("%s: left is %q, not %q", env, left, want)
		}
	}
}

// Where nobody can see a line written over, there is none.
func TestNoProgressElsewhere(t *testing.T) {
	for name, term := range map[string]string{"a pipe": "xterm", "a plain terminal": "dumb", "an unknown terminal": ""} {
		out := filepath.Join(memory(t), "out")
		free := occupy(t, out)
		cmd := program(t, "build", example("steps")+"/1", "-o", out)
		cmd.Env = append(os.Environ(), "TERM="+term)
		var printed strings.Builder
		var screen, terminal *os.File
		if name == "a pipe" {
			cmd.Stderr = &printed
		} else {
			screen, terminal = pseudoTerminal(t)
			cmd.Stderr = terminal
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Second) // a line would be there by now
		free()
		if err := cmd.Wait(); err != nil {
			t.Fatal(name, err)
		}
		if screen != nil {
			fmt.Fprint(terminal, "end")
			buffer := make([]byte, 4096)
			n, _ := screen.Read(buffer)
			printed.WriteString(strings.TrimSuffix(string(buffer[:n]), "end"))
		}
		if printed.Len() > 0 {
			t.Errorf("%s gets %q", name, printed.String())
		}
	}
}
