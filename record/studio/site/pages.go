package site

import (
	"context"
	"runtime"
	"slices"
	"sync"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
)

// panelPages writes the page of every panel that is, or was, to be shown, on all
// cores, and returns those that are.
func (w *writer) panelPages(ctx context.Context) (shown []*record.Panel, err error) {
	var unasked, newer []record.Number
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
	all := w.journal.shop.Panels
	for i, p := range all {
		if w.Progress != nil {
			w.Progress("site", int64(i+1), int64(len(all)))
		}
		if ctx.Err() != nil {
			break
		}
		show, ever, since := published(p)
		switch {
		case !ever:
		case studio.Readable(p) != nil:
			newer = append(newer, p.Number)
			w.keep(p.Number.Bare())
		case show:
			shown = append(shown, p)
			if _, asked := photograph(p); !asked {
				unasked = append(unasked, p.Number)
			}
			queue <- func() error { return w.panelPage(ctx, p) }
		default:
			w.result.TakenBack = append(w.result.TakenBack, p.Number)
			queue <- func() error { return w.takenBackPage(p, since) }
		}
	}
	close(queue)
	workers.Wait()
	if err := context.Cause(ctx); err != nil {
		return nil, err
	}
	w.result.Shown = len(shown)
	for _, p := range shown {
		if err, ok := w.blurred[p.Number]; ok {
			w.warn("site-photograph", record.With("panel", p.Number), record.With("problem", err.Error()))
		}
	}
	slices.Sort(w.result.Written)
	if unasked != nil {
		w.warn("photograph-not-asked", record.With("panels", unasked))
	}
	if newer != nil {
		w.warn("site-newer", record.With("panels", newer))
	}
	return shown, nil
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
