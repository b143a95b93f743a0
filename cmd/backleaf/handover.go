package main

import (
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

func newHandover(a *app) {
	var h record.HandedOver
	var part private.Part
	var o moment
	a.acts("handover", &o, func(d *doing) (studio.Written, error) {
		part.To, part.Note = strings.TrimSpace(part.To), strings.TrimSpace(part.Note)
		if part != (private.Part{}) {
			d.after = func() error {
				a.told("private-part", tell.Told("part", a.partWords(part, len(d.v.Panels))))
				return nil
			}
		}
		return handover.Write(d.ctx, d.v, d.at, h, part)
	}, o.flags(), flags{"how": needed{&h.How}, "to": &part.To, "price": &part.Price, "private-note": &part.Note, "note": &h.Note})
}

// partWords says a private part for the owner of the book.
func (a *app) partWords(p private.Part, panels int) string {
	var s []string
	if p.To != "" {
		s = append(s, a.line("private-to", record.With("to", p.To)))
	}
	if p.Price != (private.Price{}) {
		s = append(s, a.line("private-price", record.With("price", p.Price.String()), record.With("panels", panels)))
	}
	if p.Note != "" {
		s = append(s, p.Note)
	}
	return a.catalogue().Series(s)
}

// partStates say what became of a private part.
var partStates = map[handover.State]string{handover.None: "private-none", handover.Erased: "private-erased", handover.Elsewhere: "private-away"}

func handoverShow(a *app) {
	a.ofPanel("handover show", func(r *run, w *record.Workshop, p *record.Panel) error {
		ps, err := handover.Of(r.ctx, r.Book, p)
		if err != nil {
			return err
		}
		if a.asJSON {
			return a.sayJSON(ps)
		}
		words := a.words(w.Studio)
		a.say("%s  %s", p.Number, tell.Say(words, tell.Whereabouts(p)))
		t := a.table()
		for _, h := range ps {
			state := a.partWords(h.Private, h.Panels)
			if code, ok := partStates[h.State]; ok {
				state = a.line(code)
			}
			if h.Taken {
				state = a.line("entry-taken", tell.Told("state", state))
			}
			t.Row(a.entry(h.Entry), words.Word(h.How), near(words, h.At), state, h.Note)
		}
		return t.Done()
	})
}

func handoverForget(a *app) {
	var why string
	a.writes("handover forget", flags{"because": needed{&why}}, func(r *run) error {
		seq, err := typed.Entry(r.args[0])
		if err != nil {
			return err
		}
		return a.done(handover.Forget(r.ctx, r.Session, seq, why))
	})
}
