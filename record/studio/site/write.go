package site

import (
	"context"
	"net/url"
	"os"
	"strings"
	"sync"

	"backleaf/certificate/page"
	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
)

// writer is one run. What a page needs is written when it is drawn; what is
// deleted waits for the end.
type writer struct {
	Order
	*folder
	journal *journal
	session *studio.Session
	version string // of what pages are drawn with

	mu      sync.Mutex // pages are drawn on all cores; it guards what they lead to
	result  Result
	files   map[string]bool               // written; two pages may write one asset at once
	wanted  map[string]bool               // assets that some page names
	records map[record.Number]seal.Digest // of the pages, in turn
	papers  map[seal.Standing][]seal.Digest
	links   []page.Link             // to the panels shown, where they are listed
	pages   map[string]bool         // folders
	blurred map[record.Number]error // photographs that cannot be read
}

func (w *writer) write(ctx context.Context) error {
	w.files, w.wanted, w.pages = map[string]bool{}, map[string]bool{}, map[string]bool{}
	w.blurred, w.papers = map[record.Number]error{}, map[seal.Standing][]seal.Digest{}
	w.warnOfLink()
	w.warnOfKey()
	w.version = page.Version(w.Catalogue)
	if err := w.notFoundPage(); err != nil { // first: by it the next run knows the folder
		return err
	}
	if err := w.panelPages(ctx); err != nil {
		return err
	}
	if w.Index {
		p, err := page.Index(w.Catalogue, w.journal.shop.Studio, w.links)
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

// warnOfKey says why nothing is signed, and what an earlier run signed.
func (w *writer) warnOfKey() {
	if w.Key != nil {
		return
	}
	asked, earlier := record.No, ""
	if w.Unsigned {
		asked = record.Yes
	}
	if _, err := os.Stat(w.path(status)); err == nil {
		earlier = status
	}
	w.warn("site-not-signed", record.With("asked", asked), record.With("earlier", earlier))
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

// putPage writes the assets of a page, then the page.
func (w *writer) putPage(name string, p page.Page, from, record seal.Digest) (bool, error) {
	if err := w.putAssets(p); err != nil {
		return false, err
	}
	w.stands(name, nil)
	return w.putFile(name+"/"+index, marked(p.HTML, from, record))
}

// putAssets writes what is not there. Two pages may write the same at once: each
// comes after its assets.
func (w *writer) putAssets(p page.Page) error {
	for _, a := range p.Assets {
		w.mu.Lock()
		w.wanted[a.Name] = true
		w.mu.Unlock()
		if !w.lacks(a.Name) {
			continue
		}
		if _, err := w.putFile(assets+"/"+a.Name, a.Data); err != nil {
			return err
		}
		w.mu.Lock()
		w.assets[a.Name] = true
		w.mu.Unlock()
	}
	return nil
}

// lacks reports that an asset is not there.
func (w *writer) lacks(asset string) bool {
	w.mu.Lock()
	defer w.mu.Unlock()
	return !w.assets[asset]
}

// putFile writes a file unless it stands, or says that it would.
func (w *writer) putFile(name string, data []byte) (written bool, err error) {
	if w.DryRun {
		written = !w.holds(name, data)
	} else {
		written, err = w.put(name, data)
	}
	if written {
		w.mu.Lock()
		defer w.mu.Unlock()
		w.files[name] = true
		w.result.Files = len(w.files)
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
		w.warn("site-index-removed")
		if err := gone(index); err != nil {
			return err
		}
	}
	for _, name := range w.others(w.pages) {
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
