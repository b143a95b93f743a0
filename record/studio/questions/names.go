package questions

import (
	"cmp"
	"context"
	"maps"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/shelf"
)

// Name is what a person may type, and a word on what it is.
type Name struct{ Name, What string }

// standing names what of one sort stands on the shelf.
func standing[B record.Body](list []record.Done[B], name func(B) Name) (out []Name) {
	for _, d := range list {
		out = append(out, name(d.Body))
	}
	return out
}

// Names are those that the book has of one sort: panels that were not discarded,
// batches, lots, materials, both as shelf, recipes, makers; the generic
// materials as starter; or rules.
func Names(ctx context.Context, b *book.Book, sort string) (out []Name, err error) {
	switch sort {
	case "panels":
		err = b.Panels(ctx, book.Narrow{}, func(p book.Present) error {
			if p.Place != book.Discarded {
				out = append(out, Name{string(p.Number), p.Title})
			}
			return nil
		})
		batches, berr := Names(ctx, b, "batches")
		for _, k := range batches {
			out = append(out, Name{"batch:" + k.Name, ""})
		}
		return out, cmp.Or(err, berr)
	case "batches":
		roll, err := b.Roll(ctx)
		for _, k := range slices.Sorted(maps.Keys(roll.Batches)) {
			out = append(out, Name{string(k), ""})
		}
		return out, err
	case "rules":
		for _, r := range Rules() {
			out = append(out, Name{r, ""})
		}
		return out, nil
	case "starter":
		for _, m := range shelf.Starter() {
			out = append(out, Name{string(m.Key), m.Name})
		}
		return append(out, Name{"all", ""}), nil
	}
	w, err := b.WorkshopOf(ctx)
	if err != nil {
		return nil, err
	}
	lots := standing(w.Lots, func(l record.Lot) Name { return Name{string(l.Key), string(l.Material) + " " + l.MakerLot} })
	materials := standing(w.Materials, func(m record.Material) Name { return Name{string(m.Key), m.Name} })
	return map[string][]Name{
		"lots": lots, "materials": materials, "shelf": append(lots, materials...),
		"recipes": standing(w.Recipes, func(r record.Recipe) Name { return Name{string(r.Key), ""} }),
		"makers":  standing(w.Makers, func(m record.Maker) Name { return Name{string(m.Key), m.Name} }),
	}[sort], nil
}

// Extent is the shelf of a book, and how many entries and panels it holds.
func Extent(ctx context.Context, b *book.Book) (w *record.Workshop, entries int64, panels int, err error) {
	w, err1 := b.Shelf(ctx)
	entries, _, err2 := b.Tree(ctx)
	panels, err3 := b.Count(ctx)
	return w, entries, panels, cmp.Or(err1, err2, err3)
}
