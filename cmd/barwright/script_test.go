package main

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"net"
	"net/http"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"

	"barwright/cmd/barwright/loopback"
)

var update = flag.Bool("update", false, "rewrite what the scripts expect")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"barwright": main})
}

// TestScript runs the program as a person does at the command line.
func TestScript(t *testing.T) {
	if _, err := exec.LookPath("git"); err != nil && os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Setup:               commitAs,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"status": status, "bytes": writeBytes, "large": writeLarge, "free": freePort, "served": served, "terminate": terminate},
	})
}

// someone are the variables with which git commits in somebody's name, and knows no
// configuration but a repository's own.
func someone() []string {
	return []string{
		"GIT_CONFIG_NOSYSTEM=1", "GIT_CONFIG_GLOBAL=" + os.DevNull,
		"GIT_AUTHOR_NAME=A", "GIT_AUTHOR_EMAIL=a@example.org", "GIT_COMMITTER_NAME=A", "GIT_COMMITTER_EMAIL=a@example.org",
	}
}

func commitAs(env *testscript.Env) error {
	env.Vars = append(env.Vars, someone()...)
	return nil
}

// inGit runs git in a folder, once for each list of arguments. The test is skipped
// where git is missing.
func inGit(t *testing.T, dir string, commands ...[]string) {
	t.Helper()
	if _, err := exec.LookPath("git"); err != nil {
		if os.Getenv("BARWRIGHT_OUTSIDE") == "required" {
			t.Fatal(err)
		}
		t.Skip("OUTSIDE CHECK SKIPPED: there is no git for a repository to read from:", err)
	}
	for _, args := range commands {
		cmd := exec.Command("git", args...)
		cmd.Dir, cmd.Env = dir, append(os.Environ(), someone()...)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("git %q: %v\n%s", args, err, out)
		}
	}
}

// status runs the program and demands an exit status: status 2 check nowhere.
// What it printed is there for stdout and stderr.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N ARGS...")
	}
	got := 0
	err := ts.Exec("barwright", args[1:]...)
	if exit := new(exec.ExitError); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if args[0] != strconv.Itoa(got) {
		ts.Fatalf("exit status %d, not %s", got, args[0])
	}
}

// writeBytes writes a file that a script cannot hold: bytes FILE then each
// byte in hex.
func writeBytes(ts *testscript.TestScript, neg bool, args []string) {
	var b []byte
	for _, hex := range args[1:] {
		var x byte
		for _, c := range hex {
			x = x<<4 | byte(strings.IndexRune("0123456789abcdef", c))
		}
		b = append(b, x)
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), b, 0o666))
}

// writeLarge writes a file of so many line feeds: large FILE N.
func writeLarge(ts *testscript.TestScript, neg bool, args []string) {
	n, err := strconv.Atoi(args[1])
	ts.Check(err)
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), bytes.Repeat([]byte("\n"), n), 0o666))
}

// freePort names a port that is free: free NAME.
func freePort(ts *testscript.TestScript, neg bool, args []string) {
	l, err := loopback.Listen(0)
	ts.Check(err)
	ts.Setenv(args[0], strconv.Itoa(l.Addr().(*net.TCPAddr).Port))
	ts.Check(l.Close())
}

// served waits for a page that has a text: served PORT TEXT.
func served(ts *testscript.TestScript, neg bool, args []string) {
	for range 500 {
		if reply, err := http.Get("http://localhost:" + args[0]); err == nil {
			page, err := io.ReadAll(reply.Body)
			reply.Body.Close()
			ts.Check(err)
			if bytes.Contains(page, []byte(args[1])) {
				return
			}
		}
		time.Sleep(20 * time.Millisecond)
	}
	ts.Fatalf("port %s does not serve %q", args[0], args[1])
}

// terminate tells the programs in the background to end, as a system does that shuts down.
func terminate(ts *testscript.TestScript, neg bool, args []string) {
	for _, cmd := range ts.BackgroundCmds() {
		ts.Check(cmd.Process.Signal(syscall.SIGTERM))
	}
}
