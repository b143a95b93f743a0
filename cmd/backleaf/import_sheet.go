package main

import (
	"context"
	"fmt"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
)

// sheetFlags say how a spreadsheet of older panels is read.
type sheetFlags struct {
	file, mapping           string
	dry, partly, again, all bool
}

// importSheet reads a spreadsheet and writes its panels in one transaction.
func (a *app) importSheet(ctx context.Context, o sheetFlags) error {
	if o.file == "-" && o.mapping == "-" {
		return usage("", "sheet and mapping cannot both come from standard input")
	}
	order := exchange.SheetOrder{Name: o.file, MappingName: o.mapping, Partly: o.partly, Again: o.again}
	var err error
	if order.Data, err = a.readInput(o.file); err != nil {
		return err
	}
	if order.Mapping, err = a.readInput(o.mapping); err != nil {
		return err
	}
	if o.dry {
		return a.read(ctx, func(s *studio.Session) error {
			x, err := exchange.ReadSheet(ctx, s, order)
			if err != nil {
				return err
			}
			return a.saySheet(ctx, x, o)
		})
	}
	return a.write(ctx, func(s *studio.Session) error {
		x, err := exchange.ReadSheet(ctx, s, order)
		if err != nil {
			return err
		}
		a.sayRefused(x, o)
		done, err := x.Write(ctx, a.progress())
		if err != nil {
			return err
		}
		c := a.catalogue()
		a.tell(c, record.Say("sheet-written", tell.Told("entries", a.entrySpan(done.Entries)), record.With("file", o.file), record.With("panels", done.Numbers)))
		a.tell(c, record.Say("take-back-one", record.With("panel", done.Numbers[0])))
		if done.Private > 0 {
			a.tell(c, record.Say("sheet-private", record.With("n", done.Private)))
		}
		if n := x.RefusedRows(); n > 0 {
			a.noted("rows-refused", record.With("n", n))
		}
		a.warn(nil, done.Warnings)
		return nil
	})
}

// A dry run fits a screen: so many kinds of refusals, and rows, are shown.
const shownKinds, shownRows = 10, 2

// sayRefused names what is wrong with cells, each kind once by its first cell
// with how many more are like it, and every column left out.
func (a *app) sayRefused(x *exchange.Sheet, o sheetFlags) {
	kinds := x.Kinds()
	for i, k := range kinds {
		if i == shownKinds && !o.all {
			a.noted("more-kinds", record.With("n", len(kinds)-i))
			break
		}
		like := ""
		if n := k.Count - 1; n > 0 {
			like = fmt.Sprintf(" (and %d more like it)", n)
		}
		a.talk("%s, %s%s", o.file, k.First, like)
	}
	if len(x.Unread) > 0 {
		a.noted("columns-not-read", record.With("columns", x.Unread))
	}
}

// saySheet says what would be written.
func (a *app) saySheet(ctx context.Context, x *exchange.Sheet, o sheetFlags) error {
	rows, err := x.Plan(ctx)
	if err != nil {
		return err
	}
	entries, c := 0, a.catalogue().At(x.Now, x.Now.Location())
	for i, row := range rows {
		if entries += len(row.Entries); i >= shownRows && len(rows) > shownRows+1 && !o.all {
			continue
		}
		a.tell(c, record.Say("sheet-line", record.With("line", row.Line), record.With("panel", row.Number), record.With("reference", row.Reference)))
		for j, e := range row.Entries {
			code := "sheet-entry"
			if j == row.Private {
				code = "sheet-entry-private"
			}
			a.tell(c, record.Say(code, tell.Told("what", c.Event(record.Event{At: e.At, Body: e.Body})), record.With("at", e.At)))
		}
	}
	if len(rows) > shownRows+1 && !o.all {
		a.tell(c, record.Say("more-rows", record.With("n", len(rows)-shownRows)))
	}
	a.sayRefused(x, o)
	n := x.RefusedRows()
	a.tell(c, record.Say("sheet-dry-run", record.With("panels", len(rows)), record.With("entries", entries), record.With("refused", n)))
	if n > 0 && !o.partly {
		return quiet(exitError)
	}
	return nil
}
