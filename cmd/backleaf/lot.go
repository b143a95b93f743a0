package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/sheet"
)

func newLot(a *app) *cobra.Command {
	return folder("lot", "lots: one tin, bolt or sheet of a material", lotAdd(a), lotList(a), lotTrace(a))
}

func lotAdd(a *app) *cobra.Command {
	var o bench
	var l record.Lot
	var quantity, sheet, expires, opened, price string
	c := &cobra.Command{
		Use: "add KEY MATERIAL", Short: "put a lot on the shelf",
		Long: `Put a lot on the shelf under a short key of your own. The price is kept outside the
journal and reaches no label, certificate or export.`,
		Example: `  backleaf lot add sealer-3 sealer --number 4471B --quantity "2.5 L" --price "38.50 EUR"
  backleaf lot add birch-1 birch3 --sheet "122 x 244 cm" --quantity "2 sheets" --supplier "timber yard" --at 2026-04-20`,
		Args: wanted(2, 2, "a key for the lot and the material it is a lot of"),
		RunE: func(c *cobra.Command, args []string) error {
			l.Key, l.Material = record.Key(strings.ToLower(args[0])), record.Key(strings.ToLower(args[1]))
			return a.write(c.Context(), func(b *book.Book) error {
				s, err := a.look(c.Context(), b, &o, nil)
				if err != nil {
					return err
				}
				for _, there := range s.shop.Lots {
					if there.Body.Key == l.Key {
						return hinted(fmt.Errorf("lot %s is on the shelf already", l.Key),
							fmt.Sprintf("choose another key for another tin, or put this one right: backleaf amend %d --set … --because \"…\"", there.Seq))
					}
				}
				if _, ok := s.shop.Material(l.Material); !ok {
					return hinted(fmt.Errorf("there is no material %q on the shelf", l.Material), "describe it first: backleaf material add "+string(l.Material)+" …")
				}
				if err := s.texts(text{"--quantity", quantity, &l.Quantity}, text{"--sheet", sheet, &l.Sheet}); err != nil {
					return err
				}
				if expires != "" {
					if l.Expires, err = record.ParseWhen(expires); err != nil {
						return usage("", "--expires: cannot read %q: expected 2027-03 or 2027-03-31", expires)
					}
				}
				if opened != "" {
					if l.Opened, err = parseAt(opened, s.now, s.zone); err != nil {
						return err
					}
				}
				what := fmt.Sprintf("lot %s of %s", l.Key, l.Material)
				if l.MakerLot != "" {
					what += ", no. " + l.MakerLot
				}
				var secret *book.Private
				if price != "" {
					p, err := parsePrice(price, s.shop.Studio.Currency)
					if err != nil {
						return usage("", "--price: %v", err)
					}
					sealed, digest := a.seal(privatePart{Price: p})
					l.Private, secret = digest, &sealed
				}
				return a.appendWith(c.Context(), s, what, secret, record.Entry{At: s.at, Body: l})
			})
		},
	}
	o.timeFlag(c)
	f := c.Flags()
	f.StringVar(&l.MakerLot, "number", "", "the maker's lot number, as on the tin")
	f.StringVar(&l.Supplier, "supplier", "", "where it was bought")
	f.StringVar(&quantity, "quantity", "", "\"2.5 L\", \"1 kg\", \"5 m\", \"2 sheets\"")
	f.StringVar(&sheet, "sheet", "", "size of one sheet of a board: \"122 x 244 cm\"")
	f.StringVar(&price, "price", "", "paid for the whole lot: \"38.50 EUR\"; kept private")
	f.StringVar(&expires, "expires", "", "2027-03 or 2027-03-31")
	f.StringVar(&opened, "opened", "", "when it was opened")
	f.StringVar(&l.Note, "note", "", "remark")
	return c
}

func lotList(a *app) *cobra.Command {
	return a.jsonFlag(&cobra.Command{
		Use: "list", Short: "list the lots on the shelf",
		Example: `  backleaf lot list
  backleaf lot list --json`,
		Args: wanted(0, 0, "no words"),
		RunE: func(c *cobra.Command, _ []string) error {
			return a.shelf(c, func(w *record.Workshop) error {
				if a.asJSON {
					return a.sayJSON(bodies(w.Lots))
				}
				if len(w.Lots) == 0 {
					a.talk("there are no lots yet; \"backleaf lot add\" puts one on the shelf")
					return nil
				}
				t := a.table()
				for _, l := range w.Lots {
					b := l.Body
					t.row(string(b.Key), string(b.Material), b.MakerLot, b.Quantity.String(), dated("expires ", b.Expires))
				}
				return t.done()
			})
		},
	})
}

func dated(word string, w record.When) string {
	if !w.Known() {
		return ""
	}
	return word + w.Date().Words()
}

// use is one place a lot went into.
type use struct {
	Panel record.Number `json:"panel"`
	Entry int64         `json:"entry"`
	Kind  record.Kind   `json:"kind"`
	What  string        `json:"what"`
	At    string        `json:"at,omitzero"`
	Where string        `json:"where"` // where the panel is now
}

func lotTrace(a *app) *cobra.Command {
	return a.csvFlag(a.jsonFlag(&cobra.Command{
		Use: "trace LOT", Short: "every panel and layer a lot went into, and where they are now",
		Example: `  backleaf lot trace sealer-3
  backleaf lot trace linen-1 --csv`,
		Args: wanted(1, 1, "one lot"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(b *book.Book) error {
				w, err := b.Workshop(c.Context())
				if err != nil {
					return err
				}
				k := record.Key(args[0])
				l, ok := w.Lot(k)
				if !ok {
					return hinted(fmt.Errorf("there is no lot %q on the shelf", args[0]), "\"backleaf lot list\" shows them")
				}
				uses := traceLot(w, k)
				if a.asCSV {
					rows := [][]string{{"number", "entry", "what", "at", "where"}}
					for _, u := range uses {
						rows = append(rows, []string{string(u.Panel), fmt.Sprintf("E%d", u.Entry), u.What, u.At, u.Where})
					}
					return sheet.Write(a.out, rows)
				}
				if a.asJSON {
					return a.sayJSON(uses)
				}
				a.say("lot %s of %s%s", l.Key, l.Material, after(", no. ", l.MakerLot))
				if len(uses) == 0 {
					a.say("not used on any panel, as far as recorded")
					return nil
				}
				now, loc := a.now(), zone(w.Studio)
				t := a.table()
				for _, u := range uses {
					at, _ := record.ParseWhen(u.At)
					t.row(string(u.Panel), fmt.Sprintf("E%d", u.Entry), u.What, sayWhen(at, now, loc), u.Where)
				}
				return t.done()
			})
		},
	}))
}

// after puts a word before a value that is there.
func after(word, value string) string {
	if value == "" {
		return ""
	}
	return word + value
}

// traceLot finds every event a lot went into, as it stands after corrections.
func traceLot(w *record.Workshop, k record.Key) []use {
	uses := []use{}
	for _, p := range w.Panels {
		for _, e := range p.Events {
			_, lots := (record.Entry{Body: e.Body}).Shelf()
			for _, l := range lots {
				if l == k {
					uses = append(uses, use{p.Number, e.Seq, e.Body.Kind(), storyLine(w, e), e.At.String(), whereabouts(p)})
				}
			}
		}
	}
	return uses
}

// whereabouts says where a panel is, as far as recorded.
func whereabouts(p *record.Panel) string {
	if _, ok := p.Discarded(); ok {
		return "discarded"
	}
	if h, ok := p.Away(); ok {
		return "away: " + string(h.Body.How)
	}
	return "in the studio"
}
