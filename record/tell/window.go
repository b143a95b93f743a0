package tell

import (
	"strings"
	"time"
)

// Window says a window as it looks from a moment.
func Window(from, safe, until, now time.Time) string {
	var parts []string
	switch {
	case !from.IsZero() && !safe.IsZero() && (until.IsZero() || safe.Before(until)):
		parts = append(parts, "not before "+moment(from, now)+", surely from "+moment(safe, now))
	case !from.IsZero() && !until.IsZero():
		return "between " + moment(from, now) + " and " + moment(until, now)
	case !from.IsZero():
		parts = append(parts, "from "+moment(from, now))
	}
	if !until.IsZero() {
		parts = append(parts, "at the latest "+moment(until, now))
	}
	return strings.Join(parts, ", ")
}

func moment(t, now time.Time) string {
	day := t.Format("2006-01-02")
	switch day {
	case now.Format("2006-01-02"):
		return t.Format("15:04")
	case now.AddDate(0, 0, 1).Format("2006-01-02"):
		return "tomorrow " + t.Format("15:04")
	case now.AddDate(0, 0, -1).Format("2006-01-02"):
		return "yesterday " + t.Format("15:04")
	}
	if t.Year() == now.Year() {
		return t.Format("2 Jan 15:04")
	}
	return t.Format("2 Jan 2006")
}
