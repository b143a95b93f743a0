// Package questions answers what is asked of the book: which panels, what is
// due, what the rules find, what it cost, the story of one panel, a short
// question. It writes nothing. Results bear the names under which programs
// read them as JSON.
package questions

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
)

// One finds one panel by what was typed, with what is needed to tell it.
func One(ctx context.Context, b *book.Book, typed string) (*record.Workshop, *record.Panel, error) {
	if n, err := record.ParseNumber(typed, ""); err == nil { // the whole number is that panel, whatever others are called
		if w, err := b.Story(ctx, n); err != nil {
			return nil, nil, err
		} else if p := w.Panel(n); p != nil {
			return w, p, nil
		}
	}
	roll, err := b.Roll(ctx, typed)
	if err != nil {
		return nil, nil, err
	}
	n, err := roll.Find(typed)
	if err != nil {
		return nil, nil, studio.NoPanel(err)
	}
	w, err := b.Story(ctx, n)
	if err != nil {
		return nil, nil, err
	}
	return w, w.Panel(n), nil
}

// numbers finds panels by what was typed; without terms, all that this program can read and that
// are not gone.
func numbers(ctx context.Context, b *book.Book, terms, except []string, gone func(book.Present) bool) (ns []record.Number, err error) {
	if err := studio.Known(b); err != nil {
		return nil, err
	}
	if len(terms) == 0 {
		err := b.Panels(ctx, book.Narrow{}, func(p book.Present) error {
			if !gone(p) && !p.Newer {
				ns = append(ns, p.Number)
			}
			return nil
		})
		return ns, err
	}
	roll, err := b.Roll(ctx, slices.Concat(terms, except)...)
	if err != nil {
		return nil, err
	}
	if ns, err = roll.Select(terms, except); err != nil {
		return nil, studio.NoPanel(err)
	}
	var newer []record.Number
	if err := b.Panels(ctx, book.Narrow{Numbers: ns}, func(p book.Present) error {
		if p.Newer {
			newer = append(newer, p.Number)
		}
		return nil
	}); err != nil || newer == nil {
		return ns, err
	}
	w, err := b.WorkshopOf(ctx, newer[0])
	if err != nil {
		return nil, err
	}
	return ns, studio.Readable(w.Panel(newer[0]))
}

func discarded(p book.Present) bool { return p.Place == book.Discarded }
