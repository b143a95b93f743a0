package exchange

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

// Noted is what there is to say of one entry of a file.
type Noted struct {
	Line int // where it begins
	Said record.Said
}

// Order says how the entries of a file are to be taken into a book that has
// entries already. Into an empty book a file goes as it is: with its moments
// and the name of its journal.
type Order struct {
	Name    string // of the file
	Lines   []int  // at which its entries stand
	Asked   []record.Kind
	Highest []string // the highest numbers on labels, where the file goes on from an older copy
	Dry     bool     // nothing is written

	Progress studio.Progress
}

// Asking reports that entries of a kind are taken out of a file only where that
// is asked for by name: they erase, declare a key, issue or take back a paper,
// correct or withdraw what the book says, publish, or rename the studio.
func Asking(k record.Kind) bool {
	life := k.Traits().Life
	return life == "keys" || life == "papers" || life == "book"
}

// Kinds counts the entries of each kind, in the order of their names.
func Kinds(es []record.Entry) (out []record.Said) {
	n := map[record.Kind]int{}
	for _, e := range es {
		n[e.Kind()]++
	}
	for _, k := range record.Kinds() {
		if n[k] > 0 {
			out = append(out, record.Say("import-kind", record.With("n", n[k]), record.With("kind", string(k))))
		}
	}
	return out
}

// Import appends entries read from a file, all or none. What does not say when
// it was written down is an act of today: it is judged as at the bench, its
// panels as if each was named by itself. What does is a part of another
// journal. In a book that has entries all of them are written now: when they
// say they were written, and where they come from, stays visible.
func Import(ctx context.Context, v *studio.View, o Order, es []record.Entry) (done []record.Entry, noted []Noted, err error) {
	if len(es) == 0 {
		return nil, nil, nil
	}
	fail := func(err error) error {
		return refuse.Because("not-imported", located(err, o.Name, o.Lines, "entry %d of the file, %w"))
	}
	now, others := v.Now, v.Shop.Last > 0
	if others {
		now = now.In(v.Zone)
		if err := o.unasked(es); err != nil {
			return nil, nil, err
		}
	}
	if !others && !o.Dry {
		if err := o.goesOn(ctx, v.Book, es); err != nil {
			return nil, nil, err
		}
	}
	if es, noted, err = judged(ctx, v, es, o.Lines); err != nil {
		return nil, noted, fail(err)
	}
	if f := o.Progress.Of("import"); f != nil {
		ctx = book.Watched(ctx, f)
	}
	write, from := v.Book.Append, slices.Clone(es)
	if o.Dry {
		write = v.Book.Rehearse
	}
	for i := range from {
		if others {
			from[i] = o.foreign(from[i])
		}
	}
	if done, err = write(ctx, now, from...); err != nil {
		return nil, noted, fail(err)
	}
	if o.Dry {
		return done, noted, nil
	}
	if v.Shop, err = v.Book.WorkshopOf(ctx); err != nil { // the shelf as it is now
		return done, noted, err
	}
	for i, e := range done {
		if !es[i].Written.IsZero() {
			continue
		}
		_, more, err := bench.After(ctx, v, e)
		if err != nil {
			return done, noted, err
		}
		noted = append(noted, at(o.Lines[i], more)...)
	}
	return done, noted, nil
}

// goesOn makes sure that a journal that is read into an empty book, to go on
// there, gives no number a second time.
func (o Order) goesOn(ctx context.Context, b *book.Book, es []record.Entry) error {
	w, err := record.Fold(es)
	if err != nil || len(w.Panels) == 0 || !slices.ContainsFunc(es, func(e record.Entry) bool { return !e.Written.IsZero() }) {
		return nil // what does not hang together is refused when it is written
	}
	used, err := typed.Highest(w, o.Highest)
	if err != nil || len(used) == 0 {
		return err
	}
	return b.Used(ctx, used...)
}

func at(line int, said []record.Said) (out []Noted) {
	for _, s := range said {
		out = append(out, Noted{line, s})
	}
	return out
}

// unasked refuses kinds that nobody asked for.
func (o Order) unasked(es []record.Entry) error {
	var kinds []string
	first := 0
	for i, e := range es {
		if k := e.Kind(); Asking(k) && !slices.Contains(o.Asked, k) && !slices.Contains(kinds, string(k)) {
			if kinds == nil && i < len(o.Lines) {
				first = o.Lines[i]
			}
			kinds = append(kinds, string(k))
		}
	}
	if kinds == nil {
		return nil
	}
	return refuse.Because("import-unasked", &BadFile{o.Name, first, fmt.Errorf("an entry of kind %s is taken into a book with entries only where that is asked for", kinds[0])},
		record.With("kinds", strings.Join(kinds, ",")))
}

// foreign makes an entry one that is written now and comes from a file.
func (o Order) foreign(e record.Entry) record.Entry {
	if e.Imported == (record.Imported{}) {
		e.Imported = record.Imported{From: filepath.Base(o.Name), At: e.Written}
	}
	e.Written = record.When{}
	return e
}

// located names the line of the file that an entry comes from.
func located(err error, name string, lines []int, format string) error {
	at, ok := errors.AsType[*book.AppendError](err)
	if !ok || at.Index >= len(lines) {
		return err
	}
	err = at.Err
	if format != "" {
		err = fmt.Errorf(format, at.Index+1, at.Err)
	}
	return &BadFile{name, lines[at.Index], err}
}
