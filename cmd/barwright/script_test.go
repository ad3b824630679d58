package main

import (
	"errors"
	"flag"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
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
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"status": status, "bytes": writeBytes},
	})
}

// commitAs has git commit in somebody's name, and know no configuration but a
// repository's own.
func commitAs(env *testscript.Env) error {
	env.Setenv("GIT_CONFIG_NOSYSTEM", "1")
	env.Setenv("GIT_CONFIG_GLOBAL", os.DevNull)
	for _, who := range []string{"AUTHOR", "COMMITTER"} {
		env.Setenv("GIT_"+who+"_NAME", "A")
		env.Setenv("GIT_"+who+"_EMAIL", "a@example.org")
	}
	return nil
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
