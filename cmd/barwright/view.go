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
	"barwright/compile/view"
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
	first, places := o.look(o.args[0], text{})
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
	v := viewer{options: o, std: std, compiled: compile.Shown}
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
	server := loopback.New(port, loopback.Paths{Events: page.EventsPath, Pieces: page.PiecesPath}, page.LivePolicy().String(), shown)
	fmt.Fprintf(v.std.out, "http://%s:%d/\n", loopback.Address, port)

	ctx, end := context.WithCancelCause(ctx)
	defer end(nil)
	ticks := time.NewTicker(lookEvery)
	defer ticks.Stop()
	followed := make(chan struct{})
	newest := first
	go func() {
		defer close(followed)
		follow.Files[text, result]{
			Read: func() (now text, places []string) {
				newest, places = v.look(v.args[0], newest)
				return newest, places
			},
			Same:  text.same,
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
	number   int        // of pages
	last     shownBuild // built without errors
}

// shownBuild is a build on a page, and what that page asks for; the model is nil where there is none.
type shownBuild struct {
	model    *model.Model
	pictures *view.Pictures // nil where the page has them
	lists    page.Lists
}

// piece is what the page asks for by a name, nil where there is nothing.
func (b shownBuild) piece(name string) []byte {
	var html bytes.Buffer // memory takes it all
	broken := rescued(func() {
		if found, _ := b.lists.Write(&html, name); found || b.pictures == nil {
			return
		}
		if v, ok := b.pictures.Draw(name); ok {
			page.WritePicture(&html, &v)
		}
	})
	if broken != nil {
		return nil
	}
	return html.Bytes()
}

// draw draws the page of a text that is built, and tells the terminal.
func (v *viewer) draw(b result) (loopback.Page, error) {
	v.number++
	html, shown, err := v.page(&b)
	if broken := (*fault)(nil); errors.As(err, &broken) { // the last build could be drawn
		b.model, b.err = nil, err
		html, shown, err = v.page(&b)
	}
	if err != nil {
		return loopback.Page{}, err
	}
	v.last = shown
	return loopback.Page{Number: v.number, HTML: html, Piece: shown.piece}, v.tell(&b)
}

// page writes the page of a build, or of the last one with what is amiss with this.
func (v *viewer) page(b *result) ([]byte, shownBuild, error) {
	shown := shownBuild{model: b.model, pictures: b.pictures}
	live := page.Live{Name: filepath.Base(filepath.Clean(v.args[0])), Number: v.number}
	if b.model == nil {
		shown = v.last
		live.Errors, live.Amiss = b.amiss()
	}
	live.Model = shown.model
	var html bytes.Buffer
	var err error
	broken := rescued(func() { shown.lists, err = page.WriteLive(&html, live) })
	return html.Bytes(), shown, cmp.Or(broken, err)
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
	err := rescued(func() {
		b = solved(path, t.src, t.findings, v.compiled)
		if b.model != nil && b.model.Large() {
			b.pictures = view.Listed(b.model)
			b.model.Views, b.model.Sheets = b.pictures.Views, b.pictures.Sheets
		}
	})
	if err != nil {
		return result{path: path, err: err}
	}
	return b
}
