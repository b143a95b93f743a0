package studio

import (
	"context"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Written is what an act wrote, and what is worth saying of it.
type Written struct {
	Entries  []record.Entry
	Warnings []record.Said
	Means    []record.Said // what was typed, as it will count
}

// Compose makes entries from what the book holds at that moment, with their
// private parts by place.
type Compose func(*book.Draft) ([]record.Entry, map[int]book.Private, error)

// Write writes entries in one transaction: all, or none.
func (v *View) Write(ctx context.Context, es ...record.Entry) (Written, error) {
	return v.Compose(ctx, func(*book.Draft) ([]record.Entry, map[int]book.Private, error) { return es, nil, nil })
}

// Compose writes entries that depend on what the book holds at that moment,
// such as the next free number. Its warnings stand even where it fails.
func (v *View) Compose(ctx context.Context, make Compose) (Written, error) {
	var w Written
	if t, ok := v.Shop.Written.Exact(); ok && v.Now.Before(t.Add(-time.Minute)) {
		w.Warnings = append(w.Warnings, record.Say("clock-behind",
			record.With("clock", record.Moment(v.Local())), record.With("last", record.Moment(t.In(v.Zone)))))
	}
	var err error
	if w.Entries, err = v.Book.Compose(ctx, v.Local(), v.signed(make)); err != nil {
		return w, refuse.Because("not-written", err)
	}
	if book.IsTrial(ctx) {
		return w, nil
	}
	if r, ok := v.remind(ctx, w.Entries[len(w.Entries)-1].Seq); ok {
		w.Warnings = append(w.Warnings, r)
	}
	return w, nil
}

// signed adds who does it to what is written about panels.
func (v *View) signed(make Compose) Compose {
	return func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		es, private, err := make(d)
		for i, e := range es {
			if e.Makers == nil && len(e.Panels) > 0 {
				es[i].Makers = v.Hands
			}
		}
		return es, private, err
	}
}

// A book of more than remindFrom entries should have been backed up within
// remindAfter (common practice).
const (
	remindFrom  = 50
	remindAfter = 30 * 24 * time.Hour
)

// reminded is the setting that holds the day of the last reminder.
const reminded = "backup-reminder"

// remind says once a day when the last backup is old.
func (v *View) remind(ctx context.Context, entries int64) (r record.Said, due bool) {
	if entries <= remindFrom {
		return r, false
	}
	last, ok, err := v.Book.LastBackup(ctx)
	if err == nil && ok && v.Now.Sub(last) <= remindAfter {
		return r, false
	}
	today := v.Local().Format(time.DateOnly)
	if day, err := v.Book.Setting(ctx, reminded); err == nil && day == today {
		return r, false
	}
	r = record.Say("never-backed-up", record.With("entries", entries))
	if err == nil && ok {
		r = record.Say("backup-old", record.With("last", record.Moment(last.In(v.Zone))))
	}
	_ = v.Book.SetSetting(ctx, reminded, today) // at worst it is said again
	return r, true
}
