package tell

import (
	"time"

	"backleaf/record"
	"backleaf/record/check"
)

// Window says a window of time as it looks from the moment of [Catalogue.At]:
// of one that is open only since when, of one that is over only its end.
func (c *Catalogue) Window(from, safe, until time.Time) string {
	code, open := "window", from
	if safe.After(from) {
		open = safe
	}
	switch {
	case !until.IsZero() && until.Before(c.now):
		from, safe = time.Time{}, time.Time{}
	case !open.IsZero() && !open.After(c.now):
		code, from, safe = "window-since", open, time.Time{}
	case !safe.IsZero() && c.near(from, "hour") == c.near(safe, "hour"):
		code, safe = "window-from", time.Time{}
	case !from.IsZero() && !safe.IsZero() && (until.IsZero() || safe.Before(until)):
	case !from.IsZero() && !until.IsZero():
		code = "window-between"
	case !from.IsZero():
		code, safe = "window-from", time.Time{}
	default:
		from, safe = time.Time{}, time.Time{}
	}
	return Say(c, record.Say(code, record.With("from", instant(from)), record.With("safe", instant(safe)), record.With("until", instant(until))))
}

// instant is a moment as a value; the zero time is not recorded.
func instant(t time.Time) record.When {
	if t.IsZero() {
		return record.When{}
	}
	return record.Moment(t)
}

// CalendarEntry is the summary and the description of a step in a calendar.
func (c *Catalogue) CalendarEntry(s check.Step) (summary, description string) {
	panels := record.With("panels", s.Panels)
	summary = Say(c, record.Say("calendar-summary", Told("task", c.Task(s.Task)), panels, record.With("batch", s.Batch)))
	return summary, Say(c, record.Say("calendar-text", Told("step", c.Due(s)), panels))
}
