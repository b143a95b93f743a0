// Package benchpage serves the record as a page for a tablet at the bench: the
// second door to record/studio. It decides nothing itself. Pages are made on
// the computer and work without script; the script counts down, keeps a form
// that could not be sent, and shows what another tablet wrote.
//
// A form shows what will be written before it is: every change of it is tried
// in the book and taken back ([book.Trial]), and what is written must be what
// was shown last, or it is shown again. A form carries a token and writes once
// ([book.Once]), however often it is sent.
//
// TestWorkingDay plays a day in Chromium; TestGuards holds strangers off.
package benchpage

import (
	"bytes"
	"context"
	"embed"
	"html/template"
	"io/fs"
	"net/http"
	"sync"
	"time"

	"backleaf/record"
	"backleaf/record/seal"
	"backleaf/record/studio"
	"backleaf/record/tell"
)

//go:embed pages assets
var files embed.FS

// Server is the page of one book.
type Server struct {
	Studio   *studio.Session
	Words    *tell.Catalogue // nil: English
	ReadOnly bool
	// Key opens the studio's signing key for a certificate.
	Key func(context.Context) (*seal.Key, error)
	// Hosts are the names under which the page may be asked for, with port.
	Hosts []string
	// Door asks devices other than this computer to pair; nil: all may enter.
	Door *Door

	folded folded
	pages  map[string]*template.Template
}

// folded is the whole book as last folded, kept until something is written.
type folded struct {
	sync.Mutex
	size int64
	shop *record.Workshop
}

// all folds the whole book, once for each state of it.
func (s *Server) all(ctx context.Context) (*record.Workshop, error) {
	s.folded.Lock()
	defer s.folded.Unlock()
	size, _, err := s.Studio.Book.Tree(ctx)
	if err != nil || s.folded.shop != nil && s.folded.size == size {
		return s.folded.shop, err
	}
	w, err := s.Studio.Book.Workshop(ctx)
	if err == nil {
		s.folded.size, s.folded.shop = w.Last, w
	}
	return w, err
}

// Handler serves the pages.
func (s *Server) Handler() (http.Handler, error) {
	if s.Words == nil {
		s.Words = tell.English()
	}
	if err := s.parse(); err != nil {
		return nil, err
	}
	assets, err := fs.Sub(files, "assets")
	if err != nil {
		return nil, err
	}
	mux := http.NewServeMux()
	mux.Handle("GET /bench.css", http.FileServerFS(assets))
	mux.Handle("GET /bench.js", http.FileServerFS(assets))
	mux.Handle("GET /icon.svg", http.FileServerFS(assets))
	for pattern, serve := range map[string]func(*desk) error{
		"GET /{$}":                 (*desk).today,
		"GET /batch/{batch}":       (*desk).batch,
		"GET /panel/{panel}":       (*desk).panel,
		"GET /finish/{panel}":      (*desk).finish,
		"GET /panels":              (*desk).panels,
		"GET /shelf":               (*desk).shelf,
		"GET /find":                (*desk).find,
		"GET /entry/{entry}":       (*desk).entry,
		"GET /act/{act}":           (*desk).act,
		"GET /photograph/{sum}":    (*desk).photograph,
		"GET /paper/{sum}":         (*desk).paper,
		"GET /preview/{paper}":     (*desk).preview,
		"GET /dossier/{panel}":     (*desk).dossier,
		"GET /posted/{token}":      (*desk).posted,
		"GET /now":                 (*desk).tell,
		"POST /act/{act}":          (*desk).act,
		"POST /panel/{panel}/keep": (*desk).keep,
		"POST /scan":               (*desk).scan,
	} {
		mux.Handle(pattern, s.serve(serve))
	}
	mux.HandleFunc("GET /pair", func(w http.ResponseWriter, _ *http.Request) { s.askCode(w, http.StatusOK, "") })
	mux.HandleFunc("POST /pair", s.pair)
	mux.Handle("GET /devices", s.serve((*desk).devices))
	mux.Handle("POST /devices", s.serve((*desk).endPairing))
	return s.guarded(mux), nil
}

// desk is one request.
type desk struct {
	*Server
	w   http.ResponseWriter
	r   *http.Request
	ctx context.Context
	c   *tell.Catalogue // as words are said now, in the studio's zone
	now time.Time       // in the studio's zone

	shop *record.Workshop // the whole book
}

// serve answers a request with a page, or with why not.
func (s *Server) serve(page func(*desk) error) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		d := &desk{Server: s, w: w, r: r, ctx: r.Context()}
		var err error
		if d.shop, err = s.all(d.ctx); err == nil {
			zone := studio.Zone(d.shop.Studio)
			d.now = s.Studio.Clock().In(zone)
			d.c = s.Words.AtPage().At(d.now, zone).For(d.shop.Studio)
			err = page(d)
		}
		if err != nil {
			d.fail(err)
		}
	})
}

// view is what every page is made of.
type view struct {
	Name     string // of the page
	Title    string
	Maker    string
	Size     int64
	Now      int64 // milliseconds since 1970
	ReadOnly bool
	Lan      bool
	Written  *written
	Tell     *tell.Catalogue
	Body     any
}

// show writes a page.
func (d *desk) show(name, title string, body any) error {
	return d.showAs(http.StatusOK, name, title, body)
}

func (d *desk) showAs(status int, name, title string, body any) error {
	v := view{Name: name, Title: title, Maker: d.shop.Studio.Maker, Size: d.shop.Last, Now: d.now.UnixMilli(),
		ReadOnly: d.ReadOnly, Lan: d.Door != nil, Tell: d.c, Body: body}
	if token := d.r.FormValue("w"); token != "" && d.r.Method == http.MethodGet {
		v.Written = d.writtenBy(token)
	}
	return d.Server.write(d.w, status, name, v)
}

func (s *Server) write(w http.ResponseWriter, status int, name string, v view) error {
	var b bytes.Buffer
	if err := s.pages[name].Execute(&b, v); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/html; charset=utf-8")
	w.WriteHeader(status)
	_, err := w.Write(b.Bytes())
	return err
}
