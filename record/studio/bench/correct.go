package bench

import (
	"context"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

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
	means, warnings, err := After(ctx, v, w.Entries[0])
	if w.Means, w.Warnings = means, append(w.Warnings, warnings...); err != nil {
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

// stays warns where the date of an act is moved that names a material of several
// descriptions: it stays bound to the one it was bound to, unless the change
// names the material anew.
func stays(shop *record.Workshop, old record.Entry, correction record.Body) []record.Said {
	a, ok := correction.(record.Amended)
	var change map[string]jsontext.Value
	if !ok || json.Unmarshal(a.Change, &change) != nil || change["at"] == nil {
		return nil
	}
	var kept []record.Key
	for _, m := range record.Mentions(old.Body) {
		field, _, _ := strings.Cut(m.Place, "/")
		if change[field] == nil && shop.Versions(m.Material) > 1 && !slices.Contains(kept, m.Material) {
			kept = append(kept, m.Material)
		}
	}
	if kept == nil {
		return nil
	}
	return []record.Said{record.Say("date-moved", record.With("materials", kept))}
}

// corrected says what an entry comes to as it stands after a correction, and
// doubts it as if it were written anew. A correction for some of the panels is
// left alone: an amount in all means nothing for these.
func corrected(ctx context.Context, v *studio.View, c record.Entry) (means, warnings []record.Said, err error) {
	old, err := Entry(ctx, v.Book, c.Corrects())
	if err != nil {
		return nil, nil, err
	}
	moved := stays(v.Shop, old, c.Body)
	if len(c.Panels) > 0 || len(old.Panels) == 0 {
		return nil, moved, nil
	}
	now := *v
	if now.Shop, err = v.Book.WorkshopOf(ctx, old.Panels...); err != nil {
		return nil, nil, err
	}
	var body record.Body
	now.Panels = nil
	for _, n := range old.Panels {
		if e, ok := now.Shop.Panel(n).Event(old.Seq); ok {
			body, now.Panels = e.Body, append(now.Panels, n)
		}
	}
	if body == nil {
		return nil, moved, nil
	}
	left, over, err := stock.Left(ctx, v.Book, now.Shop, body)
	return append(mean(&now, body), left...), slices.Concat(moved, purposes(&now, body), amounts(&now, body), Unlikely(body), over), err
}
