package main

import (
	"bytes"
	"strings"
	"testing"
)

// TestDiffErrorsFirst tells what stops a build before what is worth knowing of it.
func TestDiffErrorsFirst(t *testing.T) {
	var stdout, stderr bytes.Buffer
	std := streams{out: &stdout, err: &stderr}
	status := run([]string{"diff", "--set-new", "bar_top=60", example("boatshed"), example("boatshed")}, std)
	told := stderr.String()
	last, note := strings.LastIndex(told, "\nerror: "), strings.Index(told, "\nnote: ")
	if status != exitFindings || stdout.Len() > 0 || last < 0 || note < last {
		t.Errorf("status %d, printed %q, told:\n%s", status, stdout.String(), told)
	}
}
