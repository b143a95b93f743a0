package main

import (
	"cmp"
	"context"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/papers"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

// labelFlags are what "label" is told.
type labelFlags struct {
	moment
	out, size, stage, sheet, because string
	grid                             studioFlags // of the sheet only
	from                             int
	crop, ruler, note, preview       bool
	facts                            bool
}

func newLabel(a *app) *cobra.Command {
	var o labelFlags
	c := &cobra.Command{
		Use: "label " + panelWords, Short: "labels for the backs of panels, as a PDF to print",
		Long: `Labels for the backs of panels, as a PDF to print. Each panel gets the largest of
three sizes that its back can carry; what a label has no room for is named.

--sheet says what is in the printer:
  studio   the bought sheets in the studio's settings (the default, if any)
  a4       plain paper with crop marks (the default without; "letter" too)
  single   one page for each label, of its size
With --sheet-label and its companions a bought sheet is described for once;
"backleaf studio change" keeps one. That a label was printed is written down in
the journal; --preview looks first and writes down nothing.`,
		Example: `  backleaf label batch:may -o labels.pdf
  backleaf label 0142 0143 -o labels.pdf --sheet studio --from 5 --ruler`,
		Args: func(c *cobra.Command, args []string) error {
			if len(args) == 0 && (o.ruler || o.note) {
				return nil
			}
			return wanted(1, -1, "the panels to label")(c, args)
		},
		RunE: func(c *cobra.Command, args []string) error { return a.label(c.Context(), &o, args) },
	}
	f := c.Flags()
	f.StringVarP(&o.out, "output", "o", "labels.pdf", "the file to write; - is standard output")
	f.StringVar(&o.size, "size", "auto", "small, medium, large, auto: the largest that fits")
	f.StringVar(&o.stage, "stage", "auto", "blank, finished, changed (a new label after a treatment or a change), auto")
	f.StringVar(&o.because, "because", "", "why a label is printed again")
	f.StringVar(&o.sheet, "sheet", "", "studio, a4, letter, single, or the size of a plain page, height x width")
	f.StringVar(&o.grid.sheet[1], "sheet-label", "", "one label of a bought sheet, height x width: \"67 x 99 mm\"")
	f.Int64Var(&o.grid.rows, "sheet-rows", 0, "rows of a bought sheet")
	f.Int64Var(&o.grid.cols, "sheet-columns", 0, "columns of a bought sheet")
	f.StringVar(&o.grid.sheet[2], "sheet-top", "", "from the top of the page to the first label (default: in the middle)")
	f.StringVar(&o.grid.sheet[3], "sheet-left", "", "from the left of the page to the first label")
	f.StringVar(&o.grid.sheet[4], "sheet-down", "", "from the top of one label to the next below (default: edge to edge)")
	f.StringVar(&o.grid.sheet[5], "sheet-across", "", "from the left of one label to the next")
	f.IntVar(&o.from, "from", 1, "first free place of a part-used sheet")
	f.BoolVar(&o.crop, "crop-marks", false, "crop marks on bought sheets and single pages too")
	f.BoolVar(&o.ruler, "ruler", false, "begin with a page that shows whether the printer keeps the scale")
	f.BoolVar(&o.facts, "facts", false, "a second symbol that holds the facts as text, for the day when no link leads anywhere")
	f.BoolVar(&o.note, "with-note", false, "end with a page on paper, ink and paste")
	f.BoolVar(&o.preview, "preview", false, "write the file, but nothing into the journal")
	o.moment.flags(c)
	return c
}

func (a *app) label(ctx context.Context, o *labelFlags, args []string) error {
	do := func(s *studio.Session) error {
		v, err := s.Look(ctx, args, o.except)
		if err != nil {
			return err
		}
		r := typed.For(v)
		file := o.out
		if file == "-" {
			file = ""
		}
		order := papers.LabelOrder{At: r.At(o.at), Because: o.because, File: file, Preview: o.preview, Facts: o.facts}
		o.options(r, v.Shop.Studio, &order.Options)
		if order.Stage, err = label.ParseStage(o.stage); err != nil {
			r.Fail(refuse.Input("stage", "not-read", "%w", err))
		}
		if r.Err() != nil {
			return r.Err()
		}
		made, err := papers.Print(ctx, v, order)
		if err != nil {
			return err
		}
		if file == "" { // then the words go where they do not mix with it
			if _, err := a.out.Write(made.PDF); err != nil {
				return err
			}
			beside := *a
			beside.out = a.err
			a = &beside
		}
		a.sayLabels(o, v, made)
		return nil
	}
	if o.preview || len(args) == 0 {
		return a.read(ctx, do)
	}
	return a.write(ctx, do)
}

// options reads the flags about size and sheet.
func (o *labelFlags) options(r *typed.Reader, s record.Studio, opt *label.Options) {
	opt.From, opt.CropMarks, opt.Ruler, opt.Note = o.from, o.crop, o.ruler, o.note
	var err error
	if opt.Size, err = label.ParseSize(o.size); err != nil {
		r.Fail(refuse.Input("size", "not-read", "%w", err))
	}
	if opt.Paper, err = label.PaperNamed(s.Paper); err != nil {
		r.Fail(err)
	}
	described := record.LabelSheet{Rows: o.grid.rows, Cols: o.grid.cols}
	o.grid.texts(r, &described)
	switch name := strings.ToLower(strings.TrimSpace(o.sheet)); name {
	case "single", "studio", "", "a4", "letter":
	default:
		r.Text("sheet", o.sheet, &described.Page)
	}
	if r.Err() == nil {
		opt.Sheet, err = papers.Sheet(s, o.sheet, described, opt.Paper, o.from)
		r.Fail(err)
	}
}

// sayLabels says what was printed.
func (a *app) sayLabels(o *labelFlags, v *studio.View, made papers.Labels) {
	code, entries := "labels-written", ""
	switch {
	case len(made.Entries) > 0:
		entries = a.entrySpan(made.Entries)
	case len(v.Panels) > 0:
		code = "labels-preview"
	}
	a.told(code, record.With("file", o.out), tell.Told("labels", a.countLabels(made.Layouts)), tell.Told("entries", entries))
	a.warn(v, made.Warnings)
	switch {
	case len(v.Panels) == 0 || o.note:
	case !made.First:
		a.noted("label-note")
	default:
		for _, note := range a.catalogue().Label.Notes {
			a.talk("%s", strings.TrimRight(string(note), "¹²³⁴"))
		}
	}
}

func largestFirst(a, b label.Layout) int {
	return cmp.Compare(b.Area.WidthMM*b.Area.HeightMM, a.Area.WidthMM*a.Area.HeightMM)
}

func (a *app) countLabels(layouts []label.Layout) string {
	if len(layouts) == 0 {
		return a.line("labels-none")
	}
	var kinds []string
	count := map[label.Size]int{}
	for _, l := range layouts {
		count[l.Size]++
	}
	for _, l := range slices.SortedStableFunc(slices.Values(layouts), largestFirst) {
		if n := count[l.Size]; n > 0 {
			kinds = append(kinds, a.line("labels-of-size", record.With("n", n), record.With("size", record.Code(l.Size.String()))))
			delete(count, l.Size)
		}
	}
	return a.line("labels-counted", tell.Told("sizes", a.catalogue().Series(kinds)), record.With("n", len(layouts)))
}
