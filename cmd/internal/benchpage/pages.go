package benchpage

import (
	"crypto/rand"
	"errors"
	"fmt"
	"html/template"
	"io/fs"
	"net/http"
	"path"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
	"backleaf/record/tell"
)

// parse reads the pages, each with what surrounds all of them.
func (s *Server) parse() error {
	funcs := template.FuncMap{
		"say":    func(code string) string { return s.text("page-" + code) },
		"input":  func(name string) string { return s.text("in-" + name) },
		"short":  short,
		"first":  func(n int, all []done) []done { return all[:n] },
		"after":  func(n int, all []done) []done { return all[n:] },
		"agos":   func() [][2]string { return agos },
		"shorts": shorts,
		"count":  func(n int) string { return tell.Say(s.Words, record.Say("page-panels-counted", record.With("n", n))) },
		"terms":  terms, "token": rand.Text,
		"entry": func(seq int64) string { return s.Words.Fill("{e}", record.With("e", record.EntryRef(seq))) },
	}
	names, err := fs.Glob(files, "pages/*.html")
	if err != nil {
		return err
	}
	frame, err := template.New("frame").Funcs(funcs).ParseFS(files, "pages/frame.html", "pages/parts.html")
	if err != nil {
		return err
	}
	s.pages = map[string]*template.Template{}
	for _, n := range names {
		base := strings.TrimSuffix(path.Base(n), ".html")
		if base == "frame" || base == "parts" {
			continue
		}
		t, err := frame.Clone()
		if err == nil {
			t, err = t.ParseFS(files, n)
		}
		if err != nil {
			return err
		}
		s.pages[base] = t.Lookup("frame")
	}
	return nil
}

// text says a code that has no values.
func (s *Server) text(code string) string { return tell.Say(s.Words, record.Say(code)) }

// say says a code in the words of the page.
func (d *desk) say(code string, values ...record.Value) string {
	return tell.Say(d.c, record.Say(code, values...))
}

// says says things one by one.
func (d *desk) says(ss []record.Said) (out []string) {
	for _, s := range ss {
		out = append(out, d.c.Capital(tell.Say(d.c, s)))
	}
	return out
}

// short is the end of a number by which people at the bench call a panel.
func short(n record.Number) string { return fmt.Sprintf("%04d", n.Serial()) }

// shorts are the ends of numbers, those that follow one another as a span.
func shorts(ns []record.Number) string {
	var out []string
	for i := 0; i < len(ns); i++ {
		j := i
		for j+1 < len(ns) && ns[j+1].Serial() == ns[j].Serial()+1 {
			j++
		}
		s := short(ns[i])
		if j > i { // word joiners keep it on one line
			s += "\u2060–\u2060" + short(ns[j])
		}
		out, i = append(out, s), j
	}
	return strings.Join(out, ", ")
}

// terms names panels so that they can be sent again, in few words where they
// follow one another.
func terms(ns []record.Number) string {
	if n := len(ns); n > 2 && ns[n-1].Serial()-ns[0].Serial() == n-1 && ns[n-1].Year() == ns[0].Year() {
		return string(ns[0]) + ".." + string(ns[n-1])
	}
	var s []string
	for _, n := range ns {
		s = append(s, string(n))
	}
	return strings.Join(s, ",")
}

// fail says why a page is not there, or why nothing was done.
func (d *desk) fail(err error) {
	if errors.Is(err, errAnswered) || d.ctx.Err() != nil {
		return
	}
	status := http.StatusUnprocessableEntity
	switch refuse.Code(err) {
	case "no-such-panel", "no-panel-yet", "no-panel-called-so", "no-such-entry", "no-such-page":
		status = http.StatusNotFound
	}
	if errors.Is(err, book.ErrBroken) {
		status = http.StatusInternalServerError
	}
	if d.c == nil { // the book itself could not be read
		http.Error(d.w, err.Error(), http.StatusInternalServerError)
		return
	}
	if err := d.showAs(status, "refused", d.say("page-refused"), d.refusal(err)); err != nil {
		http.Error(d.w, err.Error(), http.StatusInternalServerError)
	}
}

// errAnswered ends a request that was answered already.
var errAnswered = errors.New("answered")

// refusal is why something was not done.
type refusal struct{ Why, Field, Hint string }

func (d *desk) refusal(err error) *refusal {
	x := &refusal{Why: d.c.Capital(err.Error())}
	if f, ok := errors.AsType[*record.FieldError](err); ok {
		x.Field = f.Field
	}
	if r, ok := errors.AsType[*refuse.Error](err); ok {
		x.Field = r.Field
		if _, ok := d.c.Codes["hint-"+r.Said.Code]; ok {
			x.Hint = d.say("hint-"+r.Said.Code, r.Said.Values...)
		}
		if name, ok := d.c.Codes["in-"+r.Field]; ok && r.Field != "" {
			x.Why = d.say("page-about-input", tell.Told("input", string(name)), tell.Told("why", strings.TrimPrefix(err.Error(), r.Field+": ")))
		}
	}
	return x
}

// noPage refuses a page that there is none of.
func noPage(format string, args ...any) error { return refuse.Cannot("no-such-page", format, args...) }
