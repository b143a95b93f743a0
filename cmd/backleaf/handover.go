package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
)

func newHandover(a *app) *cobra.Command {
	var o bench
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
			if how == "" {
				return usage(strings.Join(record.Words("Parting"), ", "), "how did they leave? say --how")
			}
			var err error
			if h.How, err = word[record.Parting]("--how", how, "Parting"); err != nil {
				return err
			}
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &o, args)
				if err != nil {
					return err
				}
				part := privatePart{To: strings.TrimSpace(to), Note: strings.TrimSpace(secret)}
				if amount != "" {
					if part.Price, err = parsePrice(amount, s.shop.Studio.Currency); err != nil {
						return usage("", "--price: %v", err)
					}
				}
				for _, t := range []struct{ flag, text string }{{"--to", part.To}, {"--private-note", part.Note}} {
					if err := record.CheckLine(t.text); err != nil {
						return usage("", "%s: %v", t.flag, err)
					}
				}
				var sealed *book.Private
				if part != (privatePart{}) {
					p, digest := a.seal(part)
					h.Private, sealed = digest, &p
				}
				s.doubtHandover(a, h.How)
				if err := a.appendWith(c.Context(), s, string(h.How), sealed, record.Entry{At: s.at, Panels: s.panels, Body: h}); err != nil {
					return err
				}
				if sealed != nil {
					a.say("private, outside the journal: %s", part.words(len(s.panels)))
				}
				return nil
			})
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

// words says a private part for the owner of the book.
func (p privatePart) words(panels int) string {
	var s []string
	if p.To != "" {
		s = append(s, "to "+p.To)
	}
	if p.Price != (price{}) {
		all := ""
		if panels > 1 {
			all = fmt.Sprintf(" for all %d panels", panels)
		}
		s = append(s, p.Price.String()+all)
	}
	if p.Note != "" {
		s = append(s, p.Note)
	}
	return strings.Join(s, ", ")
}

// doubtHandover says what does not fit with what the book knows; it may be
// right nevertheless.
func (s *benchState) doubtHandover(a *app, how record.Parting) {
	for _, n := range s.panels {
		p := s.shop.Panel(n)
		_, gone := p.Discarded()
		before, away := p.Away()
		switch {
		case gone:
			a.talk("note: %s was discarded", n)
		case how == "return" && !away:
			a.talk("note: %s was in the studio, as far as recorded", n)
		case how == before.Body.How && away:
			a.talk("note: %s is away already: %s (E%d); \"backleaf withdraw\" takes back what was written twice", n, how, before.Seq)
		}
	}
}

// parting is one handover of a panel, with its private part.
type parting struct {
	Entry   int64          `json:"entry"`
	At      record.When    `json:"at,omitzero"`
	How     record.Parting `json:"how"`
	Note    string         `json:"note,omitzero"`
	Panels  int            `json:"panels"` // how many left together
	Taken   bool           `json:"withdrawn,omitzero"`
	State   string         `json:"private_state"` // here, none, erased, elsewhere
	Private privatePart    `json:"private,omitzero"`
}

func handoverShow(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "show NUMBER", Short: "show how a panel left and came back, with the private parts",
		Example: `  backleaf handover show 0142
  backleaf handover show 0142 --json`,
		Args: wanted(1, 1, "one panel"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.onePanel(c, args[0], func(b *book.Book, w *record.Workshop, p *record.Panel) error {
				ps, err := partings(c.Context(), b, p)
				if err != nil {
					return err
				}
				if a.asJSON {
					return a.sayJSON(ps)
				}
				a.say("%s  %s", p.Number, whereabouts(p))
				t := a.table()
				for _, h := range ps {
					state := map[string]string{"none": "nothing private recorded", "erased": "private part erased",
						"elsewhere": "its private part is not in this copy"}[h.State]
					if h.State == "here" {
						state = h.Private.words(h.Panels)
					}
					if h.Taken {
						state += " (entry withdrawn)"
					}
					t.row(fmt.Sprintf("E%d", h.Entry), string(h.How), sayWhen(h.At, a.now(), zone(w.Studio)), state, h.Note)
				}
				if len(ps) == 0 {
					return nil
				}
				return t.done()
			})
		},
	})
}

// partings reads all handovers of a panel, also those withdrawn: their
// private parts are kept until they are erased.
func partings(ctx context.Context, b *book.Book, p *record.Panel) ([]parting, error) {
	es, err := b.Entries(ctx, book.Filter{Panels: []record.Number{p.Number}, Kinds: []record.Kind{"handed-over", "private-erased"}})
	if err != nil {
		return nil, err
	}
	stands := map[int64]record.Done[record.HandedOver]{}
	for _, h := range record.Each[record.HandedOver](p) {
		stands[h.Seq] = h
	}
	erased := map[int64]bool{}
	for _, e := range es {
		if f, ok := e.Entry.Body.(record.Forgotten); ok {
			erased[f.Entry] = true
		}
	}
	out := []parting{}
	for _, e := range es {
		h, ok := e.Entry.Body.(record.HandedOver)
		if !ok {
			continue
		}
		x := parting{Entry: e.Seq, At: e.Entry.At, How: h.How, Note: h.Note, Panels: len(e.Entry.Panels), Taken: true}
		if now, ok := stands[e.Seq]; ok {
			x.At, x.How, x.Note, x.Taken = now.At, now.Body.How, now.Body.Note, false
		}
		var here bool
		if x.Private, here, err = privateOf(ctx, b, e.Seq); err != nil {
			return nil, err
		}
		switch {
		case here:
			x.State = "here"
		case erased[e.Seq]:
			x.State = "erased"
		case h.Private != "":
			x.State = "elsewhere"
		default:
			x.State = "none"
		}
		out = append(out, x)
	}
	return out, nil
}

// privateOf reads the private part of an entry; false if there is none here.
func privateOf(ctx context.Context, b *book.Book, seq int64) (p privatePart, here bool, err error) {
	sealed, here, err := b.Private(ctx, seq)
	if err != nil || !here {
		return p, false, err
	}
	if err := json.Unmarshal(sealed.Data, &p); err != nil {
		return p, false, fmt.Errorf("the private part of E%d cannot be read: %w", seq, err)
	}
	return p, true, nil
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
			seq, err := parseEntry(args[0])
			if err != nil {
				return err
			}
			if why == "" {
				return usage("", "say --because: it stands in the journal, so name nobody")
			}
			return a.write(c.Context(), func(b *book.Book) error {
				_, here, err := b.Private(c.Context(), seq)
				if err != nil {
					return err
				}
				if !here {
					return hinted(fmt.Errorf("entry %d has no private part in this book", seq), "\"backleaf handover show NUMBER\" shows which entries have one")
				}
				s, err := a.look(c.Context(), b, &bench{}, nil)
				if err != nil {
					return err
				}
				e, err := b.ErasePrivate(c.Context(), s.now.In(s.zone), seq, why)
				if e.Seq != 0 {
					a.say("E%d  private part of E%d erased; the entry and its proof stay", e.Seq, seq)
					a.say("backups made before still have it")
				}
				return err
			})
		},
	}
	c.Flags().StringVar(&why, "because", "", "the reason, without names")
	return c
}
