package site

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
)

// panelPages writes the page of every panel that is, or was, to be shown, and
// notes how its papers stand and those of panels that only have a certificate.
// What some panels need is held at a time.
func (w *writer) panelPages(ctx context.Context) error {
	var all, shown, unasked, newer []record.Number
	kinds := []record.Kind{record.Published{}.Kind(), record.Issued{}.Kind()}
	if err := w.session.Book.Panels(ctx, book.Narrow{Kinds: kinds}, func(p book.Present) error { all = append(all, p.Number); return nil }); err != nil {
		return err
	}
	done := 0
	for part := range slices.Chunk(all, 250) {
		if err := w.journal.turn(ctx, part); err != nil {
			return err
		}
		w.records = map[record.Number]seal.Digest{}
		shop := w.journal.shop
		if err := onCores(ctx, shop.Panels, func(p *record.Panel) func() error {
			if done++; w.Progress != nil {
				w.Progress("site", int64(done), int64(len(all)))
			}
			switch show, ever, since := published(p); {
			case !ever:
				return nil
			case studio.Readable(p) != nil:
				newer = append(newer, p.Number)
				w.keep(p.Number.Bare())
				return nil
			case show:
				if shown = append(shown, p.Number); w.Index {
					w.links = append(w.links, page.LinkTo(w.Catalogue, shop, p))
				}
				if _, asked := photograph(p); !asked {
					unasked = append(unasked, p.Number)
				}
				return func() error { return w.panelPage(ctx, p) }
			default:
				w.result.TakenBack = append(w.result.TakenBack, p.Number)
				return func() error { return w.takenBackPage(p, since) }
			}
		}); err != nil {
			return err
		}
		for _, p := range shop.Panels {
			standings(p, w.records[p.Number], w.papers)
		}
	}
	w.result.Shown = len(shown)
	for _, n := range shown {
		if err, ok := w.blurred[n]; ok {
			w.warn("site-photograph", record.With("panel", n), record.With("problem", err.Error()))
		}
	}
	slices.Sort(w.result.Written)
	if unasked != nil {
		w.warn("photograph-not-asked", record.With("panels", unasked))
	}
	if newer != nil {
		w.warn("site-newer", record.With("panels", newer))
	}
	return nil
}

// onCores does on all cores what is to be done of each panel, if anything is.
func onCores(ctx context.Context, panels []*record.Panel, of func(*record.Panel) func() error) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	queue := make(chan func() error)
	var workers sync.WaitGroup
	for range 2 * runtime.GOMAXPROCS(0) { // half of them wait for the disk
		workers.Go(func() {
			for draw := range queue {
				if err := draw(); err != nil {
					stop(err)
				}
			}
		})
	}
	for _, p := range panels {
		if ctx.Err() != nil {
			break
		}
		if draw := of(p); draw != nil {
			queue <- draw
		}
	}
	close(queue)
	workers.Wait()
	return context.Cause(ctx)
}

// keep leaves a page as it is.
func (w *writer) keep(name string) {
	if m, ok := w.mark(name + "/" + index); ok {
		w.stands(name, named(m.page))
	}
}

// stands notes that a page is there, or will be, with its assets.
func (w *writer) stands(name string, assets []string) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.pages[name] = true
	for _, n := range assets {
		w.wanted[n] = true
	}
}

// panelPage writes the page of a panel, unless it stands as it would be drawn.
func (w *writer) panelPage(ctx context.Context, p *record.Panel) error {
	entries, digest := w.journal.follows(p.Number)
	from := w.drawnFrom(digest)
	name := p.Number.Bare()
	if m, ok := w.mark(name + "/" + index); ok && !w.Anew && m.From == from {
		if names := named(m.page); !slices.ContainsFunc(names, w.lacks) {
			w.stands(name, names)
			w.carries(p.Number, m.Record)
			return nil
		}
	}
	show, _ := photograph(p)
	out, record, err := w.draw(ctx, p.Number, entries, show)
	if err != nil {
		return err
	}
	w.carries(p.Number, record)
	written, err := w.putPage(name, out, from, record)
	if written {
		w.mu.Lock()
		defer w.mu.Unlock()
		w.result.Written = append(w.result.Written, p.Number)
	}
	return err
}

func (w *writer) carries(n record.Number, digest seal.Digest) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.records[n] = digest
}

func (w *writer) unread(n record.Number, err error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	w.blurred[n] = err
}

func (w *writer) takenBackPage(p *record.Panel, since record.When) error {
	out, err := page.TakenBack(w.Catalogue, w.journal.shop, p, since)
	if err == nil {
		_, err = w.putPage(p.Number.Bare(), out, seal.Digest{}, seal.Digest{})
	}
	return err
}

// drawnFrom names all that a page follows from.
func (w *writer) drawnFrom(entries seal.Digest) seal.Digest {
	key := "none"
	if w.Key != nil {
		key = w.Key.Public().Fingerprint().String()
	}
	return seal.DigestOf([]byte(w.version + "\n" + entries.String() + "\n" + key))
}

// draw draws a page from what its record holds, as of its last entry.
func (w *writer) draw(ctx context.Context, n record.Number, entries []form.Stored, show bool) (page.Page, seal.Digest, error) {
	none := seal.Digest{}
	shop, err := record.Fold(form.Entries(entries))
	if err != nil {
		return page.Page{}, none, err
	}
	panel := shop.Panel(n)
	at, _ := shop.Written.Exact()
	in := page.Input{Workshop: shop, Panel: panel, Key: w.Key, Catalogue: w.Catalogue}
	if in.Deed, err = deed.Make(ctx, then{w.journal, shop.Last}, shop, panel, nil, w.Key, at); err != nil {
		return page.Page{}, none, err
	}
	if ph, ok := page.Front(panel); ok {
		if in.Withheld = !show; show {
			if in.Photograph, err = kept.Read(w.session.Book.Path(), kept.Photograph(ph)); err != nil {
				w.unread(n, err)
				in.Photograph, in.Withheld = nil, true
			}
		}
	}
	out, err := page.Draw(in)
	return out, seal.DigestOf(in.Deed.Record), err
}
