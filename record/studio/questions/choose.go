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
	"backleaf/record/studio/refuse"
)

// One finds one panel by what was typed, with what is needed to fold it.
func One(ctx context.Context, b *book.Book, typed string) (*record.Workshop, *record.Panel, error) {
	roll, err := b.Roll(ctx, typed)
	if err != nil {
		return nil, nil, err
	}
	n, err := roll.Find(typed)
	if err != nil {
		return nil, nil, refuse.Because("no-such-panel", err)
	}
	w, err := b.WorkshopOf(ctx, n)
	if err != nil {
		return nil, nil, err
	}
	return w, w.Panel(n), nil
}

// Around folds what these panels need, together with the panels that shared
// an entry with them: an amount for a batch says nothing of one panel without
// the sizes of the others.
func Around(ctx context.Context, b *book.Book, ns ...record.Number) (*record.Workshop, error) {
	w, err := b.WorkshopOf(ctx, ns...)
	if err != nil {
		return nil, err
	}
	all := slices.Clone(ns)
	for _, p := range w.Panels {
		for _, e := range p.Events {
			all = append(all, e.Panels...)
		}
	}
	slices.Sort(all)
	if all = slices.Compact(all); len(all) == len(ns) {
		return w, nil
	}
	return b.WorkshopOf(ctx, all...)
}

// Chosen finds panels and what they share entries with; without terms, all
// panels that were not discarded and that this program can read.
func Chosen(ctx context.Context, b *book.Book, terms, except []string) (*record.Workshop, []*record.Panel, error) {
	if err := studio.Known(b); err != nil {
		return nil, nil, err
	}
	if len(terms) == 0 {
		w, err := b.Workshop(ctx)
		if err != nil {
			return nil, nil, err
		}
		var ps []*record.Panel
		for _, p := range w.Panels {
			if _, gone := p.Discarded(); !gone && len(p.Newer) == 0 {
				ps = append(ps, p)
			}
		}
		return w, ps, nil
	}
	roll, err := b.Roll(ctx, slices.Concat(terms, except)...)
	if err != nil {
		return nil, nil, err
	}
	ns, err := roll.Select(terms, except)
	if err != nil {
		return nil, nil, refuse.Because("no-such-panel", err)
	}
	w, err := Around(ctx, b, ns...)
	if err != nil {
		return nil, nil, err
	}
	var ps []*record.Panel
	for _, n := range ns {
		ps = append(ps, w.Panel(n))
	}
	return w, ps, studio.Readable(ps...)
}
