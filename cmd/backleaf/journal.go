package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/typed"
)

func newJournal(a *app) *cobra.Command {
	var last int
	c := &cobra.Command{
		Use: "journal [ENTRY]", Short: "list the entries, or show one with all its fields",
		Example: `  backleaf journal --last 20
  backleaf journal E27`,
		Args: wanted(0, 1, "at most one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			f := book.Filter{Last: last}
			if len(args) == 1 {
				seq, err := typed.Entry(args[0])
				if err != nil {
					return err
				}
				f = book.Filter{From: seq, To: seq}
			}
			return a.read(c.Context(), func(s *studio.Session) error {
				es, err := s.Book.Entries(c.Context(), f)
				if err != nil {
					return err
				}
				if len(args) == 1 && len(es) == 0 {
					return refuse.Cannot("no-such-entry", "there is no entry %s", args[0])
				}
				if a.asJSON {
					return exchange.Write(a.out, es)
				}
				w, err := s.Book.WorkshopOf(c.Context())
				if err != nil {
					return err
				}
				words := a.words(w.Studio)
				if len(args) == 1 {
					e := es[0].Entry
					a.tell(words, record.Say("entry", record.With("entry", record.EntryRef(e.Seq)), record.With("kind", e.Kind()), record.With("panels", e.Panels)))
					t := a.table()
					t.rows(words.EntryRows(e))
					return t.done()
				}
				t := a.table()
				for _, stored := range es {
					e := stored.Entry
					t.row(a.entry(e.Seq), near(words, e.At), words.Event(record.Event{Seq: e.Seq, At: e.At, Panels: e.Panels, Body: e.Body}),
						words.Fill("{panels, if {{panels}}}", record.With("panels", e.Panels)))
				}
				return t.done()
			})
		},
	}
	c.Flags().IntVar(&last, "last", 0, "only the last so many")
	return a.jsonFlag(c)
}
