package studio

import (
	"cmp"
	"context"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/book"
	"backleaf/record/studio/refuse"
)

// Written is what an act wrote, and what is worth saying of it.
type Written struct {
	Entries  []record.Entry
	Warnings []record.Said
	Means    []record.Said // what was typed, as it will count, and what came of it
}

// Mean adds to what came of an act.
func (w *Written) Mean(code string, values ...record.Value) {
	w.Means = append(w.Means, record.Say(code, values...))
}

// Warn adds to what is to be doubted or done.
func (w *Written) Warn(code string, values ...record.Value) {
	w.Warnings = append(w.Warnings, record.Say(code, values...))
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
func (v *View) Compose(ctx context.Context, make Compose) (w Written, err error) {
	c := &choice{View: v}
	var reminder []record.Said
	w.Entries, err = v.Book.Compose(ctx, v.Local(), func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		last, err := d.Written()
		if err = cmp.Or(err, v.Believable(last, v.Zone)); err != nil {
			return nil, nil, err
		}
		if t, ok := last.Exact(); ok && v.Now.Before(t.Add(-time.Minute)) {
			w.Warn("clock-behind", record.With("clock", record.Moment(v.Local())), record.With("last", record.Moment(t.In(v.Zone))))
		}
		es, private, err := c.signed(make)(d)
		if err == nil && len(es) > 0 && !book.IsTrial(ctx) {
			reminder = v.remind(d, d.Size()+int64(len(es)))
		}
		return es, private, err
	})
	if refuse.Code(err) != "" {
		return w, err
	} else if err != nil {
		return w, refuse.Because("not-written", err)
	}
	w.Means = c.open
	w.Warnings = append(w.Warnings, reminder...)
	return w, nil
}

// A clock that shows a time more than farBehind before the last entry of the
// book, or farAhead after it, is not believed (common practice: a computer
// whose battery is empty begins in another year).
const (
	farBehind = 24 * time.Hour
	farAhead  = 10 * 365 * 24 * time.Hour
)

// Believable refuses to write by a clock that is far off, seen from when the
// last entry was written, unless the session says that it is right.
func (s *Session) Believable(last record.When, zone *time.Location) error {
	now := s.Clock()
	t, ok := last.Exact()
	if s.ClockIsRight || !ok || now.After(t.Add(-farBehind)) && now.Before(t.Add(farAhead)) {
		return nil
	}
	return refuse.Cannot("clock-far-off", "this computer's clock says %s, and the last entry of the book was written on %s", now.In(zone).Format("2 January 2006, 15:04"), t.In(zone).Format("2 January 2006, 15:04"))
}

// signed adds who does what is written about panels, and what it means.
func (c *choice) signed(make Compose) Compose {
	return func(d *book.Draft) ([]record.Entry, map[int]book.Private, error) {
		es, private, err := make(d)
		if err != nil {
			return nil, nil, err
		}
		es = slices.Clone(es)
		for i, e := range es {
			if e.Makers == nil && len(e.Panels) > 0 {
				e.Makers = c.Hands
			}
			if es[i], err = accept.Bind(e, d, c.choose); err != nil {
				return nil, nil, err
			}
		}
		return es, private, cmp.Or(Unnamed(d, es, private), c.done())
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
func (v *View) remind(d *book.Draft, entries int64) []record.Said {
	if entries <= remindFrom {
		return nil
	}
	last, ok, err := d.LastBackup()
	if err == nil && ok && v.Now.Sub(last) <= remindAfter {
		return nil
	}
	today := v.Local().Format(time.DateOnly)
	if day, err := d.Setting(reminded); err == nil && day == today {
		return nil
	}
	_ = d.SetSetting(reminded, today) // at worst it is said again
	if err == nil && ok {
		return []record.Said{record.Say("backup-old", record.With("last", record.Moment(last.In(v.Zone))))}
	}
	return []record.Said{record.Say("never-backed-up", record.With("entries", entries))}
}
