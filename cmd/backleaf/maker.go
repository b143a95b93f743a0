package main

import (
	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/studio"
)

func makerAdd(a *app) {
	var m record.Maker
	o := moment{terms: keysOf(&m.Key)}
	a.acts("maker add", &o, func(d *doing) (studio.Written, error) { return d.perform(m) },
		o.when(), flags{"name": needed{&m.Name}, "voice": &m.Voice, "place": &m.Place, "note": &m.Note})
}

func makerList(a *app) {
	a.shelfList("maker list", func(_ *run, w *record.Workshop, t *terminal.Table) (any, record.Said, error) {
		for _, m := range w.Makers {
			t.Row(string(m.Body.Key), m.Body.Name, m.Body.Place)
		}
		return bodies(w.Makers), record.Say("no-makers"), nil
	})
}
