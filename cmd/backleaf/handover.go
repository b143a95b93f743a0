package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/handover"
	"backleaf/record/studio/private"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

func newHandover(a *app) *cobra.Command {
	var o moment
	var how, to, amount, secret string
	var h record.HandedOver
	c := &cobra.Command{
		Use: "handover " + panelWords, Short: "write down that panels left or came back, to whom and for how much",
		Long: `Write down that panels left the studio or came back. Name, price and private note
are kept outside the journal: no label, certificate, list or export shows them, and
they can be erased ("handover forget"); the journal holds only when, how, and a
salted digest. --note stands in the journal: keep names out of it.`,
		Example: `  backleaf handover 0142 --how sale --to "M. Ozola" --price "1200 EUR"
  backleaf handover 0143-0145 --how consignment --to "the gallery on the quay" --at yesterday
  backleaf handover show 0142
  backleaf handover forget E57 --because "the buyer asked"`,
		Args: wanted(1, -1, "the panels that left or came back"),
		RunE: func(c *cobra.Command, args []string) error {
			if err := needs(how, strings.Join(record.Words("Parting"), ", "), "how did they leave? say --how"); err != nil {
				return err
			}
			part := private.Part{To: strings.TrimSpace(to), Note: strings.TrimSpace(secret)}
			panels := 0
			err := a.atBench(c.Context(), &o, args, func(ctx context.Context, v *studio.View, r *typed.Reader, at record.When) (studio.Written, error) {
				panels = len(v.Panels)
				typed.Word(r, "how", how, &h.How)
				if part.Price = r.Price("price", amount); r.Err() != nil {
					return studio.Written{}, r.Err()
				}
				return handover.Write(ctx, v, at, h, part)
			})
			if err == nil && part != (private.Part{}) {
				a.told("private-part", tell.Told("part", a.partWords(part, panels)))
			}
			return err
		},
	}
	o.flags(c)
	f := c.Flags()
	f.StringVar(&how, "how", "", strings.Join(record.Words("Parting"), ", "))
	f.StringVar(&to, "to", "", "to whom; kept private")
	f.StringVar(&amount, "price", "", "for all panels named together: \"1200 EUR\"; kept private")
	f.StringVar(&secret, "private-note", "", "address or the like; kept private")
	f.StringVar(&h.Note, "note", "", "remark, in the journal for every reader")
	c.AddCommand(handoverShow(a), handoverForget(a))
	return c
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

func handoverShow(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "show NUMBER", Short: "show how a panel left and came back, with the private parts",
		Example: `  backleaf handover show 0142
  backleaf handover show 0142 --json`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.onePanel(c, args[0], func(s *studio.Session, w *record.Workshop, p *record.Panel) error {
				ps, err := handover.Of(c.Context(), s.Book, p)
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
					t.row(a.entry(h.Entry), words.Word(h.How), near(words, h.At), state, h.Note)
				}
				if len(ps) == 0 {
					return nil
				}
				return t.done()
			})
		},
	})
}

func handoverForget(a *app) *cobra.Command {
	var why string
	c := &cobra.Command{
		Use: "forget ENTRY", Short: "erase the private part of a handover; its entry and the proof stay",
		Long: `Erase name, price and private note of a handover (or the price of a lot) from the
book. The entry stays, with its salted digest, so every proof still holds. Backups
made before still have the private part: erase it there too, or replace them.`,
		Example: `  backleaf handover forget E57 --because "the buyer asked"
  backleaf handover forget 57 --because "kept longer than needed"`,
		Args: wanted(1, 1, "one entry"),
		RunE: func(c *cobra.Command, args []string) error {
			seq, err := typed.Entry(args[0])
			if err != nil {
				return err
			}
			if err := needs(why, "", "say why with --because: it can be read for ever, so name nobody"); err != nil {
				return err
			}
			return a.write(c.Context(), func(s *studio.Session) error {
				f, err := handover.Forget(c.Context(), s, seq, why)
				if f.Entry.Seq != 0 {
					a.told("private-part-erased", record.With("entry", record.EntryRef(f.Entry.Seq)), record.With("of", record.EntryRef(seq)))
					a.told("backups-have-it")
					if f.Named != nil {
						a.told("name-may-stand-in", record.With("entries", f.Named))
					}
					if f.Printed != nil {
						a.told("certificates-print-it", record.With("entries", f.Printed))
					}
				}
				return err
			})
		},
	}
	c.Flags().StringVar(&why, "because", "", "the reason, without names")
	return c
}
