package main

import (
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

func newJournal(a *app) {
	var last int
	a.reads("journal", flags{"last": &last, "json": &a.asJSON}, func(r *run) error {
		if r.form.Flags().Changed("last") && last < 1 {
			return usage("for example: backleaf journal --last 20", "--last %d: how many of the last entries?", last)
		}
		f := book.Filter{Last: last}
		if len(r.args) == 1 {
			seq, err := typed.Entry(r.args[0])
			if err != nil {
				return err
			}
			f = book.Filter{From: seq, To: seq}
		}
		es, err := r.Book.Entries(r.ctx, f)
		switch {
		case err != nil:
			return err
		case len(r.args) == 1 && last > 0:
			return usage("say one of the two", "%s is one entry; --last %d asks for the last of all", r.args[0], last)
		case len(r.args) == 1 && len(es) == 0:
			return refuse.Cannot("no-such-entry", "there is no entry %s", r.args[0])
		case a.asJSON:
			return exchange.Write(a.out, es)
		}
		w, err := r.Book.WorkshopOf(r.ctx)
		if err != nil {
			return err
		}
		words, t := a.words(w.Studio), a.table()
		for _, stored := range es {
			e := stored.Entry
			if len(r.args) == 1 {
				a.tell(words, record.Say("entry", record.With("entry", record.EntryRef(e.Seq)), record.With("kind", e.Kind()), record.With("panels", e.Panels)))
				rows(t, words, words.EntryRows(e))
				if err := t.Done(); err != nil {
					return err
				}
				corrected, err := bench.Corrected(r.ctx, r.Book, e.Seq)
				for _, c := range corrected {
					a.tell(words, c)
				}
				return err
			}
			what := tell.Told("what", words.Event(record.Event{Seq: e.Seq, At: e.At, Panels: e.Panels, Body: e.Body}))
			t.Row(a.entry(e.Seq), near(words, e.At), words.Fill("{panels, if {{panels}: }}{what}", record.With("panels", e.Panels), what))
		}
		return t.Done()
	})
}
