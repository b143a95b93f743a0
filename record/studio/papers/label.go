// Package papers draws and issues what leaves the studio: labels, certificates,
// dossiers. A paper that speaks for the studio has its entry in the journal.
package papers

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"time"

	"backleaf/label"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/safefile"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// LabelOrder says what labels are to be printed.
type LabelOrder struct {
	At      record.When
	Stage   label.Stage
	Because string // why a label is printed again
	Options label.Options
	File    string // where they are written; empty: they are only returned
	Preview bool   // nothing is written into the journal
	Facts   bool   // a second symbol holds the facts as text
	// Progress is told of the records that are read, and of the labels.
	Progress studio.Progress
}

// Labels is what was printed.
type Labels struct {
	PDF     []byte
	Layouts []label.Layout // one a panel
	First   bool           // the studio never printed a label before
	pages   int
	studio.Written
}

// Print draws labels for the panels of a view, writes the file, and writes
// down that they were printed. Without panels only the pages about paper and
// printer are made.
func Print(ctx context.Context, v *studio.View, o LabelOrder) (Labels, error) {
	o.Options.Catalogue, o.Options.Author, o.Options.Units = v.Catalogue(), v.Shop.Studio.Maker, v.Shop.Studio.Units
	if t, ok := v.Shop.Written.Exact(); ok {
		o.Options.Created = t
	}
	var l Labels
	if err := NewPDF(o.File); err != nil {
		return l, err
	}
	mark, err := kept.MarkOf(v.Book.Path(), v.Shop.Studio)
	if err != nil {
		return l, err
	}
	given := v.Which(func(p *record.Panel) bool { _, up := p.Discarded(); return up && !slices.Contains(v.Alone, p.Number) })
	if len(given) > 0 && len(given) < len(v.Panels) {
		v.Panels = slices.DeleteFunc(slices.Clone(v.Panels), func(n record.Number) bool { return slices.Contains(given, n) })
		l.Warn("left-out-discarded", record.With("panels", given))
	}
	var inputs []label.Input
	var entries []record.Entry
	step := func(stage string) func(done, total int64) error {
		show := o.Progress.Of(stage)
		return func(done, total int64) error {
			if show != nil {
				show(done, total)
			}
			return ctx.Err()
		}
	}
	o.Options.Step, o.Options.Pages = step("labels"), &l.pages
	told := step("panels")
	for i, n := range v.Panels {
		if err := told(int64(i+1), int64(len(v.Panels))); err != nil {
			return l, err
		}
		p := v.Shop.Panel(n)
		if err := studio.Readable(p); err != nil {
			return l, err
		}
		if d, gone := p.Discarded(); gone {
			except := v.Which(func(p *record.Panel) bool { _, up := p.Discarded(); return up })
			if len(except) == len(v.Panels) {
				except = nil
			}
			return l, refuse.Cannot("label-of-discarded", "%s was discarded (%s)", n, d.Body.Because).With(record.With("entry", record.EntryRef(d.Seq)), record.With("except", except))
		}
		digest, err := recordDigest(ctx, v.Book, v.Shop, p, o.Stage, o.Options.Created)
		if err != nil {
			return l, err
		}
		in, err := label.Say(o.Options.Catalogue, v.Shop, p, o.Stage, digest)
		if err != nil {
			return l, err
		}
		in.Mark = mark
		if o.Facts {
			in = in.WithFacts()
		}
		inputs = append(inputs, in)
		entries = append(entries, record.Entry{At: o.At, Panels: []record.Number{n}, Body: record.LabelPrinted{Record: digest, Reason: o.Because}})
	}
	var pdf bytes.Buffer
	l.Layouts, err = label.Draw(&pdf, inputs, o.Options)
	if errors.Is(err, label.ErrNoPlace) {
		return l, refuse.Input("from", "no-place-on-sheet", "%w", err)
	}
	if err != nil {
		return l, cmp.Or(ctx.Err(), refuse.Because("label-does-not-fit", err))
	}
	l.PDF = pdf.Bytes()
	file := kept.PaperOf(l.PDF)
	for i, x := range l.Layouts {
		printed := entries[i].Body.(record.LabelPrinted)
		printed.Layout, printed.PDF, printed.AsOf = x.Size.String(), file.SHA256, v.Shop.Last
		entries[i].Body = printed
	}
	if len(entries) > 0 && !o.Preview {
		if err := kept.Keep(v.Book.Path(), file, l.PDF); err != nil {
			return l, err
		}
	}
	before, err := v.Book.Entries(ctx, book.Filter{Kinds: []record.Kind{"label-printed"}, Last: 1})
	l.First = err == nil && len(before) == 0
	err = withEntry(safefile.Create, o.File, l.PDF, func() (err error) {
		if len(entries) > 0 && !o.Preview {
			var w studio.Written
			w, err = v.Write(ctx, entries...)
			l.Entries, l.Warnings = w.Entries, append(l.Warnings, w.Warnings...)
		}
		return err
	})
	switch {
	case err != nil && len(l.Entries) > 0:
		return l, refuse.Because("labels-without-file", fmt.Errorf("the labels are on record, but their file is not there: %w", err))
	case err != nil:
		return l, err
	}
	l.told(v, o.File)
	l.Warnings = append(l.Warnings, labelWarnings(v, o.Stage, l.Layouts)...)
	if len(v.Panels) > 0 {
		l.Warnings = append(l.Warnings, noAddress(v.Shop.Studio)...)
	}
	return l, nil
}

// told says what was printed: how many labels of each size, the largest first.
func (l *Labels) told(v *studio.View, file string) {
	c, code, entries := v.Catalogue(), "labels-written", ""
	switch {
	case len(l.Entries) > 0:
		entries = c.EntrySpan(l.Entries)
	case len(v.Panels) > 0:
		code = "labels-preview"
	}
	count := map[label.Size]int{}
	for _, x := range l.Layouts {
		count[x.Size]++
	}
	var sizes []string
	for _, x := range slices.SortedStableFunc(slices.Values(l.Layouts), func(a, b label.Layout) int {
		return cmp.Compare(b.Area.WidthMM*b.Area.HeightMM, a.Area.WidthMM*a.Area.HeightMM)
	}) {
		if n := count[x.Size]; n > 0 {
			sizes = append(sizes, tell.Say(c, record.Say("labels-of-size", record.With("n", n), record.With("size", record.Code(x.Size.In(v.Shop.Studio.Units))))))
			delete(count, x.Size)
		}
	}
	labels := tell.Say(c, record.Say("labels-none"))
	if sizes != nil {
		labels = tell.Say(c, record.Say("labels-counted", tell.Told("sizes", c.Series(sizes)), record.With("pages", l.pages)))
	}
	l.Mean(code, record.With("file", cmp.Or(file, "-")), tell.Told("labels", labels), tell.Told("entries", entries))
	if len(l.Entries) > 0 {
		l.Means = append(l.Means, c.TakeBack(l.Entries))
	}
}

// labelWarnings names panels that are not what the label says, are not here or
// had a label before, what there was no room for, and backs that nothing seals.
func labelWarnings(v *studio.View, stage label.Stage, layouts []label.Layout) (ws []record.Said) {
	ws = v.Each(func(p *record.Panel) (of []record.Said) {
		if blank := label.StageOf(p) == label.StageBlank; stage == label.StageBlank && !blank || stage == label.StageFinished && blank {
			of = append(of, record.Say("label-of-other-stage", record.With("stage", record.Code(stage))))
		}
		if h, is := p.Away(); is {
			of = append(of, record.Say("label-away", record.With("how", h.Body.How)))
		}
		return of
	})
	if gone := v.Which(func(p *record.Panel) bool { _, is := p.Away(); return is }); len(gone) > 0 && len(gone) < len(v.Panels) {
		ws = append(ws, record.Say("label-except", record.With("panels", gone)))
	}
	var last record.When
	again := v.Which(func(p *record.Panel) bool {
		before, ok := record.Latest[record.LabelPrinted](p)
		when := before.At
		if !when.Known() {
			when = before.Written
		}
		if ok && !when.Before(last) {
			last = when
		}
		return ok
	})
	if len(again) > 0 {
		ws = append(ws, record.Say("printed-before", record.With("panels", again), record.With("when", last)))
	}
	i := -1
	ws = append(ws, v.Each(func(*record.Panel) []record.Said {
		i++
		var fields []record.Code
		for _, f := range layouts[i].LeftOut {
			fields = append(fields, record.Code(f))
		}
		if fields == nil {
			return nil
		}
		return []record.Said{record.Say("no-room", record.With("size", record.Code(layouts[i].Size.In(v.Shop.Studio.Units))), record.With("fields", fields))}
	})...)
	if bare := v.Which(func(p *record.Panel) bool { return bareBack(v.Shop, p) }); len(bare) > 0 {
		ws = append(ws, record.Say("back-not-sealed", record.With("panels", bare)))
	}
	return ws
}

// bareBack reports that nothing recorded seals the back of a panel that could
// take up moisture.
func bareBack(w *record.Workshop, p *record.Panel) bool {
	m, _ := w.Material(p.Cut().Board, p.Cut().BoardAs)
	return m.Board.Kind != record.AluminiumComp && w.State(p, record.Back) != record.FaceSealed
}

// recordDigest is what identifies the record a label speaks of: that of the
// certificate in force or, where there is none or the panel was changed since,
// that of the record as the journal stands.
func recordDigest(ctx context.Context, b deed.Journal, w *record.Workshop, p *record.Panel, stage label.Stage, written time.Time) (string, error) {
	if c, ok := p.Certificate(); ok && stage != label.StageChanged && label.StageOf(p) != label.StageChanged {
		return c.Body.Record, nil
	}
	d, err := deed.Make(ctx, b, w, p, nil, nil, written)
	if err != nil {
		return "", err
	}
	return seal.DigestOf(d.Record).String(), nil
}

// LabelNow draws the label that a panel would get today, with what is kept
// beside the studio's book; nil if it was discarded. Nothing is written down.
func LabelNow(ctx context.Context, c *tell.Catalogue, j deed.Journal, bookPath string, w *record.Workshop, p *record.Panel) ([]byte, error) {
	if _, gone := p.Discarded(); gone {
		return nil, nil
	}
	opt := label.Options{Catalogue: c, Author: w.Studio.Maker}
	if t, ok := w.Written.Exact(); ok {
		opt.Created = t
	}
	digest, err := recordDigest(ctx, j, w, p, label.StageAuto, opt.Created)
	if err != nil {
		return nil, err
	}
	in, err := label.Say(opt.Catalogue, w, p, label.StageAuto, digest)
	if err != nil {
		return nil, err
	}
	if in.Mark, err = kept.MarkOf(bookPath, w.Studio); err != nil {
		return nil, err
	}
	var pdf bytes.Buffer
	_, err = label.Draw(&pdf, []label.Input{in}, opt)
	return pdf.Bytes(), err
}
