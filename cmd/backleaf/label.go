package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"slices"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/tell"
)

// labelFlags are what "label" is told.
type labelFlags struct {
	bench
	out, size, stage, sheet, because string
	grid                             studioFlags // of the sheet only
	from                             int
	crop, ruler, note, preview       bool
}

func newLabel(a *app) *cobra.Command {
	var o labelFlags
	c := &cobra.Command{
		Use: "label " + panelWords, Short: "labels for the backs of panels, as a PDF to print",
		Long: `Labels for the backs of panels, as a PDF to print. Each panel gets the largest of
three sizes that its back can carry; what a label has no room for is named.

--sheet says what is in the printer:
  studio   the bought sheets in the studio's settings (the default if there are any)
  a4       plain paper with crop marks (the default without; "letter" likewise)
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
		RunE: func(c *cobra.Command, args []string) error { return a.label(c, &o, args) },
	}
	f := c.Flags()
	f.StringVarP(&o.out, "output", "o", "labels.pdf", "the file to write")
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
	f.BoolVar(&o.note, "with-note", false, "end with a page on paper, ink and paste")
	f.BoolVar(&o.preview, "preview", false, "write the file, but nothing into the journal")
	o.bench.flags(c)
	return c
}

func (a *app) label(c *cobra.Command, o *labelFlags, args []string) error {
	ctx := c.Context()
	do := func(b *book.Book) error {
		s, err := a.look(ctx, b, &o.bench, args)
		if err != nil {
			return err
		}
		return a.printLabels(ctx, o, s)
	}
	if o.preview || len(args) == 0 {
		return a.read(ctx, do)
	}
	return a.write(ctx, do)
}

func (a *app) printLabels(ctx context.Context, o *labelFlags, s *benchState) error {
	opt, err := o.options(s.shop.Studio)
	if err != nil {
		return err
	}
	stage, err := label.ParseStage(o.stage)
	if err != nil {
		return usage("", "--stage: %v", err)
	}
	opt.Catalogue, opt.Author = tell.English, s.shop.Studio.Maker
	if t, ok := s.shop.Written.Exact(); ok {
		opt.Created = t
	}
	if err := mayReplace(o.out, opt.Catalogue); err != nil {
		return err
	}
	var inputs []label.Input
	var entries []record.Entry
	for _, n := range s.panels {
		p := s.shop.Panel(n)
		if d, gone := p.Discarded(); gone {
			return hinted(fmt.Errorf("%s was discarded (%s)", n, d.Body.Because), "leave it out with --except "+string(n))
		}
		digest, err := recordDigest(ctx, s, p, stage, opt.Created)
		if err != nil {
			return err
		}
		in, err := label.Say(opt.Catalogue, s.shop, p, stage, digest)
		if err != nil {
			return err
		}
		inputs = append(inputs, in)
		entries = append(entries, record.Entry{At: s.at, Panels: []record.Number{n}, Body: record.LabelPrinted{Record: digest, Reason: o.because}})
	}
	var pdf bytes.Buffer
	layouts, err := label.Draw(&pdf, inputs, opt)
	if errors.Is(err, label.ErrNoPlace) {
		return usage("--from is the first free place, counted from 1; nothing was written", "--from: %v", err)
	}
	if err != nil {
		return hinted(err, "a smaller --size, or another --sheet, may help; nothing was written")
	}
	for i, l := range layouts {
		printed := entries[i].Body.(record.LabelPrinted)
		printed.Layout = l.Size.String()
		entries[i].Body = printed
	}
	if err := safefile.Write(o.out, 0o644, func(f *os.File) error { _, err := f.Write(pdf.Bytes()); return err }); err != nil {
		return err
	}
	return a.labelsPrinted(ctx, o, s, layouts, entries)
}

// labelsPrinted writes down what was printed and says so.
func (a *app) labelsPrinted(ctx context.Context, o *labelFlags, s *benchState, layouts []label.Layout, entries []record.Entry) error {
	printed, err := s.book.Entries(ctx, book.Filter{Kinds: []record.Kind{"label-printed"}, Last: 1})
	first := err == nil && len(printed) == 0
	line := o.out + "  " + countLabels(layouts)
	switch {
	case len(entries) == 0:
	case o.preview:
		line += "; a preview, nothing written down"
	default:
		done, err := s.book.Append(ctx, s.now.In(s.zone), entries...)
		if err != nil {
			return hinted(fmt.Errorf("%s was written, but the journal does not say so: %w", o.out, err), "run the command again before you use the labels")
		}
		line += fmt.Sprintf("; E%d", done[0].Seq)
		if n := len(done); n > 1 {
			line += fmt.Sprintf(" to E%d", done[n-1].Seq)
		}
	}
	a.say("%s", line)
	for i, n := range s.panels {
		if before := record.Each[record.LabelPrinted](s.shop.Panel(n)); len(before) > 0 {
			last := before[len(before)-1]
			when := last.At
			if !when.Known() {
				when = last.Written
			}
			a.talk("%s: printed before, %s", n, sayWhen(when, s.now, s.zone))
		}
		if left := layouts[i].LeftOut; len(left) > 0 {
			a.talk("%s: no room on the %s label for: %s", n, layouts[i].Size, fieldNames(left))
		}
	}
	if bare := s.which(s.bareBack); bare != "" {
		a.talk("note: no seal is recorded on the back of %s; a label keeps best on a sealed back", bare)
	}
	switch {
	case len(entries) == 0 || o.note:
	case !first:
		a.talk("on paper, ink and paste: --with-note adds a page")
	default:
		for _, note := range tell.English.Label.Notes {
			a.talk("%s", strings.TrimRight(string(note), "¹²³⁴"))
		}
	}
	return nil
}

// bareBack reports that nothing recorded seals the back of a panel that could
// take up moisture.
func (s *benchState) bareBack(p *record.Panel) bool {
	m, _ := s.shop.Material(p.Cut().Board)
	return m.Board.Kind != record.AluminiumComp && !slices.ContainsFunc(p.BuildUp(record.Back), s.shop.Seals)
}

func countLabels(layouts []label.Layout) string {
	if len(layouts) == 0 {
		return "no labels"
	}
	var kinds []string
	for _, size := range []label.Size{label.Large, label.Medium, label.Small} {
		n := 0
		for _, l := range layouts {
			if l.Size == size {
				n++
			}
		}
		if n > 0 {
			kinds = append(kinds, fmt.Sprintf("%d %s", n, size))
		}
	}
	noun := "labels"
	if len(layouts) == 1 {
		noun = "label"
	}
	return strings.Join(kinds, ", ") + " " + noun
}

func fieldNames(fs []label.Field) string {
	var s []string
	for _, f := range fs {
		s = append(s, string(f))
	}
	return strings.Join(s, ", ")
}

// recordDigest is what identifies the record a label speaks of: that of the
// certificate in force or, where there is none or the panel was changed since,
// that of the record as the journal stands.
func recordDigest(ctx context.Context, s *benchState, p *record.Panel, stage label.Stage, written time.Time) (string, error) {
	if c, ok := p.Certificate(); ok && stage != label.StageChanged && label.StageOf(p) != label.StageChanged {
		return c.Body.Record, nil
	}
	d, err := deed.Make(ctx, s.book, s.shop, p, nil, nil, written)
	if err != nil {
		return "", err
	}
	return seal.DigestOf(d.Record).String(), nil
}

// options reads the flags about size and sheet.
func (o *labelFlags) options(s record.Studio) (label.Options, error) {
	opt := label.Options{From: o.from, CropMarks: o.crop, Ruler: o.ruler, Note: o.note}
	var err error
	if opt.Size, err = label.ParseSize(o.size); err != nil {
		return opt, usage("", "--size: %v", err)
	}
	if opt.Paper, err = label.PaperNamed(s.Paper); err != nil {
		return opt, err
	}
	if o.from < 1 {
		return opt, usage("", "--from: places are counted from 1")
	}
	opt.Sheet, err = o.sheetIn(s, opt.Paper)
	if err == nil && opt.Sheet == nil && o.from > 1 {
		err = usage("", "--from: single pages have one place")
	}
	return opt, err
}

// sheetIn finds the sheet; nil for single pages.
func (o *labelFlags) sheetIn(s record.Studio, plain label.Area) (*label.Sheet, error) {
	settings := record.LabelSheet{Rows: o.grid.rows, Cols: o.grid.cols}
	g := &o.grid.sheet
	err := texts(s.Units, text{"--sheet-label", g[1], &settings.Label}, text{"--sheet-top", g[2], &settings.Top}, text{"--sheet-left", g[3], &settings.Left},
		text{"--sheet-down", g[4], &settings.PitchV}, text{"--sheet-across", g[5], &settings.PitchH})
	if err != nil {
		return nil, err
	}
	described := settings != record.LabelSheet{}
	page := plain
	switch name := strings.ToLower(strings.TrimSpace(o.sheet)); name {
	case "single":
		if described {
			return nil, usage("", "--sheet single has one place, and no rows or columns")
		}
		return nil, nil
	case "studio", "":
		if described {
			break
		}
		if s.Sheet.Rows > 0 {
			sheet, err := label.SheetOf(s.Sheet)
			return &sheet, hinted(err, "see \"backleaf studio show\", and put it right with \"backleaf studio change\"")
		}
		if name == "studio" {
			return nil, hinted(errors.New("the studio's settings hold no label sheet"), "\"backleaf studio change --sheet-label …\" keeps one")
		}
	case "a4", "letter":
		if page, err = label.PaperNamed(name); err != nil {
			return nil, err
		}
	default:
		if err := texts(s.Units, text{"--sheet", o.sheet, &settings.Page}); err != nil {
			return nil, err
		}
	}
	var sheet label.Sheet
	if settings.Page.IsZero() {
		sheet, err = label.SheetOn(page, settings)
	} else {
		sheet, err = label.SheetOf(settings)
	}
	if err != nil {
		return nil, usage("", "%v", err)
	}
	return &sheet, nil
}

// mayReplace refuses to write over anything but labels printed before.
func mayReplace(path string, c *tell.Catalogue) error {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	} else if err != nil {
		return fmt.Errorf("cannot write labels: %w", err)
	}
	defer f.Close()
	old, err := io.ReadAll(io.LimitReader(f, 64<<20))
	if err != nil {
		return fmt.Errorf("cannot write labels over %s: %w", path, err)
	}
	if !bytes.HasPrefix(old, []byte("%PDF-")) || !bytes.Contains(old, []byte(c.Label.FileSubject)) {
		return hinted(fmt.Errorf("%s is there already, and it is no file of labels", path), "name another file with -o")
	}
	return nil
}
