package revise

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"barwright/compile"
	"barwright/compile/edittest"
	"barwright/compile/model"
	"barwright/compile/values"
	"barwright/lang"
	"barwright/lang/source"
)

// example reads a description that is shipped.
func example(t testing.TB, name string) source.Files {
	t.Helper()
	files := edittest.Folder(t, filepath.Join("..", "..", "examples", name))
	if len(files) == 0 {
		t.Fatalf("there is no example %s", name)
	}
	return files
}

// built solves a description; it is nil where it has errors.
func built(files source.Files) *model.Model {
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		return nil
	}
	m, _ := compile.Priced(src)
	return m
}

func mustBuild(t testing.TB, files source.Files) *model.Model {
	t.Helper()
	m := built(files)
	if m == nil {
		t.Fatal("it does not build")
	}
	return m
}

// edited puts one text in the place of another, which must stand there once.
func edited(t testing.TB, files source.Files, from, to string) source.Files {
	t.Helper()
	files, found := slices.Clone(files), 0
	for i, f := range files {
		if n := strings.Count(string(f.Text), from); n > 0 {
			found += n
			files[i].Text = []byte(strings.Replace(string(f.Text), from, to, 1))
		}
	}
	if found != 1 {
		t.Fatalf("%q stands %d times", from, found)
	}
	return files
}

// written lists the figures that a description states, each with its place.
func written(t testing.TB, files source.Files) []model.Answer {
	t.Helper()
	src, findings := lang.Read(files)
	if findings.HasErrors() {
		t.Fatal(findings)
	}
	var out []model.Answer
	for _, a := range values.Explain(src) {
		figure := a.Kind == model.AsLength || a.Kind == model.AsNumber
		if a.Origin == model.FromText && figure && a.Written != "rest" {
			out = append(out, a)
		}
	}
	return out
}

// nudged makes one figure larger by an expression.
func nudged(files source.Files, a *model.Answer, by string) source.Files {
	files = slices.Clone(files)
	for i, f := range files {
		if f.Name == a.At.File {
			from, to := a.At.Start.Byte, a.At.End.Byte
			files[i].Text = fmt.Appendf(nil, "%s(%s) + %s%s", f.Text[:from], f.Text[from:to], by, f.Text[to:])
		}
	}
	return files
}
