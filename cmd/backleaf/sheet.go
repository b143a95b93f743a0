package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/sheet"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/tell"
)

// sheetImport is how a spreadsheet of older panels is read.
type sheetImport struct {
	file, mapping string
	dry, partly   bool
	again         bool // although the same file was imported before
}

const sheetHint = "nothing was written; put the rows right, or write the others with --rows-that-pass"

// importSheet reads a spreadsheet and writes its panels in one transaction.
func (a *app) importSheet(ctx context.Context, o sheetImport) error {
	if o.file == "-" && o.mapping == "-" {
		return usage("", "sheet and mapping cannot both come from standard input")
	}
	data, err := a.readInput(o.file)
	if err != nil {
		return err
	}
	raw, err := a.readInput(o.mapping)
	if err != nil {
		return err
	}
	m, err := sheet.ParseMapping(raw)
	if err != nil {
		return hinted(fmt.Errorf("%s: %w", o.mapping, err), "\"backleaf import --help\" shows a mapping; nothing was written")
	}
	do := func(session *studio.Session) error {
		b := session.Book
		w, err := b.Workshop(ctx)
		if err != nil {
			return err
		}
		now := a.now().In(studio.Zone(w.Studio))
		s, err := sheet.Read(data, m, sheet.Options{Shop: w, Now: now, Price: func(t string) error {
			_, err := private.ParsePrice(t, w.Studio.Currency)
			return err
		}})
		if err != nil {
			return hinted(fmt.Errorf("%s: %w", o.file, err), "nothing was written")
		}
		if o.dry {
			return a.showSheet(ctx, b, w, o, s, now)
		}
		before, err := b.Setting(ctx, importedSetting(data))
		if err != nil {
			return err
		}
		a.sayRefused(o, s)
		switch n := s.RefusedRows(); {
		case before != "" && !o.again:
			return hinted(fmt.Errorf("%s was imported before (%s)", o.file, before), "nothing was written; if its rows are new panels all the same, say --again")
		case n > 0 && !o.partly:
			return hinted(fmt.Errorf("%d of %d rows cannot be read", n, n+len(s.Rows)), sheetHint)
		case len(s.Rows) == 0:
			return hinted(fmt.Errorf("%s: there is no row to write", o.file), "nothing was written")
		}
		return a.writeSheet(ctx, b, w.Studio, o, s, data, now)
	}
	if o.dry {
		return a.read(ctx, do)
	}
	return a.write(ctx, do)
}

// sayRefused names every cell that is wrong and every column left out.
func (a *app) sayRefused(o sheetImport, s sheet.Sheet) {
	for _, r := range s.Refused {
		a.talk("%s, %s", o.file, r)
	}
	if len(s.Unread) > 0 {
		a.talk("columns not read: %s", strings.Join(s.Unread, ", "))
	}
}

// composed is the rows of a sheet as entries with their numbers.
type composed struct {
	entries []record.Entry
	private map[int]book.Private
	lines   []int // of the sheet, for each entry
	numbers []record.Number
}

func (a *app) composeSheet(rows []sheet.Row, st record.Studio, first int, now time.Time) (composed, error) {
	c := composed{private: map[int]book.Private{}}
	for i, row := range rows {
		n, err := record.NewNumber(st.Mark, now.Year(), first+i, st.NAAN)
		if err != nil {
			return c, err
		}
		c.numbers = append(c.numbers, n)
		for j, e := range row.Entries {
			e.Panels = []record.Number{n}
			if h, ok := e.Body.(record.HandedOver); ok && j == row.Handover && row.Private != (sheet.Private{}) {
				part := private.Part{To: row.Private.To, Note: row.Private.Note}
				if row.Private.Price != "" {
					if part.Price, err = private.ParsePrice(row.Private.Price, st.Currency); err != nil {
						return c, err
					}
				}
				sealed, digest, err := part.Seal(a.session(nil).Chance())
				if err != nil {
					return c, err
				}
				if sealed != nil {
					c.private[len(c.entries)] = *sealed
				}
				h.Private = digest
				e.Body = h
			}
			c.entries, c.lines = append(c.entries, e), append(c.lines, row.Line)
		}
	}
	return c, nil
}

// writeSheet gives numbers and writes, while no other process can.
func (a *app) writeSheet(ctx context.Context, b *book.Book, st record.Studio, o sheetImport, s sheet.Sheet, data []byte, now time.Time) error {
	var c composed
	a.busy("writing %d panels", len(s.Rows))
	done, err := b.Compose(ctx, now, func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		first, err := d.NextSerial(now.Year())
		if err == nil {
			c, err = a.composeSheet(s.Rows, st, first, now)
		}
		return c.entries, c.private, err
	})
	a.idle()
	if err != nil {
		var at *book.AppendError
		if errors.As(err, &at) && at.Index < len(c.lines) {
			err = &badFile{o.file, c.lines[at.Index], at.Err}
		}
		return hinted(err, "nothing was written")
	}
	written := fmt.Sprintf("E%d to E%d", done[0].Seq, done[len(done)-1].Seq)
	a.say("%s  from %s: %s", written, o.file, tell.PanelList(c.numbers))
	a.say("to take one back: backleaf panel discard %s --because \"…\"", c.numbers[0])
	if len(c.private) > 0 {
		a.say("private, outside the journal: to whom and for how much, of %d handovers", len(c.private))
	}
	if n := s.RefusedRows(); n > 0 {
		a.talk("%d rows were not written; take the others out of the sheet before you import it again", n)
	}
	if err := b.SetSetting(ctx, importedSetting(data), written); err != nil {
		a.talk("note: the panels are written, but the book will not know this sheet again: %v", err)
	}
	return nil
}

// importedSetting names the memory of a sheet: rows without a reference of
// their own could not be told from new ones when it comes a second time.
func importedSetting(data []byte) string {
	return fmt.Sprintf("imported %x", sha256.Sum256(data))
}

// showSheet says what would be written.
func (a *app) showSheet(ctx context.Context, b *book.Book, w *record.Workshop, o sheetImport, s sheet.Sheet, now time.Time) error {
	first, err := b.NextSerial(ctx, now.Year())
	if err != nil {
		return err
	}
	if w.Studio.Mark == "" {
		return hinted(fmt.Errorf("the book is empty: it has no studio to number panels for"), "make it with \"backleaf studio new\"")
	}
	c, err := a.composeSheet(s.Rows, w.Studio, first, now)
	if err != nil {
		return err
	}
	for i, row := range s.Rows {
		a.say("line %d  %s%s", row.Line, c.numbers[i], tell.After("  ", row.Reference))
		for j, e := range row.Entries {
			secret := ""
			if j == row.Handover && row.Private != (sheet.Private{}) {
				secret = ", with a private part"
			}
			a.say("  %s, %s%s", tell.Event(record.Event{At: e.At, Body: e.Body}), tell.When(e.At, now, now.Location()), secret)
		}
	}
	a.sayRefused(o, s)
	n := s.RefusedRows()
	a.say("dry run: %d panels in %d entries would be written, %d rows refused; nothing was written", len(s.Rows), len(c.entries), n)
	if n > 0 && !o.partly {
		return quiet(exitError)
	}
	return nil
}
