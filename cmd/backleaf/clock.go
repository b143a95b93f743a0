package main

import (
	"fmt"
	"regexp"
	"strings"
	"time"

	"backleaf/record"
)

var clockText = regexp.MustCompile(`^([01]?[0-9]|2[0-3]):([0-5][0-9])$`)

// parseAt reads what a person says of a time, in the studio's zone: "14:05",
// "yesterday 16:30", "2026-05-02 14:05", a bare date, an EDTF text for what
// is not exactly known, or "unknown". Empty means now.
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
			return record.When{}, usage("", "%q does not exist: the clock was put forward then", s)
		}
		if t.After(now.Add(time.Minute)) {
			return record.When{}, usage("for an evening before today say \"yesterday "+clock+"\"", "%q is later than now", s)
		}
		return record.Moment(t), nil
	}
	w, err := record.ParseWhen(s)
	if err != nil {
		return record.When{}, usage("say 14:05, \"yesterday 16:30\", \"2026-05-02 14:05\", 2026-05-02, 1998~ (about 1998) or unknown",
			"the time %q cannot be read", s)
	}
	if e, ok := w.Earliest(); ok && e.After(now.Add(time.Minute)) {
		return record.When{}, usage("", "%q is later than now", s)
	}
	return w, nil
}

// sayWhen prints a time for a reader, short where it is near.
func sayWhen(w record.When, now time.Time, loc *time.Location) string {
	switch {
	case w.IsZero():
		return "date not recorded"
	case w.IsUnknown():
		return "date unknown"
	}
	t, ok := w.Exact()
	if !ok {
		return w.Date().Words()
	}
	t, now = t.In(loc), now.In(loc)
	if t.Format("2006-01-02") == now.Format("2006-01-02") {
		return "today " + t.Format("15:04")
	}
	return t.Format("2 Jan 2006 15:04")
}
