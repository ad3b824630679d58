package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"sync"
	"testing"
	"time"

	"barwright/compile"
	"barwright/compile/manybuild"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/lang"
	"barwright/lang/finding"
)

// viewed is a view that is being served, of a copy of an example.
type viewed struct {
	dir     string // of the description
	address string
	events  *bufio.Reader
	end     func() // and wait
}

// serveCopy serves a copy of an example, which may have been changed before.
func serveCopy(t testing.TB, example string, change func(dir string)) *viewed {
	t.Helper()
	return serveBy(t, compile.Shown, example, change)
}

// serveBy serves what a compiler makes of a copy.
func serveBy(t testing.TB, compiled compiler, example string, change func(dir string)) *viewed {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "bar")
	if err := os.CopyFS(dir, os.DirFS(filepath.Join(root, "examples", example))); err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(dir)
	}
	o := options{args: []string{dir}, port: "0"}
	first, places := o.look(dir, text{})
	if first.err != nil {
		t.Fatal(first.err)
	}
	l, err := o.listen()
	if err != nil {
		t.Fatal(err)
	}
	v := &viewed{dir: dir, address: "http://" + l.Addr().String() + "/"}
	ctx, cancel := context.WithCancel(t.Context())
	var served sync.WaitGroup
	served.Go(func() {
		by := viewer{options: o, std: streams{out: io.Discard, err: io.Discard}, compiled: compiled}
		if err := by.serve(ctx, l, first, places); err != nil {
			t.Error(err)
		}
	})
	v.end = func() { cancel(); served.Wait() }
	t.Cleanup(v.end)
	return v
}

// listen begins to listen to events, and reads the first.
func (v *viewed) listen(t testing.TB) {
	t.Helper()
	reply, err := http.Get(v.address + "events")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { reply.Body.Close() })
	v.events = bufio.NewReader(reply.Body)
	v.event(t)
}

// event waits for the next event, and gives its number.
func (v *viewed) event(t testing.TB) string {
	t.Helper()
	for {
		line, err := v.events.ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		if number, ok := strings.CutPrefix(line, "data: "); ok {
			return strings.TrimSpace(number)
		}
	}
}

// page is what is served now.
func (v *viewed) page(t testing.TB) string {
	t.Helper()
	reply, err := http.Get(v.address)
	if err != nil {
		t.Fatal(err)
	}
	defer reply.Body.Close()
	text, err := io.ReadAll(reply.Body)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func (v *viewed) read(t testing.TB, name string) []byte {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(v.dir, name))
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func (v *viewed) write(t testing.TB, name string, text []byte) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(v.dir, name), text, 0o666); err != nil {
		t.Fatal(err)
	}
}

// revisedTop is the text of a description with its bar top 1/4 in or so lower, and as it was.
func revisedTop(t testing.TB, v *viewed) [2][]byte {
	t.Helper()
	text := v.read(t, "bar.hcl")
	for _, to := range [][2]string{{"bar_top     = 42", "bar_top     = 41.75"}, {"bar_top     = 1110", "bar_top     = 1104"}} {
		if lower := bytes.Replace(text, []byte(to[0]), []byte(to[1]), 1); !bytes.Equal(lower, text) {
			return [2][]byte{lower, text}
		}
	}
	t.Fatal("there is no bar top to lower")
	return [2][]byte{}
}

// manyCabinets serves a build of so many, and gives the text of its halls with one cabinet 3/32 in
// narrower, and as it was.
func manyCabinets(t testing.TB, n int) (*viewed, [2][]byte) {
	t.Helper()
	var halls []byte
	v := serveBy(t, compile.Shown, "boatshed", func(dir string) {
		if err := errors.Join(os.RemoveAll(dir), os.Mkdir(dir, 0o777)); err != nil {
			t.Fatal(err)
		}
		for _, f := range manybuild.Files(n, "in", 1) {
			if f.Name == "hall000.hcl" {
				halls = f.Text
			}
			if err := os.WriteFile(filepath.Join(dir, f.Name), f.Text, 0o666); err != nil {
				t.Fatal(err)
			}
		}
	})
	narrower := bytes.Replace(halls, []byte("width = 24.2188"), []byte("width = 24.125"), 1)
	if bytes.Equal(narrower, halls) {
		t.Fatal("there is no cabinet to make narrower")
	}
	return v, [2][]byte{narrower, halls}
}

// savings are what is saved: the examples, and a build of 1000 cabinets.
func savings(b *testing.B, save func(b *testing.B, v *viewed, file string, edits [2][]byte)) {
	defer debug.SetGCPercent(debug.SetGCPercent(garbage)) // as the program has it
	for _, example := range []string{"boatshed", "servery"} {
		b.Run(example, func(b *testing.B) {
			v := serveCopy(b, example, nil)
			save(b, v, "bar.hcl", revisedTop(b, v))
		})
	}
	b.Run("1000", func(b *testing.B) {
		v, edits := manyCabinets(b, 1000)
		save(b, v, "hall000.hcl", edits)
	})
}

// BenchmarkSaveToEvent is the time from a save to the event that tells of it.
func BenchmarkSaveToEvent(b *testing.B) {
	savings(b, func(b *testing.B, v *viewed, file string, edits [2][]byte) {
		v.listen(b)
		least := time.Hour // what it takes where nothing else runs
		for i := 0; b.Loop(); i++ {
			b.StopTimer()
			time.Sleep(300 * time.Millisecond)
			b.StartTimer()
			saved := time.Now()
			v.write(b, file, edits[i%2])
			v.event(b)
			least = min(least, time.Since(saved))
		}
		b.ReportMetric(float64(least.Milliseconds()), "ms-least")
	})
}

// BenchmarkSaveToRedraw is the time from a save to the page in a browser that is redrawn.
func BenchmarkSaveToRedraw(b *testing.B) {
	savings(b, func(b *testing.B, v *viewed, file string, edits [2][]byte) {
		w := browse(b)
		w.open(b, v.address)
		least := time.Hour // what it takes where nothing else runs
		for i := 0; b.Loop(); i++ {
			b.StopTimer()
			time.Sleep(300 * time.Millisecond)
			w.value(b, `window.drawn = new Promise((done) => document.addEventListener("redrawn", () => requestAnimationFrame(() => setTimeout(done)), { once: true })); 0`)
			b.StartTimer()
			saved := time.Now()
			v.write(b, file, edits[i%2])
			w.value(b, "window.drawn.then(() => 1)")
			least = min(least, time.Since(saved))
		}
		b.ReportMetric(float64(least.Milliseconds()), "ms-least")
	})
}

// misspelt is a description that cannot be built.
func misspelt(text []byte) []byte { return bytes.Replace(text, []byte(`run "`), []byte(`rn "`), 1) }

// page states, told apart by what the page says of the text.
const (
	noBuild   = "There is no build to show yet"
	lastBuild = "Shown below is the last build that had none"
)

// sees demands an event and what the page then has and has not.
func (v *viewed) sees(t *testing.T, number string, has, lacks []string) {
	t.Helper()
	if got := v.event(t); got != number {
		t.Errorf("event %s, not %s", got, number)
	}
	page := v.page(t)
	for _, text := range has {
		if !strings.Contains(page, text) {
			t.Errorf("page %s lacks %q", number, text)
		}
	}
	for _, text := range lacks {
		if strings.Contains(page, text) {
			t.Errorf("page %s has %q", number, text)
		}
	}
}

// TestViewFollows saves as editors do, and sees each state in its order and none between.
func TestViewFollows(t *testing.T) {
	v := serveCopy(t, "steps/5", nil)
	v.listen(t)
	name := filepath.Join(v.dir, "bar.hcl")
	text := v.read(t, "bar.hcl")
	as := func(top string) []byte {
		changed := bytes.Replace(text, []byte("bar_top = 42"), []byte("bar_top = "+top), 1)
		if bytes.Equal(changed, text) {
			t.Fatal("there is no bar top to change")
		}
		return changed
	}
	fact := func(top string) string { return "<dt>bar_top</dt><dd>" + top + "</dd>" }
	sound := []string{noBuild, lastBuild}

	v.write(t, "bar.hcl.new", as("43"))
	if err := os.Rename(name+".new", name); err != nil {
		t.Fatal(err)
	}
	v.sees(t, "2", []string{fact("43")}, sound)

	if err := os.Rename(name, name+"~"); err != nil { // then the new one is written in two steps
		t.Fatal(err)
	}
	f, err := os.Create(name)
	if err != nil {
		t.Fatal(err)
	}
	whole := as("44")
	for _, half := range [][]byte{whole[:len(whole)/2], whole[len(whole)/2:]} {
		if _, err := f.Write(half); err != nil {
			t.Fatal(err)
		}
		time.Sleep(lookEvery)
	}
	f.Close()
	v.sees(t, "3", []string{fact("44")}, sound)

	v.write(t, "bar.hcl", misspelt(as("45")))
	v.sees(t, "4", []string{fact("44"), lastBuild, "<strong>1 error</strong>", "There is no block &#34;rn&#34; at the top of a file.\n\n  Mend: did you mean &#34;run&#34;?\n"}, []string{noBuild})
	v.write(t, "bar.hcl", as("45"))
	v.sees(t, "5", []string{fact("45")}, sound)

	v.write(t, "more.hcl", []byte("given {\n  bar_top = 1\n}\n")) // of the same name
	v.sees(t, "6", []string{fact("45"), lastBuild, "more.hcl:2"}, []string{noBuild})
	if err := os.Remove(filepath.Join(v.dir, "more.hcl")); err != nil {
		t.Fatal(err)
	}
	v.sees(t, "7", []string{fact("45")}, sound)

	if err := os.Rename(name, name+"~"); err != nil {
		t.Fatal(err)
	}
	v.sees(t, "8", []string{fact("45"), lastBuild, "build-missing"}, []string{noBuild})
	if err := os.Rename(name+"~", name); err != nil {
		t.Fatal(err)
	}
	v.sees(t, "9", []string{fact("45")}, sound)
}

// TestViewTakesIn follows a file that is taken in, from before it is there.
func TestViewTakesIn(t *testing.T) {
	v := serveCopy(t, "steps/5", func(dir string) {
		name := filepath.Join(dir, "bar.hcl")
		text, err := os.ReadFile(name)
		if err == nil {
			err = os.WriteFile(name, append(text, "\ninclude \"shop/more.hcl\" {}\n"...), 0o666)
		}
		if err == nil {
			err = os.Mkdir(filepath.Join(dir, "shop"), 0o777)
		}
		if err != nil {
			t.Fatal(err)
		}
	})
	v.listen(t)
	if page := v.page(t); !strings.Contains(page, noBuild) || !strings.Contains(page, "There is no file shop/more.hcl.") {
		t.Error("the first page does not tell of the file that is not there")
	}
	v.write(t, "shop/more.hcl", []byte("given {\n  spare = 3\n}\n"))
	v.sees(t, "2", []string{"<dt>spare</dt><dd>3</dd>"}, []string{noBuild, lastBuild})
	v.write(t, "shop/more.hcl", []byte("given {\n  spare = 4\n}\n"))
	v.sees(t, "3", []string{"<dt>spare</dt><dd>4</dd>"}, []string{noBuild, lastBuild})
}

// TestViewFault goes on after a mistake of barwright's own, in compiling and in writing the page.
func TestViewFault(t *testing.T) {
	v := serveBy(t, func(src *lang.Source) (*model.Model, finding.List) {
		m, findings := compile.Compile(src)
		for _, g := range m.Givens {
			switch {
			case g.Name == "bar_top" && g.Value == "43":
				panic("no part of that name")
			case g.Name == "bar_top" && g.Value == "44":
				m.Views = append(m.Views, model.View{Shapes: []model.Shape{{Kind: model.ShapePanel, Shade: 99}}})
			}
		}
		return m, findings
	}, "steps/5", nil)
	v.listen(t)
	text := v.read(t, "bar.hcl")
	save := func(top string) {
		v.write(t, "bar.hcl", bytes.Replace(text, []byte("bar_top = 42"), []byte("bar_top = "+top), 1))
	}
	fact := func(top string) string { return "<dt>bar_top</dt><dd>" + top + "</dd>" }
	save("43")
	v.sees(t, "2", []string{fact("42"), lastBuild, "<strong>1 error</strong>", "an internal error: barwright itself", "It said: no part of that name"}, []string{".go:"})
	save("44")
	v.sees(t, "3", []string{fact("42"), lastBuild, "an internal error: barwright itself", "index out of range"}, []string{noBuild})
	save("45")
	v.sees(t, "4", []string{fact("45")}, []string{noBuild, lastBuild})
}

// TestViewEnds ends while a browser listens.
func TestViewEnds(t *testing.T) {
	v := serveCopy(t, "steps/1", nil)
	v.listen(t)
	v.end()
	if line, err := v.events.ReadString('\n'); err == nil && line != "\n" {
		t.Errorf("after the end there is %q", line)
	}
	if _, err := http.Get(v.address); err == nil {
		t.Error("it answers after the end")
	}
}

// TestBuildHasNoLiveScript keeps what is served out of what is written.
func TestBuildHasNoLiveScript(t *testing.T) {
	b, err := options{}.solve(filepath.Join(root, "examples", "steps", "1"), compile.Compile)
	if err != nil || b.model == nil {
		t.Fatal(err, b.findings)
	}
	var page bytes.Buffer
	files, err := outputs(b.model, view.Drawings(b.model), "")
	if err == nil {
		err = files[0].Write(&page)
	}
	if err != nil {
		t.Fatal(err)
	}
	for _, word := range []string{"EventSource", "connect-src", "fetch("} {
		if strings.Contains(page.String(), word) {
			t.Errorf("%s has %q", files[0].Name, word)
		}
	}
}
