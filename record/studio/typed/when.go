package typed

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

var clockText = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):([0-5][0-9])$`)

// At reads what a person says of a time, in the studio's zone: "14:05",
// "yesterday 16:30", "2026-05-02 14:05", a bare date, an EDTF text for what
// is not exactly known, or "unknown". Empty means now.
func (r *Reader) At(typed string) record.When {
	w, err := parseAt(typed, r.Now, r.Zone)
	if err != nil {
		r.Fail(err)
	}
	return w
}

// When reads a time into a field, if one was typed.
func (r *Reader) When(typed string, into *record.When) {
	if typed != "" {
		*into = r.At(typed)
	}
}

func parseAt(s string, now time.Time, loc *time.Location) (record.When, error) {
	now = now.In(loc)
	s = strings.TrimSpace(s)
	if s == "" || s == "now" {
		return record.Moment(now), nil
	}
	day, clock := now, s
	switch word, rest, _ := strings.Cut(s, " "); {
	case word == "today":
		clock = strings.TrimSpace(rest)
	case word == "yesterday":
		day, clock = now.AddDate(0, 0, -1), strings.TrimSpace(rest)
	default:
		if d, err := time.ParseInLocation("2006-01-02", word, loc); err == nil && rest != "" {
			day, clock = d, strings.TrimSpace(rest)
		}
	}
	if clock == "" { // "yesterday": the day is known, the hour is not
		return record.ParseWhen(day.Format("2006-01-02"))
	}
	if m := clockText.FindStringSubmatch(clock); m != nil {
		var h, min int
		fmt.Sscanf(clock, "%d:%d", &h, &min)
		t := time.Date(day.Year(), day.Month(), day.Day(), h, min, 0, 0, loc)
		if t.Hour() != h || t.Minute() != min {
			return record.When{}, refuse.Unclearly("no-such-time", "%q does not exist: the clock was put forward then", s)
		}
		if t.After(now.Add(time.Minute)) {
			return record.When{}, refuse.Unclearly("later-today", "%q is later than now", s).With(record.With("clock", clock))
		}
		return record.Moment(t), nil
	}
	w, err := record.ParseWhen(s)
	if err != nil {
		return record.When{}, refuse.Unclearly("time-not-read", "the time %q cannot be read", s)
	}
	if e, ok := w.Earliest(); ok && e.After(now.Add(time.Minute)) {
		return record.When{}, refuse.Unclearly("later-than-now", "%q is later than now", s)
	}
	return w, nil
}

// Moment reads an exact moment, which may lie ahead; the day is that of like,
// if none is typed.
func Moment(s string, like time.Time) (time.Time, error) {
	for _, layout := range []string{"2006-01-02 15:04", time.RFC3339, "2006-01-02"} {
		if t, err := time.ParseInLocation(layout, s, like.Location()); err == nil {
			return t, nil
		}
	}
	if t, err := time.Parse("15:04", s); err == nil {
		return time.Date(like.Year(), like.Month(), like.Day(), t.Hour(), t.Minute(), 0, 0, like.Location()), nil
	}
	return like, refuse.Input("at", "no-moment", "%q is not a moment", s)
}
