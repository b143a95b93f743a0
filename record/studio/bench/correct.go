package bench

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/stock"
)

// Entry reads one entry of the journal.
func Entry(ctx context.Context, b *book.Book, seq int64) (record.Entry, error) {
	es, err := b.Entries(ctx, book.Filter{From: seq, To: seq})
	if err == nil && len(es) == 0 {
		err = refuse.Cannot("no-such-entry", "there is no entry %d", seq)
	}
	if err != nil {
		return record.Entry{}, err
	}
	return es[0].Entry, nil
}

// Outdated is a certificate that was issued before a correction of what it
// says.
type Outdated struct {
	Panel       record.Number
	Certificate int64 // its entry
}

// Correct writes a correction of an earlier entry, for the panels of the view
// or, if none are named, for all of the entry. It names the certificates that
// have gone out on the strength of what is corrected.
func Correct(ctx context.Context, v *studio.View, at record.When, old record.Entry, correction record.Body) (studio.Written, []Outdated, error) {
	w, err := v.Write(ctx, record.Entry{At: at, Panels: v.Panels, Body: correction})
	if err != nil {
		return w, nil, err
	}
	panels := v.Panels
	if len(panels) == 0 {
		panels = old.Panels
	}
	if len(panels) == 0 {
		return w, nil, nil
	}
	shop, err := v.Book.WorkshopOf(ctx, panels...)
	if err != nil {
		return w, nil, err
	}
	if len(v.Panels) == 0 { // an amount in all means nothing for some of the panels
		if err := sayAnew(ctx, v, shop, old, &w); err != nil {
			return w, nil, err
		}
	}
	var out []Outdated
	for _, n := range panels {
		p := shop.Panel(n)
		if p == nil {
			continue
		}
		if c, ok := p.Certificate(); ok && c.Seq > old.Seq {
			out = append(out, Outdated{n, c.Seq})
		}
	}
	return w, out, nil
}

// sayAnew says what an entry comes to as it stands now, and doubts it as if it
// were written anew.
func sayAnew(ctx context.Context, v *studio.View, shop *record.Workshop, old record.Entry, w *studio.Written) error {
	now := *v
	now.Shop, now.Panels = shop, nil
	var body record.Body
	for _, n := range old.Panels {
		if e, ok := shop.Panel(n).Event(old.Seq); ok {
			body, now.Panels = e.Body, append(now.Panels, n)
		}
	}
	if body == nil {
		return nil
	}
	left, over, err := stock.Left(ctx, v.Book, shop, body)
	if err != nil {
		return err
	}
	w.Warnings = append(w.Warnings, slices.Concat(purposes(&now, body), amounts(&now, body), Unlikely(body), over)...)
	w.Means = append(w.Means, append(mean(&now, body), left...)...)
	return nil
}
