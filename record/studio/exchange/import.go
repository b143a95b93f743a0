package exchange

import (
	"context"
	"errors"
	"fmt"
	"iter"
	"path/filepath"
	"reflect"
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
	Size    int64  // of the file in bytes; 0: not known
	Asked   []record.Kind
	Highest []string // the highest numbers on labels, where the file goes on from an older copy
	Dry     bool     // nothing is written

	Progress studio.Progress
}

// Taken is what was taken out of a file.
type Taken struct {
	First, Last int64 // numbers in the book
	Kinds       map[record.Kind]int
	Noted       []Noted
	acts        []Listed // of today, as written
	moved       bool     // some of it says when it was written
}

// Asking reports that entries of a kind are taken out of a file only where that
// is asked for by name: they erase, declare a key, issue or take back a paper,
// correct or withdraw what the book says, publish, rename the studio, or say where
// a panel went, so that no theft begins or ends unseen; or they name a photograph,
// which such a file does not bring.
func Asking(k record.Kind) bool {
	life := k.Traits().Life
	return life == "keys" || life == "papers" || life == "book" || life == "whereabouts" || k == "photograph"
}

// Counted counts the entries of each kind, in the order of their names.
func (t Taken) Counted() (out []record.Said) {
	for _, k := range record.Kinds() {
		if n := t.Kinds[k]; n > 0 {
			out = append(out, record.Say("import-kind", record.With("n", n), record.With("kind", string(k))))
		}
	}
	return out
}

// Said says which entries of a file were taken.
func (t Taken) Said(name string) []record.Said {
	if t.Last == 0 {
		return []record.Said{record.Say("no-entries", record.With("file", name))}
	}
	return []record.Said{record.Say("entries-imported", record.With("first", record.EntryRef(t.First)), record.With("last", record.EntryRef(t.Last)),
		record.With("n", int(t.Last-t.First)+1), record.With("file", name))}
}

// Import writes the entries of a file as they are read, all or none. What does not
// say when it was written down is an act of today: it is judged as at the bench, its
// panels as if each was named by itself. What does is a part of another
// journal. In a book that has entries all of them are written now: when they
// say they were written, and where they come from, stays visible.
func Import(ctx context.Context, v *studio.View, o Order, file iter.Seq2[Listed, error]) (t Taken, err error) {
	t.Kinds = map[record.Kind]int{}
	now, others := v.Now, v.Shop.Last > 0
	if others {
		now = now.In(v.Zone)
	}
	if o.Dry {
		ctx = book.Trial(ctx)
	}
	if err := v.Book.Fill(ctx, now, func(d *book.Draft) error {
		d.Panels = o.Progress.Of("panels")
		return t.fill(ctx, v, o, d, ahead(ctx, file))
	}); err != nil || o.Dry {
		return t, err
	}
	ctx = context.WithoutCancel(ctx) // they are written: an interruption comes too late
	shop, err := v.Book.WorkshopOf(ctx)
	if err != nil {
		return t, err
	}
	v.Shop = shop // the shelf as it is now
	for _, e := range t.acts {
		_, more, err := bench.After(ctx, v, e.Entry)
		if err != nil {
			return t, err
		}
		t.Noted = append(t.Noted, at(e.Line, more)...)
	}
	return t, nil
}

func (t *Taken) fill(ctx context.Context, v *studio.View, o Order, d *book.Draft, file iter.Seq2[Listed, error]) error {
	others, n, weight := v.Shop.Last > 0, 0, 0
	var unasked []string
	var first int // line of the first of them
	p := &past{View: v, draft: d}
	for e, err := range file {
		if _, other := errors.AsType[otherFile](err); other {
			return refuse.Because("not-entries", err)
		}
		if err != nil {
			return refuse.Because("not-imported", err)
		}
		if n++; o.Progress != nil && o.Size > 0 && n%100 == 0 {
			o.Progress("import", e.Read>>10, o.Size>>10)
		}
		k := e.Kind()
		if others && unasked == nil {
			there, _, ok, err := d.History(e.Seq)
			if err != nil {
				return err
			}
			if ok && reflect.DeepEqual(there, e.Entry) {
				return refuse.Because("in-book-already", &BadFile{o.Name, e.Line, fmt.Errorf("this entry is in this book already: E%d", e.Seq)})
			}
		}
		if t.Kinds[k]++; others && Asking(k) && !slices.Contains(o.Asked, k) && !slices.Contains(unasked, string(k)) {
			if unasked == nil {
				first = e.Line
			}
			unasked = append(unasked, string(k))
		}
		if unasked != nil {
			continue // the other kinds are named too
		}
		no := func(err error) error {
			return refuse.Because("not-imported", &BadFile{o.Name, e.Line, fmt.Errorf("entry %d of the file, %w", n, err)})
		}
		act := e.Written.IsZero()
		if act {
			if weight += 2 + len(e.Panels); weight > maxWeight {
				return no(errMany)
			}
			var said []record.Said
			if e.Body, said, err = p.judge(ctx, e.Entry); err != nil {
				return no(err)
			}
			t.Noted = append(t.Noted, at(e.Line, said)...)
			if err = studio.Unnamed(d, []record.Entry{e.Entry}, nil); err != nil {
				return no(err)
			}
		}
		t.moved = t.moved || !act
		if others {
			e.Entry = o.foreign(e.Entry)
		}
		if e.Entry, err = d.Put(e.Entry); err != nil {
			return no(err)
		}
		p.add(e.Entry)
		if t.Last = e.Seq; t.First == 0 {
			t.First = e.Seq
		}
		if act {
			t.acts = append(t.acts, e)
		}
	}
	if unasked != nil {
		return refuse.Because("import-unasked", &BadFile{o.Name, first, fmt.Errorf("an entry of kind %s would change what the book already says, and is taken only where that is asked for", unasked[0])},
			record.With("kinds", strings.Join(unasked, ",")))
	}
	if o.Progress != nil && o.Size > 0 {
		o.Progress("import", o.Size>>10, o.Size>>10)
	}
	if others || o.Dry || !t.moved || p.last == "" {
		return nil
	}
	// A journal that goes on here must give no number a second time.
	st, _ := d.StudioNow()
	used, err := typed.Highest(st, p.last, o.Highest)
	if err != nil {
		return err
	}
	return d.Used(used...)
}

// ahead reads what comes next while the last is written.
func ahead(ctx context.Context, file iter.Seq2[Listed, error]) iter.Seq2[Listed, error] {
	type next struct {
		Listed
		err error
	}
	return func(yield func(Listed, error) bool) {
		ctx, stop := context.WithCancel(ctx)
		defer stop()
		read := make(chan next, 256)
		go func() {
			defer close(read)
			for e, err := range file {
				select {
				case read <- next{e, err}:
				case <-ctx.Done():
					return
				}
			}
		}()
		for {
			select {
			case e, ok := <-read:
				if !ok || !yield(e.Listed, e.err) {
					return
				}
			case <-ctx.Done():
				yield(Listed{}, ctx.Err())
				return
			}
		}
	}
}

func at(line int, said []record.Said) (out []Noted) {
	for _, s := range said {
		out = append(out, Noted{line, s})
	}
	return out
}

// foreign makes an entry one that is written now and comes from a file.
func (o Order) foreign(e record.Entry) record.Entry {
	if e.Imported == (record.Imported{}) {
		e.Imported = record.Imported{From: filepath.Base(o.Name), At: e.Written}
	}
	e.Written = record.When{}
	return e
}
