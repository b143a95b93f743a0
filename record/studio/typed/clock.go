package typed

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/edtf"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
)

var (
	clockText  = pattern.Of(`^(half past |quarter past |quarter to )?([0-9]{1,2})(?:(?::|\.|h| h | uhr )([0-5][0-9]))? ?(h|hrs|hours|uhr|heures|o['’]?clock|am|pm)?$`)
	agoText    = pattern.Of(`^(.+?) ?(minutes?|mins?|hours?|hrs?|h|days?|d|weeks?) ago$`)
	strokeDate = pattern.Of(`^([0-9]{1,2})/([0-9]{1,2})/((?:20)?[0-9]{2}|1[0-9]{3})$`)
)

// hour is an hour of the clock. A doubtful one may mean the other half of the day.
type hour struct {
	h, min   int
	bare     bool // a figure alone, which may be no hour at all
	doubtful bool
}

// hours are the hours that people write out.
var hours = []string{"noon", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// parseHour reads "14:05", "14.05", "2pm", "2:30 pm", "14 Uhr", "half past two".
// Nobody works at night without saying so: 2:30 may be after noon, 02:30 is not.
func parseHour(s string) (c hour, ok bool) {
	if s == "noon" || s == "midday" {
		return hour{h: 12}, true
	}
	words := strings.Split(s, " ")
	for i, w := range words {
		if n := slices.Index(hours, w); n > 0 {
			words[i] = strconv.Itoa(n)
		}
	}
	m := clockText().FindStringSubmatch(strings.Join(words, " "))
	if m == nil {
		return c, false
	}
	spoken, minutes, half := m[1], m[3], m[4]
	c.h, _ = strconv.Atoi(m[2])
	c.min, _ = strconv.Atoi(minutes)
	c.bare = spoken+minutes+half == ""
	clock12 := c.h > 0 && c.h <= 12
	switch half {
	case "am", "pm":
		if c.h %= 12; half == "pm" {
			c.h += 12
		}
		return c, clock12 && spoken == ""
	case "", "o'clock", "o’clock", "oclock":
		c.doubtful = c.h > 0 && c.h < 12 && m[2][0] != '0' && (minutes == "" || c.h < 6)
	}
	switch spoken {
	case "half past ":
		c.min = 30
	case "quarter past ":
		c.min = 15
	case "quarter to ":
		c.h, c.min = c.h-1, 45
	}
	return c, c.h >= 0 && c.h < 24 && (spoken == "" || clock12 && minutes == "")
}

// on is that hour of a day.
func (c hour) on(day time.Time) time.Time {
	return time.Date(day.Year(), day.Month(), day.Day(), c.h, c.min, 0, 0, day.Location())
}

// once is that hour of a day if the clock shows it once: where it is put forward
// it skips an hour, where it is put back it shows one twice, unless the second
// is later than now.
func (c hour) once(typed string, day, now time.Time) (time.Time, error) {
	t := c.on(day)
	if t.Hour() != c.h || t.Minute() != c.min {
		return t, refuse.Unclearly("no-such-time", "%q does not exist: the clock is put forward then", typed)
	}
	_, east := t.Zone()
	for _, days := range []int{-1, 1} {
		_, other := t.AddDate(0, 0, days).Zone()
		again := t.Add(time.Duration(east-other) * time.Second)
		if again.Equal(t) || again.Hour() != c.h || again.Minute() != c.min {
			continue
		}
		if again.Before(t) {
			t, again = again, t
		}
		if !again.After(now) {
			return t, refuse.Unclearly("hour-twice", "%q comes twice: the clock is put back then", typed).With(record.With("first", t.Format(time.RFC3339)), record.With("second", again.Format(time.RFC3339)))
		}
		break
	}
	return t, nil
}

// partsOfDay are the hours that a part of a day has, the first and the last.
var partsOfDay = map[string][2]int{"morning": {1, 11}, "afternoon": {12, 18}, "evening": {16, 23}, "night": {19, 23}}

// counts are the numbers people write out, without "of".
var counts = map[string]float64{"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "ten": 10, "fifteen": 15, "twenty": 20, "half an": 0.5, "half": 0.5, "a half": 0.5, "half a": 0.5,
	"a quarter an": 0.25, "quarter an": 0.25, "three quarters an": 0.75, "a couple": 2, "one and a half": 1.5}

// ago reads "half an hour ago", "20 min ago", "2 days ago"; of days only the
// day is known.
func ago(s string, now time.Time) (t time.Time, daily, ok bool) {
	m := agoText().FindStringSubmatch(strings.Replace(s, "an hour and a half", "1.5 hours", 1))
	if m == nil {
		return t, false, false
	}
	n, known := counts[m[1]]
	if !known {
		var err error
		if n, err = strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64); err != nil || n < 0 || n > 10000 {
			return t, false, false
		}
	}
	switch m[2][0] {
	case 'd':
		return now.AddDate(0, 0, -int(n)), true, n == float64(int(n))
	case 'w':
		return now.AddDate(0, 0, -7*int(n)), true, n == float64(int(n))
	case 'h':
		n *= 60
	}
	return now.Add(-time.Duration(n * float64(time.Minute))), false, true
}

// day is a day that was named.
type day struct {
	time.Time
	relative bool // by a word, not by a date
	weekly   bool // by a weekday, so that it may be the one before
}

// dayOf reads "yesterday", "Mon", "last Monday", "27 Apr", "23.11.2025", "Mon 27
// Apr"; nothing is today. ok is false where it is no day.
func dayOf(s string, now time.Time) (d day, ok bool, err error) {
	switch s {
	case "", "today", "this", "heute":
		return day{Time: now, relative: true}, true, nil
	case "yesterday", "last", "gestern":
		return day{Time: now.AddDate(0, 0, -1), relative: true}, true, nil
	}
	if t, daily, ok := ago(s, now); ok && daily {
		return day{Time: t, relative: true}, true, nil
	}
	first, rest, _ := strings.Cut(s, " ")
	last := first == "last"
	if last {
		first, rest, _ = strings.Cut(rest, " ")
	}
	for i := range 8 {
		t := now.AddDate(0, 0, -i)
		name := strings.ToLower(t.Weekday().String())
		switch {
		case last && i == 0 || !slices.Contains([]string{name, name[:3], name[:3] + "."}, first):
		case rest == "":
			return day{t, true, !last}, true, nil
		case !last:
			return dayOf(rest, now) // "Mon 27 Apr"
		}
	}
	if m := strokeDate().FindStringSubmatch(s); m != nil {
		if len(m[3]) == 2 {
			m[3] = "20" + m[3]
		}
		a, _ := strconv.Atoi(m[1])
		b, _ := strconv.Atoi(m[2])
		switch {
		case a <= 12 && b <= 12 && a != b:
			return d, false, refuse.Unclearly("day-or-month", "%q could be %s-%02d-%02d or %s-%02d-%02d", s, m[3], b, a, m[3], a, b)
		case a <= 12:
			a, b = b, a
		}
		s = strconv.Itoa(a) + "." + strconv.Itoa(b) + "." + m[3]
	}
	for i, text := range []string{s, s + " " + strconv.Itoa(now.Year())} { // the year may be left out
		t, err := time.ParseInLocation(time.DateOnly, cmp.Or(edtf.Spoken(text, now, nil), text), now.Location())
		if err != nil {
			continue
		}
		if i > 0 && t.After(now) {
			t = t.AddDate(-1, 0, 0) // the last one there was
		}
		return day{Time: t}, true, nil
	}
	return d, false, nil
}
