package main

import (
	"flag"
	"os"
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
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		UpdateScripts:       *update,
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"status": status, "bytes": writeBytes},
	})
}

// status runs the program and demands an exit status: status 2 check nowhere.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N ARGS...")
	}
	var out, errs strings.Builder
	dir, err := os.Getwd()
	ts.Check(err)
	ts.Check(os.Chdir(ts.Getenv("WORK")))
	got := run(args[1:], streams{out: &out, err: &errs})
	ts.Check(os.Chdir(dir))
	ts.Check(os.WriteFile(ts.MkAbs("stdout.txt"), []byte(out.String()), 0o666))
	ts.Check(os.WriteFile(ts.MkAbs("stderr.txt"), []byte(errs.String()), 0o666))
	if args[0] != string(rune('0'+got)) {
		ts.Fatalf("exit status %d, not %s\n%s%s", got, args[0], out.String(), errs.String())
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
