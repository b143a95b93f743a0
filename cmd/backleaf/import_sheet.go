package main

import (
	"fmt"

	"backleaf/record"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
)

// sheetFlags say how a spreadsheet of older panels is read.
type sheetFlags struct {
	file, mapping           string
	dry, partly, again, all bool
}

// importSheet reads a spreadsheet and writes its panels in one transaction.
func (r *run) importSheet(o sheetFlags) (err error) {
	if o.file == "-" && o.mapping == "-" {
		return usage("", "sheet and mapping cannot both come from standard input")
	}
	order := exchange.SheetOrder{Name: o.file, MappingName: o.mapping, Partly: o.partly, Again: o.again}
	if order.Data, err = r.readInput(o.file); err != nil {
		return err
	}
	if order.Mapping, err = r.readInput(o.mapping); err != nil {
		return err
	}
	open := r.writing
	if o.dry {
		open = r.reading
	}
	return open(func(r *run) error {
		x, err := exchange.ReadSheet(r.ctx, r.Session, order)
		if err != nil {
			return err
		}
		if o.dry {
			return r.saySheet(x, o)
		}
		r.sayRefused(x, o)
		done, err := x.Write(r.ctx, r.progress())
		if err != nil {
			return err
		}
		r.told("sheet-written", tell.Told("entries", r.catalogue().EntrySpan(done.Entries)), record.With("file", o.file), record.With("panels", done.Numbers))
		r.told("take-back-one", record.With("panel", done.Numbers[0]))
		if done.Private > 0 {
			r.told("sheet-private", record.With("n", done.Private))
		}
		if n := x.RefusedRows(); n > 0 {
			r.noted("rows-refused", record.With("n", n))
		}
		r.warn(nil, done.Warnings)
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
		a.noted("columns-not-read", record.With("columns", x.Unread), record.With("many", len(x.Unread)))
	}
}

// saySheet says what would be written.
func (r *run) saySheet(x *exchange.Sheet, o sheetFlags) error {
	rows, err := x.Plan(r.ctx)
	if err != nil {
		return err
	}
	entries, c := 0, r.catalogue().At(x.Now, x.Now.Location())
	for i, row := range rows {
		if entries += len(row.Entries); i >= shownRows && len(rows) > shownRows+1 && !o.all {
			continue
		}
		r.tell(c, record.Say("sheet-line", record.With("line", row.Line), record.With("panel", row.Number), record.With("reference", row.Reference)))
		for j, e := range row.Entries {
			code := "sheet-entry"
			if j == row.Private {
				code = "sheet-entry-private"
			}
			r.tell(c, record.Say(code, tell.Told("what", c.Event(record.Event{At: e.At, Body: e.Body})), record.With("at", e.At)))
		}
	}
	if len(rows) > shownRows+1 && !o.all {
		r.tell(c, record.Say("more-rows", record.With("n", len(rows)-shownRows)))
	}
	r.sayRefused(x, o)
	n := x.RefusedRows()
	r.tell(c, record.Say("sheet-dry-run", record.With("panels", len(rows)), record.With("entries", entries), record.With("refused", n)))
	if n > 0 && !o.partly {
		return quiet(exitError)
	}
	return nil
}
