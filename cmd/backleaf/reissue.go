package main

import (
	"context"

	"backleaf/record"
	"backleaf/record/book"
)

// offerReplacement says when a correction touches panels whose certificate
// has been issued: the paper now differs from the record.
func (a *app) offerReplacement(ctx context.Context, b *book.Book, old record.Entry, only []record.Number) error {
	panels := only
	if len(panels) == 0 {
		panels = old.Panels
	}
	if len(panels) == 0 {
		return nil
	}
	w, err := b.WorkshopOf(ctx, panels...)
	if err != nil {
		return err
	}
	for _, n := range panels {
		p := w.Panel(n)
		if p == nil {
			continue
		}
		if c, ok := p.Certificate(); ok && c.Seq > old.Seq {
			a.say("the certificate of %s (E%d) was issued before this correction; to replace it: backleaf certificate %s -o FILE", n, c.Seq, n)
		}
	}
	return nil
}
