package main

import (
	"context"
	"strings"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/exchange"
	"backleaf/record/tell"
)

// sheetFlags say how a spreadsheet of older panels is read.
type sheetFlags struct {
	file, mapping      string
	dry, partly, again bool
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
		a.sayRefused(x, o.file)
		done, err := x.Write(ctx, a.progress())
		if err != nil {
			return err
		}
		a.say("E%d to E%d  from %s: %s", done.Entries[0].Seq, done.Entries[len(done.Entries)-1].Seq, o.file, tell.PanelList(done.Numbers))
		a.say("to take one back: backleaf panel discard %s --because \"…\"", done.Numbers[0])
		if done.Private > 0 {
			a.say("private, outside the journal: to whom and for how much, of %d handovers", done.Private)
		}
		if n := x.RefusedRows(); n > 0 {
			a.talk("%d rows were not written; take the others out of the sheet before you import it again", n)
		}
		a.warn(nil, done.Warnings)
		return nil
	})
}

// sayRefused names every cell that is wrong and every column left out.
func (a *app) sayRefused(x *exchange.Sheet, name string) {
	for _, r := range x.Refused {
		a.talk("%s, %s", name, r)
	}
	if len(x.Unread) > 0 {
		a.talk("columns not read: %s", strings.Join(x.Unread, ", "))
	}
}

// saySheet says what would be written.
func (a *app) saySheet(ctx context.Context, x *exchange.Sheet, o sheetFlags) error {
	rows, err := x.Plan(ctx)
	if err != nil {
		return err
	}
	entries := 0
	for _, row := range rows {
		entries += len(row.Entries)
		a.say("line %d  %s%s", row.Line, row.Number, tell.After("  ", row.Reference))
		for j, e := range row.Entries {
			secret := ""
			if j == row.Private {
				secret = ", with a private part"
			}
			a.say("  %s, %s%s", tell.Event(record.Event{At: e.At, Body: e.Body}), tell.When(e.At, x.Now, x.Now.Location()), secret)
		}
	}
	a.sayRefused(x, o.file)
	n := x.RefusedRows()
	a.say("dry run: %d panels in %d entries would be written, %d rows refused; nothing was written", len(rows), entries, n)
	if n > 0 && !o.partly {
		return quiet(exitError)
	}
	return nil
}
