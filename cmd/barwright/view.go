package main

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"syscall"
	"time"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/follow"
	"barwright/cmd/barwright/loopback"
	"barwright/compile"
	"barwright/compile/model"
	"barwright/emit/page"
	"barwright/lang/finding"
)

// viewPort is the port of the page where none is asked for and it is free; a page that is
// still open in a browser finds the next view there.
const viewPort = 8371

func viewCommand() command {
	return command{
		name: "view", args: "PATH", about: "show the build in a browser while it is written",
		help: fmt.Sprintf(`Serves the page of a build to the browsers of this machine, prints its address,
and follows the files: what is saved is drawn anew at once. Where the text is
wrong, the page says so over the last build without errors. It writes nothing,
and ends with Ctrl-C.

Without --port it takes port %d, or any that is free where that is taken.
`, viewPort),
		flags: func(f *pflag.FlagSet, o *options) {
			f.StringVar(&o.port, "port", "", "serve on port `N`, 0 for any that is free")
			inputFlags(f, o)
		},
		run:  viewBuild,
		ends: true,
	}
}

// viewBuild serves a build until it is told to end.
func viewBuild(o options, std streams) int {
	if wrong := o.unviewable(); wrong != "" {
		return misuse(std, wrong)
	}
	first, places := o.look(o.args[0])
	if first.err != nil {
		return failed(std, first.err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // whoever asks twice does not wait
	l, err := o.listen()
	if err != nil {
		return failed(std, err)
	}
	defer l.Close()
	v := viewer{options: o, std: std, compiled: compile.Compile}
	if err := v.serve(ctx, l, first, places); err != nil {
		return failed(std, err)
	}
	return exitClean
}

// unviewable says what is wrong with the arguments, empty where nothing is.
func (o options) unviewable() string {
	if len(o.args) != 1 || o.args[0] == "" {
		return "name one description: a file, or a folder of *.hcl files"
	}
	if _, err := strconv.ParseUint(cmp.Or(o.port, "0"), 10, 16); err != nil {
		return fmt.Sprintf("--port is a number from 0 to 65535, not %q", o.port)
	}
	return o.unusable()
}

// listen takes the port that is asked for.
func (o options) listen() (net.Listener, error) {
	port, _ := strconv.Atoi(cmp.Or(o.port, strconv.Itoa(viewPort))) // unviewable has read it
	l, err := loopback.Listen(port)
	switch {
	case err != nil && o.port == "":
		return loopback.Listen(0)
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, fmt.Errorf("port %d is taken; name another with --port, or leave it out for one that is free", port)
	case err != nil:
		return nil, fmt.Errorf("port %d: %w", port, err)
	}
	return l, nil
}

// lookEvery is how often files are looked at. What follows are numbers of such looks for
// which files must stay as they are before they are believed.
const (
	lookEvery = 10 * time.Millisecond

	quietSound = 4  // without errors
	quietWrong = 10 // with errors, as half a text has
	quietGone  = 30 // a file that was there is gone or empty, as between two steps of an editor
)

// serve serves what is read first, then what is saved, until the context ends.
func (v *viewer) serve(ctx context.Context, l net.Listener, first text, places []string) error {
	shown, err := v.draw(v.compile(first))
	if err != nil {
		return err
	}
	port := l.Addr().(*net.TCPAddr).Port
	server := loopback.New(port, page.EventsPath, page.LivePolicy().String(), shown)
	fmt.Fprintf(v.std.out, "http://%s:%d/\n", loopback.Address, port)

	ctx, end := context.WithCancelCause(ctx)
	defer end(nil)
	ticks := time.NewTicker(lookEvery)
	defer ticks.Stop()
	followed := make(chan struct{})
	go func() {
		defer close(followed)
		follow.Files[text, result]{
			Read: func() (text, []string) { return v.look(v.args[0]) }, Same: text.same,
			Build: v.compile, Quiet: text.quiet,
			Show: func(_ text, b result) {
				shown, err := v.draw(b)
				if err != nil {
					end(err)
					return
				}
				server.Show(shown)
			},
		}.Follow(ctx, first, places, ticks.C)
	}()
	err = server.Serve(ctx, l)
	end(err)
	<-followed
	if cause := context.Cause(ctx); err == nil && !errors.Is(cause, context.Canceled) {
		err = cause
	}
	return err
}

// viewer draws pages, one after another.
type viewer struct {
	options
	std      streams
	compiled compiler
	number   int          // of pages
	last     *model.Model // built without errors; nil where none was
}

// draw draws the page of a text that is built, and tells the terminal.
func (v *viewer) draw(b result) (loopback.Page, error) {
	v.number++
	html, err := v.page(&b)
	if broken := (*fault)(nil); errors.As(err, &broken) { // the last build could be drawn
		b.model, b.err = nil, err
		html, err = v.page(&b)
	}
	if err != nil {
		return loopback.Page{}, err
	}
	if b.model != nil {
		v.last = b.model
	}
	return loopback.Page{Number: v.number, HTML: html}, v.tell(&b)
}

// page writes the page of a build, or of the last one with what is amiss with this.
func (v *viewer) page(b *result) ([]byte, error) {
	live := page.Live{Name: filepath.Base(filepath.Clean(v.args[0])), Number: v.number, Model: b.model}
	if b.model == nil {
		live.Model = v.last
		live.Errors, live.Amiss = b.amiss()
	}
	var html bytes.Buffer
	var err error
	broken := rescued(func() { err = page.WriteLive(&html, live) })
	return html.Bytes(), cmp.Or(broken, err)
}

// tell tells the terminal what check would, and where barwright itself went wrong.
func (v *viewer) tell(b *result) error {
	if b.err != nil {
		failed(v.std, b.err)
		if broken := (*fault)(nil); errors.As(b.err, &broken) {
			fmt.Fprintf(v.std.err, "\n%s", broken.stack)
		}
		return nil
	}
	err := b.answer(v.std)
	if b.model != nil {
		fmt.Fprintln(v.std.err, b.line())
	} else {
		errs, _ := b.amiss()
		fmt.Fprintf(v.std.err, "\n%s: %s\n", b.path, errs)
	}
	return err
}

// amiss is what stops a build, as a terminal prints it, and how much of it there is.
func (b *result) amiss() (errs, said string) {
	var out bytes.Buffer
	if b.err != nil {
		failed(streams{err: &out}, b.err)
		return finding.Counted(1, "error"), out.String()
	}
	b.answer(streams{err: &out}) // memory takes it all
	return finding.Counted(b.findings.Count(finding.Error), "error"), out.String()
}

// compile builds a text.
func (v *viewer) compile(t text) (b result) {
	path := v.args[0]
	if t.err != nil {
		return result{path: path, err: t.err}
	}
	if err := rescued(func() { b = solved(path, t.src, t.findings, v.compiled) }); err != nil {
		return result{path: path, err: err}
	}
	return b
}
