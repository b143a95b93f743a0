package typed

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/edtf"
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
	if c := refuse.Code(err); !bench && (c == "time-not-read" || c == "vague-time") {
		err = refuse.Unclearly("date-not-read", "%q is no certain date", typed)
	}
	if err != nil {
		r.Fail(err)
	}
	return w
}

// said leaves out of what was said of a time what does not matter.
var (
	said   = strings.NewReplacer("a.m.", "am", "p.m.", "pm", ", ", " ", "vorgestern", "2 days ago", "day before yesterday", "2 days ago")
	isoDay = pattern.Of(`^([0-9]{4}-[0-9]{2}-[0-9]{2})t`)
	filler = []string{"at", "on", "um", "the", "of", "in"}
)

func parseAt(typed string, now time.Time, loc *time.Location, bench bool) (record.When, error) {
	now = now.In(loc)
	typed = strings.Join(strings.Fields(typed), " ")
	words := strings.Fields(isoDay().ReplaceAllString(said.Replace(strings.ToLower(typed)), "$1 "))
	hourly := bench && len(words) == 1 || slices.Contains(words, "at") || slices.Contains(words, "um")
	words = slices.DeleteFunc(words, func(w string) bool { return slices.Contains(filler, w) })
	part := ""
	words = slices.DeleteFunc(words, func(w string) bool {
		_, ok := partsOfDay[w]
		if ok {
			part = w
		}
		return ok
	})
	s := strings.Join(words, " ")
	if part == "" && (s == "" || s == "now" || s == "just now" || s == "right now") {
		return record.Moment(now), nil
	}
	if t, daily, ok := ago(s, now); ok && !daily && part == "" {
		return record.Moment(t), nil
	}
	if w, err, four := fourFigures(s, now); bench && four {
		return w, err
	}
	d, ok, err := dayOf(s, now)
	switch {
	case err != nil:
		return record.When{}, err
	case ok && part != "":
		return record.When{}, refuse.Unclearly("vague-time", "%q does not say when exactly", typed)
	case ok: // the day is known, the hour is not
		return notAhead(typed, now, d.Format(time.DateOnly))
	}
	for n := 1; n <= min(4, len(words)); n++ {
		for _, first := range []bool{false, true} { // where the hour stands
			on, clock := words[:len(words)-n], words[len(words)-n:]
			if first {
				clock, on = words[:n], words[n:]
			}
			c, is := parseHour(strings.Join(clock, " "))
			d, ok, err := dayOf(strings.Join(on, " "), now)
			if is && err != nil {
				return record.When{}, err
			}
			if is && ok && (!c.bare || hourly || part != "" || d.relative && len(on) > 0) {
				return moment(typed, strings.Join(on, " "), c, d, part, now)
			}
		}
	}
	w, err := notAhead(typed, now, typed)
	if refuse.Code(err) == "time-not-read" && vague().MatchString(s) {
		err = refuse.Unclearly("vague-time", "%q does not say when exactly", typed)
	}
	return w, err
}

// moment is an hour of a day, where no other can be meant.
func moment(typed, on string, c hour, d day, part string, now time.Time) (record.When, error) {
	other := c
	other.h += 12
	clock := func(c hour) string { return strings.TrimSpace(fmt.Sprintf("%s %02d:%02d", on, c.h, c.min)) }
	if span, ok := partsOfDay[part]; ok {
		within := func(c hour) bool { return c.h >= span[0] && c.h <= span[1] }
		switch {
		case within(other) && c.h < 12:
			c = other
		case !within(c):
			return record.When{}, refuse.Unclearly("vague-time", "%q is no hour of the %s", typed, part)
		}
	} else if c.doubtful && !other.on(d.Time).After(now) {
		return record.When{}, refuse.Unclearly("half-of-day", "%q could be before or after noon", typed).With(record.With("early", clock(c)), record.With("late", clock(other)))
	}
	if d.weekly && c.on(d.Time).After(now.Add(time.Minute)) {
		d.Time = d.AddDate(0, 0, -7) // later today is not meant
	}
	t, err := c.once(typed, d.Time, now)
	switch {
	case err != nil:
		return record.When{}, err
	case t.After(now.Add(time.Minute)):
		return record.When{}, refuse.Unclearly("later-today", "%q is later than now", typed).With(record.With("clock", fmt.Sprintf("%02d:%02d", c.h, c.min)))
	}
	return record.Moment(t), nil
}

// vague says less than a day, or no certain one.
var vague = pattern.Of(`\b(weeks?|months?|years?|recently|earlier|lately|lunch|lunchtime|midnight|tonight|dusk|dawn|while|other day)\b|\b(about|around|approx|ca\.?|roughly|a few|some) .*([:.][0-9]{2}|ago)`)

// fourFigures reads four figures as an hour, a year, or neither where both could
// be meant.
func fourFigures(s string, now time.Time) (w record.When, err error, ok bool) {
	if year, ok := strings.CutPrefix(s, "year "); ok && four().MatchString(year) {
		w, err = notAhead(s, now, year)
		return w, err, true
	}
	if !four().MatchString(s) {
		return w, nil, false
	}
	year, _ := strconv.Atoi(s)
	c := hour{h: year / 100, min: year % 100}
	switch {
	case c.h > 23 || c.min > 59, year >= oldest && year <= now.Year() && c.on(now).After(now): // that hour is none, or has not been yet
		w, err = notAhead(s, now, s)
	case year >= oldest && year/100 <= now.Year()/100: // no year that lies ahead is meant, but it may be typed
		past := s
		if year > now.Year() {
			past = "" // nothing is written down before it is done
		}
		err = refuse.Unclearly("year-or-hour", "%q could be the year %s or %s:%s", s, s, s[:2], s[2:]).With(record.With("clock", s[:2]+":"+s[2:]), record.With("year", past))
	default:
		w, err = moment(s, "", c, day{Time: now}, "", now)
	}
	return w, err, true
}

// oldest is the first year that four figures at the bench could mean.
const oldest = 1500

var four = pattern.Of(`^[0-9]{4}$`)

// notAhead reads an EDTF text, or a date as people write it, that does not lie
// ahead.
func notAhead(typed string, now time.Time, text string) (record.When, error) {
	w, err := record.ParseWhen(text)
	if err != nil {
		w, err = record.ParseWhen(edtf.Spoken(text, now, nil))
	}
	if err != nil || w.IsZero() {
		return record.When{}, refuse.Unclearly("time-not-read", "the time %q cannot be read", typed)
	}
	if accept.Ahead(w, now) {
		return record.When{}, refuse.Unclearly("later-than-now", "%q is later than now", typed)
	}
	return w, nil
}

// Until reads a date that may lie ahead, as a tin prints it: "2027-03",
// "03/2027", "31.03.2027".
func (r *Reader) Until(field, typed string, into *record.When) {
	s := strings.TrimSpace(typed)
	d, ok, err := dayOf(strings.ToLower(s), r.Now.In(r.Zone))
	if err != nil {
		r.Fail(err)
	} else if ok {
		s = d.Format(time.DateOnly)
	}
	w, err := record.ParseWhen(cmp.Or(edtf.Spoken(s, r.Now, nil), s))
	if err != nil {
		r.Fail(refuse.Input(field, "no-date", "%q is no date", typed))
	}
	*into = w
}

// Moment reads an exact moment, which may lie ahead: "14:05", "tomorrow",
// "monday 9:00", "27.11.2026 9:00". The day is that of like, if none is typed;
// of a day without an hour it is the beginning.
func Moment(field, s string, like time.Time) (time.Time, error) {
	if t, err := time.Parse(time.RFC3339, s); err == nil {
		return t.In(like.Location()), nil
	}
	words := strings.Fields(strings.ToLower(s))
	for n := range len(words) + 1 {
		d, ok, err := ahead(strings.Join(words[:n], " "), like)
		c, hourly := parseHour(strings.Join(words[n:], " "))
		switch {
		case err != nil:
			return like, err
		case ok && n > 0 && n == len(words):
			return hour{}.on(d.Time), nil
		case ok && hourly && (n > 0 || !c.bare):
			t, err := c.once(s, d.Time, d.AddDate(0, 0, 2))
			return t, err
		}
	}
	return like, refuse.Input(field, "no-moment", "%q is not a moment", s)
}

// ahead is dayOf, of a day to come: a weekday is the next one.
func ahead(s string, now time.Time) (day, bool, error) {
	for i := range 7 {
		t := now.AddDate(0, 0, i+1)
		if name := strings.ToLower(t.Weekday().String()); s == name || s == name[:3] || i == 0 && s == "tomorrow" {
			return day{Time: t, relative: true}, true, nil
		}
	}
	return dayOf(s, now)
}
