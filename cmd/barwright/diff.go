package main

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io"
	"slices"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/inplace"
	"barwright/compile"
	"barwright/compile/atonce"
	"barwright/compile/model"
	"barwright/compile/revise"
	"barwright/compile/view"
	"barwright/emit/revision"
	"barwright/lang"
	"barwright/lang/finding"
	"barwright/lang/length"
)

func diffCommand() command {
	return command{
		name: "diff", args: "OLD NEW", about: "tell what differs, and which cut pieces live on",
		help: `Tells what differs between two builds: what the text says otherwise and what
follows from it, what becomes of each part that may have been cut for the old one,
and what the new one takes beyond it. Nothing is printed where nothing differs.

OLD and NEW are each a file, a folder with all its *.hcl files, or a folder that
build wrote or the model.json in it; or one of these in a revision of the
repository here, as git names it: REVISION:PATH. A revision alone means the path
of the other side in it.

  barwright diff HEAD examples/boatshed
  barwright diff v1:examples/boatshed v2
  barwright diff --set-new bar_top=43 examples/boatshed examples/boatshed

LIST holds the labels of the parts that have been cut, one a line, each with its
size over all as measured where that differs, banding included, x and y as drawn:
CUPS-L  23 1/4 x 34 1/2
`,
		flags: func(f *pflag.FlagSet, o *options) {
			inputFlags(f, o)
			f.StringArrayVar(&o.setOld, "set-old", nil, "as --set, in OLD alone: `NAME=VALUE`")
			f.StringArrayVar(&o.setNew, "set-new", nil, "as --set, in NEW alone: `NAME=VALUE`")
			f.StringVar(&o.cut, "cut", "", "only the pieces in `LIST` have been cut; - is standard input")
			f.StringVar(&o.within, "within", "", "count what differs by at most this `LENGTH` as equal (default 1/64 in)")
			f.StringVar(&o.format, "format", "text", "print the report as `text|json|markdown`")
			f.BoolVar(&o.exitCode, "exit-code", false, "exit status 1 where the builds differ; it is 1 where one has errors too, but then nothing is on standard output")
			f.StringVarP(&o.out, "out", "o", "", "write a page with both builds over each other to `FILE`, as x.html; only an older such page is replaced")
		},
		run:   diff,
		doing: "comparing",
	}
}

// diff compares two builds.
func diff(o options, std streams) int {
	if wrong := o.misfit(); wrong != "" {
		return misuse(std, wrong)
	}
	from, err := sides(o.args)
	if err != nil {
		return failed(std, err)
	}
	builds, err := o.solveSides(&from)
	if err != nil {
		return failed(std, err)
	}
	if status := unsound(builds, std); status != exitClean {
		return status
	}
	return o.compare(&from, builds, std)
}

// misfit says what is wrong with the arguments, empty where nothing is.
func (o options) misfit() string {
	switch {
	case len(o.args) != 2:
		return "name two builds, the old one and the new one; HEAD is what was committed last"
	case o.args[0] == "" || o.args[1] == "":
		return "the name of a build is empty"
	case !slices.Contains([]string{"text", "json", "markdown"}, o.format):
		return fmt.Sprintf("--format is text, json or markdown, not %q", o.format)
	}
	return cmp.Or(o.unusable(), unwritable(o.out))
}

// solveSides reads and solves both builds, at the same time.
func (o options) solveSides(from *[2]side) (out [2]result, err error) {
	var errs [2]error
	atonce.Each(2, func(i int) {
		own := o
		own.set = slices.Concat(o.set, [...][]string{o.setOld, o.setNew}[i])
		out[i], errs[i] = own.readSide(&from[i])
	})
	if err = cmp.Or(errs[0], errs[1]); err == nil {
		err = o.overrideSides(&out)
	}
	if err != nil {
		return out, err
	}
	atonce.Each(2, func(i int) {
		b := &out[i]
		if b.model == nil {
			*b = solved(b.path, b.src, b.findings, compile.Priced)
		}
		if b.model != nil && o.out != "" {
			b.model.Views = view.Views(b.model)
		}
	})
	return out, nil
}

// overrideSides sets what the command line does: a given that only one of two builds has
// is set in that one.
func (o options) overrideSides(builds *[2]result) error {
	var givens [2][]string
	for i := range builds {
		if src := builds[i].src; src != nil {
			givens[i] = src.GivenNames()
		}
	}
	for i, own := range []struct {
		flag string
		set  []string
	}{{"--set-old", o.setOld}, {"--set-new", o.setNew}} {
		b := &builds[i]
		if b.src == nil { // a record
			continue
		}
		given, err := o.givens()
		if err != nil {
			return err
		}
		b.findings = slices.Concat(b.findings, o.override(b.src, given, givens[1-i]...), set(b.src, own.flag, own.set))
	}
	return nil
}

// unsound prints the findings of builds that have errors.
func unsound(builds [2]result, std streams) int {
	status := exitClean
	for i, which := range []string{"old", "new"} {
		b := &builds[i]
		if b.model != nil {
			continue
		}
		if status != exitClean {
			io.WriteString(std.err, "\n")
		}
		status = exitFindings
		fmt.Fprintf(std.err, "The %s build, %s, has %s:\n\n", which, finding.Clean(b.path), finding.Counted(b.findings.Count(finding.Error), "error"))
		// What stops the build is told first; the order is the text's otherwise.
		slices.SortStableFunc(b.findings, func(x, y finding.Finding) int { return cmp.Compare(y.Severity, x.Severity) })
		if err := b.answer(std); err != nil {
			return failed(std, err)
		}
	}
	return status
}

// compare prints the report of two sound builds, and writes the page.
func (o options) compare(from *[2]side, builds [2]result, std streams) int {
	before, after := builds[0].model, builds[1].model
	how := revise.Options{}
	var wrong string
	if how.Within, wrong = tolerance(o.within, after.Build.Unit); wrong != "" {
		return misuse(std, wrong)
	}
	if o.cut != "" {
		text, err := readText(o.cut, std)
		if err == nil && len(text) > lang.MaxFileBytes {
			err = fmt.Errorf("%s is larger than %d bytes, which is the most that is read", o.cut, lang.MaxFileBytes)
		}
		if err != nil {
			return failed(std, err)
		}
		if how.Cut, err = revise.ReadMade(bytes.NewReader(text), before); err != nil {
			fmt.Fprintf(std.err, "barwright: %s: %s\n", o.cut, finding.Clean(err.Error()))
			return exitFindings
		}
	}
	r := revise.Compare(before, after, how)
	names := revision.Names{Old: from[0].name, New: from[1].name}
	if err := o.write(r, names, std); err != nil {
		return failed(std, err)
	}
	if o.exitCode && !r.Empty() {
		return exitFindings
	}
	return exitClean
}

func (o options) write(r *model.Revision, names revision.Names, std streams) error {
	if o.out != "" {
		var page bytes.Buffer
		if err := revision.Page(&page, r, names); err != nil {
			return err
		}
		if err := std.ending.write(func(context.Context) error { return inplace.Write(o.out, page.Bytes()) }); err != nil {
			return err
		}
	}
	switch o.format {
	case "json":
		return revision.JSON(std.out, r, names)
	case "markdown":
		return revision.Markdown(std.out, r, names)
	}
	return revision.Text(std.out, r, names, std.outStyle())
}

// tolerance reads what counts as equal; wrong says why it cannot be that.
func tolerance(text string, unit length.Unit) (l length.Length, wrong string) {
	if text == "" {
		return length.Inch / 64, ""
	}
	l, err := length.Parse(text, unit)
	switch {
	case err != nil:
		return 0, fmt.Sprintf("--within %q is no length: %v", text, err)
	case l < 0 || l > length.Inch/4:
		return 0, fmt.Sprintf("--within is from 0 to 1/4 in (6.35 mm), not %q", text)
	}
	return l, ""
}
