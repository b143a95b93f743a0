package main

import (
	"backleaf/record"
	"backleaf/record/check"
	"backleaf/record/safefile"
	"backleaf/record/studio"
	"backleaf/record/studio/questions"
	"backleaf/record/studio/typed"
)

func newDue(a *app) {
	var at, calendar string
	a.reads("due", flags{"at": &at, "calendar": &calendar, "json": &a.asJSON}, func(r *run) error {
		w, err := r.Book.Shelf(r.ctx)
		if err != nil {
			return err
		}
		now := a.now().In(studio.Zone(w.Studio))
		if at != "" {
			if now, err = typed.Moment("at", at, now); err != nil {
				return err
			}
		}
		steps, ics, err := questions.DueOf(r.ctx, a.catalogue(), r.Book, r.args, now)
		if err != nil {
			return err
		}
		if calendar != "" {
			if err := safefile.Renew(calendar, check.CalendarKind, ics(a.now())); err != nil {
				return err
			}
			a.noted("calendar-written", record.With("file", calendar))
		}
		if a.asJSON {
			return a.sayJSONList(func(add func(any) error) (err error) {
				steps(func(s questions.Step) bool { err = add(s); return err == nil })
				return err
			})
		}
		last := questions.Step{}
		for s := range steps {
			if s.State != last.State || s.When != last.When {
				a.say("%-8s  %s", a.catalogue().State(s.State), s.When)
			}
			a.told("due-panels", record.With("batch", s.Batch), record.With("panels", s.Panels))
			last = s
		}
		if last.Panels == nil {
			why, err := questions.NothingDue(r.ctx, r.Book, r.args, now)
			a.warn(nil, why)
			return err
		}
		return nil
	})
}
