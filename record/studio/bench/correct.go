package bench

import (
	"context"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
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
