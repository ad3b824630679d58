package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"barwright/compile/view/seen"
	"barwright/emit/dxf"
	"barwright/emit/dxf/dxftest"
)

// TestDrawingsAreWritten builds an example whose table asks for drawings, and looks for
// one of each view; the other examples have none (TestExamplesWriteEverything).
func TestDrawingsAreWritten(t *testing.T) {
	dir, out := t.TempDir(), filepath.Join(t.TempDir(), "out")
	if err := os.CopyFS(dir, os.DirFS(example("servery"))); err != nil {
		t.Fatal(err)
	}
	table := "table \"shop\" {\n  drawings = true\n  format = \"r2000\"\n}\n"
	if err := os.WriteFile(filepath.Join(dir, "table.hcl"), []byte(table), 0o666); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	if status := run([]string{"build", dir, "-o", out}, streams{out: &stdout, err: &stderr}); status != exitClean {
		t.Fatalf("exit status %d\n%s", status, stderr.String())
	}
	files, drawn := filesIn(t, out), 0
	for _, v := range compiled(t, "servery").Views {
		d, err := dxftest.ReadDrawing(bytes.NewReader(files["drawings/"+v.Name+".dxf"]))
		if err != nil || d.Version != "AC1015" {
			t.Errorf("drawing %s is not read back as R2000: %v", v.Name, err)
		}
	}
	for name := range files {
		if strings.HasPrefix(name, "drawings/") && strings.HasSuffix(name, ".dxf") {
			drawn++
		}
	}
	if want := len(compiled(t, "servery").Views); drawn != want || want < 20 {
		t.Errorf("%d drawings of %d views", drawn, want)
	}
}

// TestExamplesOutsideDrawings has every view of both examples audited by an independent
// reader, in both versions.
func TestExamplesOutsideDrawings(t *testing.T) {
	for _, name := range examples {
		t.Run(name, func(t *testing.T) {
			dir := t.TempDir()
			var files []string
			for _, v := range compiled(t, name).Views {
				shown := seen.Of(&v)
				for suffix, version := range map[string]dxf.Version{"-r12.dxf": dxf.R12, "-r2000.dxf": dxf.R2000} {
					var b bytes.Buffer
					if err := dxf.WriteDrawing(&b, &shown, dxf.Options{Version: version}); err != nil {
						t.Fatal(err)
					}
					file := filepath.Join(dir, v.Name+suffix)
					if err := os.WriteFile(file, b.Bytes(), 0o666); err != nil {
						t.Fatal(err)
					}
					files = append(files, file)
				}
			}
			dxftest.Audit(t, files)
		})
	}
}
