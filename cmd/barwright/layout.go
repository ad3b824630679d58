package main

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"barwright/cmd/barwright/folder"
	"barwright/cmd/barwright/starter"
	"barwright/compile/cutplan"
	"barwright/compile/model"
	"barwright/compile/view"
	"barwright/emit/dxf"
	"barwright/emit/page"
	"barwright/emit/sawlist"
	"barwright/emit/table"
	"barwright/lang/cutlist"
	"barwright/lang/finding"
	"barwright/lang/length"
	"barwright/lang/source"
)

// listing is what the command line says of a plain cut list.
type listing struct {
	sheets, offcuts, sticks []string
	kerf, trim, spacing     string
	stages                  int
	free, grain             bool
}

func layoutCommand() command {
	return command{
		name: "layout", args: "LIST --sheet SIZE...", about: "lay out a plain cut list on sheets or sticks",
		help: `Lays out a cut list from anywhere, as build does its parts: the fewest sheets or
sticks, or those that cost least. LIST is a CSV file whose first line names the
columns piece, pieces, along_grain, across_grain and may_turn, in any order; - is
standard input. Further columns are kept with the piece.

  barwright layout boxes.csv --sheet 96x48 --kerf 1/8
  barwright layout boxes.csv --sheet 96x48=45 --sheet 60x60=38 --offcut 40x20*2 -o out
  barwright layout boxes.csv --unit mm --sheet 2440x1220 --free --spacing 10
  barwright layout rails.csv --stick 96=7.50 --stick 120=9

A SIZE is a length along the grain and a width; after = stands its price, after *
how many offcuts there are. Sticks have a length alone.
`,
		flags: func(f *pflag.FlagSet, o *options) {
			l := &o.listing
			f.StringArrayVar(&l.sheets, "sheet", nil, "a `SIZE` of sheet on sale")
			f.StringArrayVar(&l.offcuts, "offcut", nil, "a `SIZE` of sheet that is there already, used first, its edges not trimmed")
			f.StringArrayVar(&l.sticks, "stick", nil, "a `LENGTH` of stick on sale")
			f.StringVar(&o.unit, "unit", starter.Units()[0], "what bare numbers mean: `"+strings.Join(starter.Units(), "|")+"`")
			f.StringVar(&l.kerf, "kerf", "", "the `LENGTH` that a cut takes (default 1/8 in, or 3.2 mm)")
			f.StringVar(&l.trim, "trim", "", "the `LENGTH` that comes off each edge of a sheet, or each end of a stick, the cut included (default 0)")
			f.BoolVar(&l.grain, "grain", false, "pieces turn only where may_turn says yes; without it, where it does not say no")
			f.IntVar(&l.stages, "stages", 0, "a sheet is cut in `N` stages at most, each across the one before; 0 is any number")
			f.BoolVar(&l.free, "free", false, "pieces lie anywhere, for a router table; otherwise cuts go from edge to edge")
			f.StringVar(&l.spacing, "spacing", "", "with --free, the `LENGTH` between pieces (default the kerf)")
			layoutFlag(f, o)
			f.StringVarP(&o.out, "out", "o", "", "`DIR` to write; made, or replaced whole")
		},
		run:   layOutList,
		doing: "laying out the list",
	}
}

// layOutList lays out a plain cut list.
func layOutList(o options, std streams) int {
	job, wrong := o.job()
	if wrong != "" {
		return misuse(std, wrong)
	}
	text, err := readText(o.args[0], std)
	if err != nil {
		return failed(std, err)
	}
	list := cutlist.Read(source.File{Name: filepath.Base(o.args[0]), Text: text}, cutlist.Form{Unit: job.Build.Unit, Lengths: len(job.Sticks) > 0})
	findings := list.Findings
	var m *model.Model
	if !findings.HasErrors() {
		m, findings = job.Lay(list.Lines)
	}
	findings.Sort()
	if err := finding.Render(std.err, findings, source.Files{list.File}, std.style()); err != nil {
		return failed(std, err)
	}
	if m == nil {
		fmt.Fprintf(std.err, "\n%s: %s. Nothing was laid out.\n", o.args[0], finding.Counted(findings.Count(finding.Error), "error"))
		return exitFindings
	}
	if err := sawlist.Text(std.out, m, false); err != nil {
		return failed(std, err)
	}
	if o.out == "" {
		return exitClean
	}
	files := listFiles(m)
	err = std.ending.write(func(ctx context.Context) error { return folder.Replace(ctx, o.out, files) })
	if err != nil {
		return failed(std, err)
	}
	fmt.Fprintf(std.out, "\n%s in %s\n", finding.Counted(len(files), "file"), o.out)
	return exitClean
}

// job is what the command line asks for; wrong says what is amiss with it.
func (o options) job() (j cutplan.Job, wrong string) {
	l := &o.listing
	if wrong = o.unlisted(); wrong != "" {
		return j, wrong
	}
	j.Build = model.Build{Unit: length.Inches, Marks: length.Inch / 32}
	kerf := "1/8"
	if o.unit == length.Millimetres.String() {
		j.Build, kerf = model.Build{Unit: length.Millimetres, Marks: length.Millimetre / 2}, "3.2"
	}
	unit := j.Build.Unit
	j.Build.Name = listName(o.args[0])
	for _, f := range []struct {
		flag, text string
		to         *length.Length
	}{
		{"--kerf", cmp.Or(l.kerf, kerf), &j.Saw.Kerf},
		{"--trim", cmp.Or(l.trim, "0"), &j.Saw.Trim},
		{"--spacing", cmp.Or(l.spacing, l.kerf, kerf), &j.Table.Spacing},
	} {
		if *f.to, wrong = measure(f.flag, f.text, unit); wrong != "" {
			return j, wrong
		}
		if most := 2 * length.Inch; *f.to > most && f.flag != "--trim" {
			return j, fmt.Sprintf("%s is from 0 to %s, not %q", f.flag, j.Build.Plain(most), f.text)
		}
	}
	sheets, wrong := stockSizes("--sheet", l.sheets, unit)
	offs, wrong2 := stockSizes("--offcut", l.offcuts, unit)
	sticks, wrong3 := stockSizes("--stick", l.sticks, unit)
	if wrong = cmp.Or(wrong, wrong2, wrong3); wrong != "" {
		return j, wrong
	}
	for _, s := range sheets {
		if min(s.length, s.width) <= 2*j.Saw.Trim {
			return j, "--trim takes all of a sheet"
		}
	}
	for _, s := range sticks {
		if s.length <= 2*j.Saw.Trim {
			return j, "--trim takes all of a stick"
		}
	}
	j.Sheets, j.Offcuts, j.Sticks = sheetSizes(sheets), offcuts(offs), stickLengths(sticks)
	j.Saw.Stages, j.Grain = l.stages, l.grain
	j.Table.Free, j.Table.Margin, j.Table.Inch = l.free, j.Saw.Trim, unit.Imperial()
	j.Work = int(o.effort())
	return j, ""
}

// unlisted says what of the arguments does not go together, empty where all does.
func (o options) unlisted() string {
	l := &o.listing
	sheets := len(l.sheets) > 0
	switch {
	case len(o.args) != 1 || o.args[0] == "":
		return "name one cut list, a CSV file; - is standard input"
	case !slices.Contains(starter.Units(), o.unit):
		return fmt.Sprintf("--unit %q is none of %s", o.unit, strings.Join(starter.Units(), ", "))
	case !slices.Contains(layouts, o.layout):
		return o.noLayout()
	case sheets && len(l.sticks) > 0:
		return "a list is cut from sheets or from sticks; lay it out twice for both"
	case !sheets && len(l.sticks) == 0:
		return "say what is on sale: --sheet 96x48, or --stick 96"
	case !sheets && (len(l.offcuts) > 0 || l.free || l.stages != 0 || l.grain || l.spacing != ""):
		return "--offcut, --free, --spacing, --stages and --grain are of sheets; sticks have a length alone"
	case l.spacing != "" && !l.free:
		return "--spacing is kept between pieces that lie anywhere: add --free, or say what a cut takes as --kerf"
	case l.free && l.stages != 0:
		return "--stages limits cuts from edge to edge; with --free there are none"
	case l.stages < 0 || l.stages == 1:
		return fmt.Sprintf("--stages is 0 for any number, or from 2, not %d: a piece is cut to its length and to its width", l.stages)
	}
	return ""
}

// listName is what a list is called by: its file, without the ending.
func listName(arg string) string {
	if arg == standardInput {
		return "list"
	}
	name := filepath.Base(arg)
	return cmp.Or(strings.TrimSuffix(name, filepath.Ext(name)), name)
}

// listFiles are the files of a plain cut list that is laid out.
func listFiles(m *model.Model) []folder.File {
	m.Sheets, m.Sticks = view.Sheets(m), view.Sticks(m)
	files := []folder.File{
		{Name: "layout.txt", Write: func(w io.Writer) error { return sawlist.Text(w, m, true) }},
		{Name: "cutlist.csv", Write: func(w io.Writer) error { return table.Positions(w, m) }},
	}
	if len(m.Sheets) == 0 {
		return files
	}
	files = append(files, folder.File{Name: "index.html", Write: func(w io.Writer) error { return page.WriteList(w, m) }})
	files = append(files, newCutting(m, dxf.Options{Text: true, Inch: m.Table.Inch, Build: m.Build.Name}).laid()...)
	return append(files, pictures(m)...)
}
