package site

import (
	"context"
	"net/url"
	"os"
	"slices"
	"strings"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/deed"
	"backleaf/record/form"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
)

// writer is one run. What a page needs is written when it is drawn; what is
// deleted waits for the end.
type writer struct {
	Order
	*folder
	journal *journal
	session *studio.Session
	result  Result
	version string          // of what pages are drawn with
	wanted  map[string]bool // assets that some page names
	records []seal.Digest   // of the pages
	pages   map[string]bool // folders
}

func (w *writer) write(ctx context.Context) error {
	w.wanted, w.pages = map[string]bool{}, map[string]bool{}
	w.warnOfLink()
	if w.Key == nil {
		w.warn("site-not-signed")
	}
	w.version = page.Version(w.Catalogue)
	if err := w.notFoundPage(); err != nil { // first: by it the next run knows the folder
		return err
	}
	shown, err := w.panelPages(ctx)
	if err != nil {
		return err
	}
	if w.Index {
		p, err := page.Index(w.Catalogue, w.journal.shop, shown)
		if err := w.plainPage(index, p, err); err != nil {
			return err
		}
	}
	if w.Key != nil {
		if err := w.writeStatus(); err != nil {
			return err
		}
	}
	return w.remove()
}

func (w *writer) warn(code string, values ...record.Value) {
	w.result.Warnings = append(w.result.Warnings, record.Say(code, values...))
}

// warnOfLink says what a plain host cannot do.
func (w *writer) warnOfLink() {
	switch base := w.journal.shop.Studio.LinkBase; {
	case base == "":
		w.warn("site-without-link")
	case strings.HasSuffix(base, "=") || strings.HasSuffix(base, "?"):
		w.warn("site-link-asks", record.With("link", base))
	}
}

// panelPages writes the page of every panel that is, or was, to be shown, and
// returns those that are.
func (w *writer) panelPages(ctx context.Context) (shown []*record.Panel, err error) {
	var unasked, newer []record.Number
	all := w.journal.shop.Panels
	for i, p := range all {
		if w.Progress != nil {
			w.Progress("site", int64(i+1), int64(len(all)))
		}
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		show, ever, since := published(p)
		switch {
		case !ever:
		case studio.Readable(p) != nil:
			newer = append(newer, p.Number)
			err = w.keep(p.Number.Bare())
		case show:
			shown = append(shown, p)
			if _, asked := photograph(p); !asked {
				unasked = append(unasked, p.Number)
			}
			err = w.panelPage(ctx, p)
		default:
			w.result.TakenBack = append(w.result.TakenBack, p.Number)
			var out page.Page
			if out, err = page.TakenBack(w.Catalogue, w.journal.shop, p, since); err == nil {
				_, err = w.putPage(p.Number.Bare(), out, seal.Digest{}, seal.Digest{})
			}
		}
		if err != nil {
			return nil, err
		}
	}
	w.result.Shown = len(shown)
	if unasked != nil {
		w.warn("photograph-not-asked", record.With("panels", unasked))
	}
	if newer != nil {
		w.warn("site-newer", record.With("panels", newer))
	}
	return shown, nil
}

// keep leaves a page as it is.
func (w *writer) keep(name string) error {
	if m, ok := w.mark(name + "/" + index); ok {
		w.pages[name] = true
		w.want(named(m.page))
	}
	return nil
}

func (w *writer) want(names []string) {
	for _, n := range names {
		w.wanted[n] = true
	}
}

// panelPage writes the page of a panel, unless it stands as it would be drawn.
func (w *writer) panelPage(ctx context.Context, p *record.Panel) error {
	entries, digest := w.journal.follows(p.Number)
	show, _ := photograph(p)
	from := w.drawnFrom(digest)
	name := p.Number.Bare()
	if m, ok := w.mark(name + "/" + index); ok && !w.Anew && m.From == from {
		names := named(m.page)
		if !slices.ContainsFunc(names, func(n string) bool { return !w.assets[n] }) {
			w.pages[name] = true
			w.records = append(w.records, m.Record)
			w.want(names)
			return nil
		}
	}
	out, record, err := w.draw(ctx, p.Number, entries, show)
	if err != nil {
		return err
	}
	w.records = append(w.records, record)
	written, err := w.putPage(name, out, from, record)
	if written {
		w.result.Written = append(w.result.Written, p.Number)
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
				w.warn("site-photograph", record.With("panel", n), record.With("problem", err.Error()))
				in.Photograph, in.Withheld = nil, true
			}
		}
	}
	out, err := page.Draw(in)
	return out, seal.DigestOf(in.Deed.Record), err
}

// putPage writes the assets of a page, then the page.
func (w *writer) putPage(name string, p page.Page, from, record seal.Digest) (bool, error) {
	if err := w.putAssets(p); err != nil {
		return false, err
	}
	w.pages[name] = true
	return w.putFile(name+"/"+index, marked(p.HTML, from, record))
}

func (w *writer) putAssets(p page.Page) error {
	for _, a := range p.Assets {
		w.wanted[a.Name] = true
		if w.assets[a.Name] {
			continue
		}
		if _, err := w.putFile(assets+"/"+a.Name, a.Data); err != nil {
			return err
		}
		if w.assets == nil {
			w.assets = map[string]bool{}
		}
		w.assets[a.Name] = true
	}
	return nil
}

// putFile writes a file unless it stands, or says that it would.
func (w *writer) putFile(name string, data []byte) (written bool, err error) {
	if w.DryRun {
		written = !w.holds(name, data)
	} else {
		written, err = w.put(name, data)
	}
	if written {
		w.result.Files++
	}
	return written, err
}

// notFoundPage writes the page for an address without a panel.
func (w *writer) notFoundPage() error {
	st := w.journal.shop.Studio
	up := ""
	if u, err := url.Parse(st.LinkBase); err == nil && strings.HasSuffix(u.Path, "/") {
		up = u.Path
	}
	sample, err := record.NewNumber(st.Mark, 26, 142, st.NAAN)
	if err != nil {
		return err
	}
	p, err := page.NotFound(w.Catalogue, st, sample, up)
	return w.plainPage(notFound, p, err)
}

// plainPage writes a page that belongs to no panel.
func (w *writer) plainPage(name string, p page.Page, err error) error {
	if err == nil {
		err = w.putAssets(p)
	}
	if err == nil {
		_, err = w.putFile(name, marked(p.HTML, seal.Digest{}, seal.Digest{}))
	}
	return err
}

// remove deletes what nothing names any more: pages first, then assets.
func (w *writer) remove() error {
	gone := func(name string) error {
		if w.DryRun {
			return nil
		}
		return os.Remove(w.path(name))
	}
	if _, ours := w.mark(index); ours && !w.Index {
		w.result.Removed = append(w.result.Removed, index)
		if err := gone(index); err != nil {
			return err
		}
	}
	for _, name := range w.panels() {
		if w.pages[name] {
			continue
		}
		w.result.Removed = append(w.result.Removed, name)
		if err := gone(name + "/" + index); err != nil {
			return err
		}
		if !w.DryRun {
			os.Remove(w.path(name)) // unless somebody put something else there
		}
	}
	for name := range w.assets {
		if !w.wanted[name] {
			if err := gone(assets + "/" + name); err != nil {
				return err
			}
		}
	}
	return nil
}
