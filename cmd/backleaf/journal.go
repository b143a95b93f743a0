package main

import (
	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/form"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
	"cmp"
)

func newJournal(a *app) {
	var last int
	a.reads("journal", flags{"last": &last, "json": &a.asJSON}, func(r *run) error {
		if r.form.Flags().Changed("last") && last < 1 {
			return usage("for example: backleaf journal --last 20", "--last %d: how many of the last entries?", last)
		}
		w, err := r.Book.Shelf(r.ctx)
		if err != nil {
			return err
		}
		words, t, f, e := a.words(w.Studio), a.table(), book.Filter{Last: last}, record.Entry{}
		if len(r.args) == 1 {
			seq, err := typed.Entry(r.args[0])
			if err == nil && last > 0 {
				err = usage("say one of the two", "%s is one entry; --last %d asks for the last of all", r.args[0], last)
			}
			if err == nil {
				e, err = bench.Entry(r.ctx, r.Book, seq)
			}
			if f = (book.Filter{From: seq, To: seq}); err != nil {
				return err
			}
		}
		if a.asJSON {
			_, err := exchange.Export(r.ctx, r.Book, f, a.out)
			return err
		}
		if e.Seq == 0 {
			if err := r.Book.Read(r.ctx, f, func(s form.Stored) error {
				what := tell.Told("what", words.Event(record.Event{Seq: s.Seq, At: s.Entry.At, Panels: s.Entry.Panels, Body: s.Entry.Body}))
				t.Row(a.entry(s.Seq), near(words, s.Entry.At), words.Fill("{panels, if {{panels}: }}{what}", record.With("panels", s.Entry.Panels), what))
				return nil
			}); err != nil {
				return err
			}
			return t.Done()
		}
		a.tell(words, record.Say("entry", record.With("entry", record.EntryRef(e.Seq)), record.With("kind", e.Kind()), record.With("panels", e.Panels)))
		corrected, err := bench.Corrected(r.ctx, r.Book, e.Seq)
		rows(t, words, words.Since(e.Kind(), words.EntryRows(e), corrected))
		err = cmp.Or(t.Done(), err)
		for _, c := range corrected {
			a.tell(words, c)
		}
		return err
	})
}
