package main

import (
	"backleaf/cmd/internal/terminal"
	"backleaf/record"
	"backleaf/record/sheet"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/studio/shelf"
	"backleaf/record/studio/stock"
	"backleaf/record/tell"
)

func lotAdd(a *app) {
	var l record.Lot
	var paid private.Price
	o := moment{terms: keysOf(&l.Key, &l.Material)}
	a.acts("lot add", &o, func(d *doing) (studio.Written, error) { return shelf.AddLot(d.ctx, d.v, d.at, l, paid) },
		o.when(), flags{"number": &l.MakerLot, "supplier": &l.Supplier, "offcut-of": &l.Offcut, "quantity": &l.Quantity, "sheet": &l.Sheet,
			"price": &paid, "expires": &l.Expires, "opened": &l.Opened, "note": &l.Note})
}

func lotList(a *app) {
	a.shelfList("lot list", func(r *run, w *record.Workshop, t *terminal.Table) (any, record.Said, error) {
		for _, l := range w.Lots {
			b := l.Body
			left, err := stock.Of(r.ctx, r.Book, w, b)
			if err != nil {
				return nil, record.Said{}, err
			}
			t.Row(string(b.Key), string(b.Material), b.MakerLot, a.line("lot-holds", record.With("quantity", b.Quantity), tell.Told("left", a.line("page-"+left.Code, left.Values...)), record.With("expires", b.Expires)))
		}
		return bodies(w.Lots), record.Say("no-lots"), nil
	})
}

func lotTrace(a *app) {
	a.reads("lot trace", flags{"json": &a.asJSON, "csv": &a.asCSV}, func(r *run) error {
		w, err := r.Book.Shelf(r.ctx)
		if err != nil {
			return err
		}
		lots, err := shelf.Lots(w, words(r.args))
		if err != nil {
			return err
		}
		c := a.words(w.Studio)
		all, rows := []shelf.Use{}, [][]string{{"number", "entry", "what", "at", "where", "lot"}}
		for i, l := range lots {
			uses, open, err := shelf.Trace(r.ctx, r.Book, l)
			if err != nil {
				return err
			}
			if all, rows = append(all, uses...), append(rows, shelf.Rows(c, uses)...); len(open) > 0 {
				defer a.warn(nil, []record.Said{record.Say("material-without-lot", record.With("panels", open), record.With("material", l.Material), record.With("lot", l.Key))})
			}
			if a.asJSON || a.asCSV {
				continue
			}
			if i > 0 {
				a.say("")
			}
			a.say("%s", c.Event(record.Event{Body: l}))
			if len(uses) == 0 {
				a.tell(c, record.Say("lot-not-used"))
			}
			for _, rows := range [][][]string{shelf.Acts(c, uses), shelf.Places(c, uses)} {
				t := a.table()
				for _, row := range rows {
					t.Row(row...)
				}
				t.Done()
			}
		}
		switch {
		case a.asCSV:
			return sheet.Write(a.out, sheet.Rows(rows))
		case a.asJSON:
			return a.sayJSON(all)
		}
		return nil
	})
}
