package main

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/sheet"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/typed"
	"backleaf/record/tell"
)

func newLot(a *app) *cobra.Command {
	return folder("lot", "lots: one tin, bolt or sheet of a material", lotAdd(a), lotList(a), lotTrace(a))
}

func lotAdd(a *app) *cobra.Command {
	var l record.Lot
	var paid private.Price
	f := newFlags(&cobra.Command{
		Use: "add KEY MATERIAL", Short: "put a lot on the shelf",
		Long: `Put a lot on the shelf under a short key of your own. The price is kept outside the
journal and reaches no label, certificate or export.`,
		Example: `  backleaf lot add sealer-3 sealer --number 4471B --quantity "2.5 L" --price "38.50 EUR"
  backleaf lot add birch-1 birch3 --sheet "122 x 244 cm" --quantity "2 sheets" --supplier "timber yard" --at 2026-04-20`,
		Args: wanted(2, 2, "a key for the lot and the material it is a lot of"),
	})
	f.keys(&l.Key, &l.Material)
	f.text(&l.MakerLot, "number", "the maker's lot number, as on the tin")
	f.text(&l.Supplier, "supplier", "where it was bought")
	offcut := f.c.Flags().String("offcut-of", "", "lot of which it is what was left")
	f.value(&l.Quantity, "quantity", "\"2.5 L\", \"1 kg\", \"5 m\", \"2 sheets\"")
	f.value(&l.Sheet, "sheet", "size of one sheet of a board: \"122 x 244 cm\"")
	price := f.c.Flags().String("price", "", "paid for the whole lot: \"38.50 EUR\"; kept private")
	expires := f.c.Flags().String("expires", "", "2027-03 or 2027-03-31")
	f.when(&l.Opened, "opened", "when it was opened")
	f.text(&l.Note, "note", "remark")
	f.reads = append(f.reads, func(r *typed.Reader) {
		l.Offcut = record.Key(strings.ToLower(*offcut))
		r.Until("expires", *expires, &l.Expires)
		paid = r.Price("price", *price)
	})
	f.o.timeFlag(f.c)
	return f.does(a, func(ctx context.Context, v *studio.View, _ *typed.Reader, at record.When) (studio.Written, error) {
		return shelf.AddLot(ctx, v, at, l, paid)
	})
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
					a.noted("no-lots")
					return nil
				}
				t, words := a.table(), a.catalogue()
				for _, l := range w.Lots {
					b := l.Body
					t.row(string(b.Key), string(b.Material), b.MakerLot, words.Fill("{quantity, if {{quantity}}}", record.With("quantity", b.Quantity)),
						tell.Say(words, record.Say("lot-expires", record.With("expires", b.Expires))))
				}
				return t.done()
			})
		},
	})
}

func lotTrace(a *app) *cobra.Command {
	return a.csvFlag(a.jsonFlag(&cobra.Command{
		Use: "trace LOT", Short: "every panel and layer a lot went into, and where they are now",
		Long: `Every panel and layer a lot went into, and where they are now. LOT is its key, the
maker's number on the tin, the product, or words of it: then all lots are traced that
it can mean. Panels that hold the product of a lot nobody recorded are named too.`,
		Example: `  backleaf lot trace sealer-3
  backleaf lot trace "TW 2504-31"
  backleaf lot trace acrylic --csv`,
		Args: wanted(1, -1, "one lot"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				w, err := s.Book.Workshop(c.Context())
				if err != nil {
					return err
				}
				lots, err := shelf.Lots(w, strings.Join(args, " "))
				if err != nil {
					return err
				}
				return a.sayTraces(w, lots)
			})
		},
	}))
}

// sayTraces says where lots went.
func (a *app) sayTraces(w *record.Workshop, lots []record.Lot) error {
	words := a.words(w.Studio)
	all, rows := []shelf.Use{}, [][]string{{"number", "entry", "what", "at", "where", "lot"}}
	for i, l := range lots {
		uses, open := shelf.Trace(w, l)
		if all = append(all, uses...); len(open) > 0 {
			defer a.warn(nil, []record.Said{record.Say("material-without-lot", record.With("panels", open), record.With("material", l.Material), record.With("lot", l.Key))})
		}
		t := a.table()
		for _, u := range uses {
			what := words.Event(u.Event)
			t.row(string(u.Panel), a.entry(u.Entry), what, near(words, u.At), tell.Say(words, u.Where))
			rows = append(rows, []string{string(u.Panel), a.entry(u.Entry), what, u.At.String(), tell.Say(words, u.Where), string(l.Key)})
		}
		if a.asJSON || a.asCSV {
			continue
		}
		if i > 0 {
			a.say("")
		}
		a.say("%s", words.Event(record.Event{Body: l}))
		if len(uses) == 0 {
			a.tell(words, record.Say("lot-not-used"))
		} else if err := t.done(); err != nil {
			return err
		}
	}
	switch {
	case a.asCSV:
		return sheet.Write(a.out, rows)
	case a.asJSON:
		return a.sayJSON(all)
	}
	return nil
}
