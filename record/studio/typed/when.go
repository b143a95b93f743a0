package typed

import (
	"fmt"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
)

// At reads what a person says of a time at the bench, in the studio's zone:
// "14:05", "2pm", "yesterday 16:30", "Mon 14:00", "half an hour ago",
// "23.11.2026 14:05", "2 May 2026", an EDTF text for what is not exactly known,
// or "unknown". Empty means now. Four figures that could be a year and an hour
// are refused.
func (r *Reader) At(typed string) record.When { return r.read(typed, true) }

// When reads a date into a field, if one was typed: as [Reader.At], but four
// figures are a year.
func (r *Reader) When(typed string, into *record.When) {
	if typed != "" {
		*into = r.read(typed, false)
	}
}

func (r *Reader) read(typed string, bench bool) record.When {
	w, err := parseAt(typed, r.Now, r.Zone, bench)
	if err != nil {
		r.Fail(err)
	}
	return w
}

func parseAt(typed string, now time.Time, loc *time.Location, bench bool) (record.When, error) {
	now = now.In(loc)
	s := strings.Join(strings.Fields(typed), " ")
	s = strings.TrimPrefix(strings.NewReplacer(" at ", " ", ", ", " ").Replace(s), "at ")
	switch strings.ToLower(s) {
	case "", "now", "just now":
		return record.Moment(now), nil
	case "the day before yesterday", "day before yesterday":
		s = "2 days ago"
	}
	if t, daily, ok := ago(s, now); ok {
		if daily {
			return record.ParseWhen(t.Format(time.DateOnly))
		}
		return record.Moment(t), nil
	}
	if m := vague().FindStringSubmatch(s); m != nil {
		return record.When{}, refuse.Unclearly("vague-time", "%q names no hour", s)
	}
	if m := spoken().FindStringSubmatch(s); m != nil {
		return record.When{}, refuse.Unclearly("half-of-day", "%q could be before or after noon", s)
	}
	if bench && fourFigures().MatchString(s) {
		h, m := s[:2], s[2:]
		hours, min, clock := hour(h + ":" + m)
		switch year, _ := strconv.Atoi(s); {
		case !clock:
		case year < oldest || year > now.Year():
			s = h + ":" + m
		case hours*60+min > now.Hour()*60+now.Minute(): // that hour has not been yet
		default:
			return record.When{}, refuse.Unclearly("year-or-hour", "%q could be the year %s or %s:%s", s, s, h, m).With(record.With("clock", h+":"+m), record.With("year", s))
		}
	}
	if year, ok := strings.CutPrefix(strings.ToLower(s), "year "); ok && fourFigures().MatchString(year) {
		s = year
	}
	day, clock, err := dayOf(s, now)
	switch {
	case err != nil:
		return record.When{}, err
	case clock == "" && !day.IsZero(): // the day is known, the hour is not
		return notAhead(s, now, day.Format(time.DateOnly))
	case day.IsZero():
		day = now
	}
	if h, min, ok := hour(clock); ok {
		t := time.Date(day.Year(), day.Month(), day.Day(), h, min, 0, 0, loc)
		if t.Hour() != h || t.Minute() != min {
			return record.When{}, refuse.Unclearly("no-such-time", "%q does not exist: the clock was put forward then", s)
		}
		if t.After(now.Add(time.Minute)) {
			return record.When{}, refuse.Unclearly("later-today", "%q is later than now", s).With(record.With("clock", clock))
		}
		return record.Moment(t), nil
	}
	return notAhead(s, now, s)
}

// vague says a part of a day, or longer; spoken an hour of the clock without
// its half of the day.
var (
	vague  = pattern.Of(`(?i)\b(morning|afternoon|evening|tonight|night|week|recently|earlier|lately)$`)
	spoken = pattern.Of(`(?i)\b(half past|quarter (past|to)|o'clock|oclock|o’clock)\b`)
)

// oldest is the first year that four figures at the bench could mean.
const oldest = 1500

var fourFigures = pattern.Of(`^[0-9]{4}$`)

// notAhead reads an EDTF text that does not lie ahead.
func notAhead(typed string, now time.Time, edtf string) (record.When, error) {
	w, err := record.ParseWhen(edtf)
	if err != nil {
		return record.When{}, refuse.Unclearly("time-not-read", "the time %q cannot be read", typed)
	}
	if accept.Ahead(w, now) {
		return record.When{}, refuse.Unclearly("later-than-now", "%q is later than now", typed)
	}
	return w, nil
}

var monthText = pattern.Of(`^(0?[1-9]|1[0-2])[/.]([0-9]{4})$`)

// Until reads a date that may lie ahead, as a tin prints it: "2027-03",
// "03/2027", "31.03.2027".
func (r *Reader) Until(field, typed string, into *record.When) {
	s := strings.TrimSpace(typed)
	if m := monthText().FindStringSubmatch(s); m != nil {
		s = fmt.Sprintf("%s-%02s", m[2], m[1])
	} else if day, clock, err := dayOf(s, r.Now.In(r.Zone)); err != nil {
		r.Fail(err)
	} else if !day.IsZero() && clock == "" {
		s = day.Format(time.DateOnly)
	}
	w, err := record.ParseWhen(s)
	if err != nil {
		r.Fail(refuse.Input(field, "no-date", "%q is no date", typed))
	}
	*into = w
}

// Moment reads an exact moment, which may lie ahead; the day is that of like,
// if none is typed.
func Moment(s string, like time.Time) (time.Time, error) {
	for _, layout := range []string{"2006-01-02 15:04", time.RFC3339, "2006-01-02"} {
		if t, err := time.ParseInLocation(layout, s, like.Location()); err == nil {
			return t, nil
		}
	}
	if h, min, ok := hour(s); ok {
		return time.Date(like.Year(), like.Month(), like.Day(), h, min, 0, 0, like.Location()), nil
	}
	return like, refuse.Input("at", "no-moment", "%q is not a moment", s)
}
