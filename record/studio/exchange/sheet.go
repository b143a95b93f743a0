package exchange

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/sheet"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
)

// SheetOrder says how a spreadsheet of older panels is to be read. Names are
// for errors.
type SheetOrder struct {
	Name, MappingName string
	Data, Mapping     []byte
	Partly            bool // write the rows that pass though others are refused
	Again             bool // although the same sheet was imported before
}

// Sheet is a spreadsheet as read: which rows pass, and every cell that is
// refused and why.
type Sheet struct {
	sheet.Sheet
	Shop  *record.Workshop
	Now   time.Time // in the studio's time zone
	s     *studio.Session
	order SheetOrder
}

// ReadSheet reads a spreadsheet by its mapping.
func ReadSheet(ctx context.Context, s *studio.Session, o SheetOrder) (*Sheet, error) {
	m, err := sheet.ParseMapping(o.Mapping)
	if err != nil {
		return nil, refuse.Because("mapping", fmt.Errorf("%s: %w", o.MappingName, err))
	}
	x := &Sheet{s: s, order: o}
	taken := sheet.Taken{}
	if x.Shop, err = s.Book.Shelf(ctx); err == nil {
		err = s.Book.Walk(ctx, book.Narrow{}, func(p *record.Panel) error { taken.By(p); return nil })
	}
	if err != nil {
		return nil, err
	}
	x.Now = s.Clock().In(studio.Zone(x.Shop.Studio))
	x.Sheet, err = sheet.Read(o.Data, m, sheet.Options{Shop: x.Shop, Taken: taken, Now: x.Now, Price: func(t string) error {
		_, err := private.ParsePrice(t, x.Shop.Studio.Currency)
		return err
	}, Told: told})
	if err != nil {
		return nil, refuse.Because("not-written", fmt.Errorf("%s: %w", o.Name, err))
	}
	return x, nil
}

// told refuses a row of which a text tells to whom its panel went.
func told(row sheet.Row) error {
	to := private.Part{To: row.Private.To}
	for j, e := range row.Entries {
		var own private.Part
		if hasPrivate(row, j) {
			own = to
		}
		if private.ToldBy(e.Body, own, []private.Part{to}) {
			return studio.NameInJournal("")
		}
	}
	return nil
}

// composed is the rows of a sheet as entries with their numbers.
type composed struct {
	entries []record.Entry
	private map[int]book.Private
	lines   []int // of the sheet, for each entry
	numbers []record.Number
}

func (x *Sheet) compose(first int) (composed, error) {
	c := composed{private: map[int]book.Private{}}
	st := x.Shop.Studio
	for i, row := range x.Rows {
		n, err := record.NewNumber(st.Mark, x.Now.Year(), first+i, st.NAAN)
		if err != nil {
			return c, err
		}
		c.numbers = append(c.numbers, n)
		for j, e := range row.Entries {
			e.Panels = []record.Number{n}
			if h, ok := e.Body.(record.HandedOver); ok && hasPrivate(row, j) {
				part := private.Part{To: row.Private.To, Note: row.Private.Note}
				if row.Private.Price != "" {
					if part.Price, err = private.ParsePrice(row.Private.Price, st.Currency); err != nil {
						return c, err
					}
				}
				sealed, digest, err := part.Seal(x.s.Chance())
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

func hasPrivate(r sheet.Row, entry int) bool {
	return entry == r.Handover && r.Private != (sheet.Private{})
}

// Planned is a row as it would be written.
type Planned struct {
	Line      int
	Number    record.Number
	Reference string
	Entries   []record.Entry
	Private   int // which entry has a private part; -1: none
}

// Plan says what would be written.
func (x *Sheet) Plan(ctx context.Context) ([]Planned, error) {
	first, err := x.s.Book.NextSerial(ctx, x.Now.Year())
	if err != nil {
		return nil, err
	}
	if x.Shop.Studio.Mark == "" {
		return nil, refuse.Because("book-empty", errors.New("the book is empty: it has no studio to number panels for"))
	}
	c, err := x.compose(first)
	if err != nil {
		return nil, err
	}
	var out []Planned
	for i, row := range x.Rows {
		p := Planned{Line: row.Line, Number: c.numbers[i], Reference: row.Reference, Entries: row.Entries, Private: -1}
		for j := range row.Entries {
			if hasPrivate(row, j) {
				p.Private = j
			}
		}
		out = append(out, p)
	}
	return out, nil
}

// Imported is what was written of a sheet.
type Imported struct {
	Numbers []record.Number
	Private int // entries with a private part
	studio.Written
}

// Write gives numbers and writes the rows in one transaction, while no other
// process can.
func (x *Sheet) Write(ctx context.Context, progress studio.Progress) (Imported, error) {
	var done Imported
	before, err := x.s.Book.Setting(ctx, x.setting())
	if err != nil {
		return done, err
	}
	switch n := x.RefusedRows(); {
	case before != "" && !x.order.Again:
		return done, refuse.Cannot("sheet-imported-before", "%s was imported before (%s)", x.order.Name, before)
	case n > 0 && !x.order.Partly:
		return done, refuse.Cannot("rows-refused", "%d of %d rows cannot be written", n, n+len(x.Rows)).With(record.With("others", len(x.Rows)))
	case len(x.Rows) == 0:
		return done, refuse.Cannot("not-written", "%s: there is no row to write", x.order.Name)
	}
	var c composed
	end := progress.Busy("writing-panels", int64(len(x.Rows)))
	done.Entries, err = x.s.Book.Compose(ctx, x.Now, func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		first, err := d.NextSerial(x.Now.Year())
		if err == nil {
			c, err = x.compose(first)
		}
		return c.entries, c.private, err
	})
	end()
	if err != nil {
		if at, ok := errors.AsType[*book.AppendError](err); ok {
			err = &BadFile{x.order.Name, c.lines[at.Index], at.Err}
		}
		return done, refuse.Because("not-written", err)
	}
	done.Numbers, done.Private = c.numbers, len(c.private)
	span := fmt.Sprintf("E%d to E%d", done.Entries[0].Seq, done.Entries[len(done.Entries)-1].Seq)
	if err := x.s.Book.SetSetting(context.WithoutCancel(ctx), x.setting(), span); err != nil {
		done.Warnings = append(done.Warnings, record.Say("sheet-not-remembered", record.With("why", err.Error())))
	}
	return done, nil
}

// setting names the memory of a sheet: rows without a reference of their own
// could not be told from new ones when it comes a second time.
func (x *Sheet) setting() string { return fmt.Sprintf("imported %x", sha256.Sum256(x.order.Data)) }
