package main

import (
	"strings"

	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/studio/shelf"
)

func materialList(a *app) {
	a.shelfList("material list", func(_ *run, w *record.Workshop, t *terminal.Table) (any, record.Said, error) {
		for _, m := range w.Materials {
			t.Row(string(m.Body.Key), a.usesText(m.Body.Uses), m.Body.Name)
		}
		return bodies(w.Materials), record.Say("shelf-empty"), nil
	})
}

func (a *app) usesText(us []record.Use) string {
	var s []string
	for _, u := range us {
		s = append(s, a.catalogue().Fill("{use}", record.With("use", u)))
	}
	return strings.Join(s, ", ")
}

// shelfList adds a command that lists what of one sort stands on the shelf, or
// says that there is nothing.
func (a *app) shelfList(name string, list func(*run, *record.Workshop, *terminal.Table) (json any, none record.Said, err error)) {
	a.reads(name, flags{"json": &a.asJSON}, func(r *run) error {
		w, err := r.Book.WorkshopOf(r.ctx)
		if err != nil {
			return err
		}
		t := a.table()
		v, none, err := list(r, w, t)
		switch {
		case err != nil:
			return err
		case a.asJSON:
			return a.sayJSON(v)
		case t.Empty():
			a.warn(nil, []record.Said{none})
		}
		return t.Done()
	})
}

func bodies[B record.Body](ds []record.Done[B]) []B {
	out := []B{}
	for _, d := range ds {
		out = append(out, d.Body)
	}
	return out
}

func materialShow(a *app) {
	a.reads("material show", flags{"json": &a.asJSON}, func(r *run) error {
		w, err := r.Book.WorkshopOf(r.ctx)
		if err != nil {
			return err
		}
		m, err := shelf.Material(w, record.Key(r.args[0]))
		if err != nil {
			return err
		}
		if a.asJSON {
			return a.sayJSON(m)
		}
		t := a.table()
		words := a.words(w.Studio)
		rows(t, words, words.Rows(m))
		return t.Done()
	})
}
