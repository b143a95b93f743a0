package questions

import (
	"context"
	"iter"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
	"backleaf/record/tell"
)

// Step is a next step of panels in the same state.
type Step struct {
	State  check.State     `json:"state"`
	Task   check.Task      `json:"task"`
	Text   string          `json:"text"`
	Batch  record.Key      `json:"batch"`
	Panels []record.Number `json:"panels"`
	From   time.Time       `json:"not_before,omitzero"`
	Safe   time.Time       `json:"safe_by,omitzero"`
	Until  time.Time       `json:"until,omitzero"`
	Entry  int64           `json:"entry,omitzero"`
	Said   record.Said     `json:"-"`
	When   string          `json:"-"` // the text with its window, as it looks from then
}

// Due gives the next steps of these panels as they look from a moment, in
// its time zone, in the words of a catalogue, and the same for a calendar.
func Due(c *tell.Catalogue, w *record.Workshop, ps []*record.Panel, moment time.Time) (steps iter.Seq[Step], calendar func(stamp time.Time) []byte) {
	var all []check.Step
	for _, p := range ps {
		all = append(all, check.Next(w, p, moment)...)
	}
	return inWords(c, all, moment)
}

// DueOf is [Due] for panels named as typed; without terms, for all that are here.
func DueOf(ctx context.Context, c *tell.Catalogue, b *book.Book, terms []string, moment time.Time) (steps iter.Seq[Step], calendar func(stamp time.Time) []byte, err error) {
	ns, err := numbers(ctx, b, terms, nil, func(p book.Present) bool { return discarded(p) || goneBy(p, moment) })
	if err != nil {
		return nil, nil, err
	}
	var all []check.Step
	held := 0 // of them, grouped
	err = book.Each(ctx, b, ns, func(w *record.Workshop, p *record.Panel) ([]check.Step, error) { return check.Next(w, p, moment), nil },
		func(next []check.Step) error {
			if all = append(all, next...); len(all) > held+1000 { // those of a batch are held as one
				all = append(all[:held], check.Group(all[held:])...)
				held = len(all)
			}
			return nil
		})
	steps, calendar = inWords(c, all, moment)
	return steps, calendar, err
}

// goneBy reports a panel that was not here any more at a moment: nothing is due on it.
func goneBy(p book.Present, moment time.Time) bool {
	left, known := p.Since.Earliest()
	return p.Place != book.Here && !(known && left.After(moment))
}

// NothingDue says why nothing is due at a moment on panels named as typed; without
// terms, on any.
func NothingDue(ctx context.Context, b *book.Book, terms []string, moment time.Time) (out []record.Said, err error) {
	n, err := b.Count(ctx)
	out = append(out, record.Say("nothing-due", record.With("panels", n)))
	if err != nil || len(terms) == 0 {
		return out, err
	}
	ns, err := numbers(ctx, b, terms, nil, nil)
	if err != nil {
		return nil, err
	}
	return out, b.Panels(ctx, book.Narrow{Numbers: ns}, func(p book.Present) error {
		if goneBy(p, moment) {
			out = append(out, record.Say("nothing-due-gone", record.With("panels", p.Number), record.With("how", record.Parting(p.Place)), record.With("since", p.Since)))
		}
		return nil
	})
}

func inWords(c *tell.Catalogue, all []check.Step, moment time.Time) (steps iter.Seq[Step], calendar func(stamp time.Time) []byte) {
	groups, then := check.Group(all), c.At(moment, moment.Location())
	check.Order(groups, moment)
	for i, s := range groups {
		groups[i].From, groups[i].Safe, groups[i].Until = local(s.From, moment), local(s.Safe, moment), local(s.Until, moment)
	}
	return func(yield func(Step) bool) {
		for _, s := range groups {
			if !yield(Step{s.State(moment), s.Task, c.Due(s), s.Batch, s.Panels, s.From, s.Safe, s.Until, s.Entry, s.Said, then.DueWhen(s)}) {
				return
			}
		}
	}, func(stamp time.Time) []byte { return check.Calendar(groups, stamp, c.CalendarEntry) }
}

func local(t, like time.Time) time.Time {
	if t.IsZero() {
		return t
	}
	return t.In(like.Location())
}

// airHolds is how long a reading of the room speaks for its air (common
// practice: it changes with the weather and with a window).
const airHolds = 4 * time.Hour

// AirWanted reports that a coat dries or is due soon, and that nobody read the
// air of the room lately: what is due then hangs on a guess.
func AirWanted(w *record.Workshop, now time.Time) bool {
	for _, c := range w.Climate {
		if t, ok := c.At.Exact(); ok && now.Sub(t) < airHolds {
			return false
		}
	}
	for _, s := range check.Due(w, now) {
		switch s.Task {
		case check.TaskSeal, check.TaskLay, check.TaskAnswer, check.TaskTrim, check.TaskPrime:
			if s.From.IsZero() || s.From.Sub(now) < airHolds {
				return true
			}
		}
	}
	return false
}
