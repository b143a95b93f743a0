package typed

import (
	"regexp"
	"strconv"
	"strings"
	"time"

	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
)

var (
	clockText  = pattern.Of(`(?i)^([01]?[0-9]|2[0-3])[:.h]([0-5][0-9])( ?[ap]\.?m\.?)?$`)
	fullHour   = pattern.Of(`(?i)^([01]?[0-9]|2[0-3])()() ?(?:h|uhr)$`)
	hourText   = pattern.Of(`(?i)^(1[0-2]|0?[1-9])()( ?[ap]\.?m\.?)$`)
	agoText    = pattern.Of(`(?i)^(.+?) ?(minutes?|min|hours?|h|days?|d|weeks?) ago$`)
	pointDate  = pattern.Of(`^([0-9]{1,2})\.([0-9]{1,2})\.((?:20)?[0-9]{2}|1[0-9]{3})$`)
	strokeDate = pattern.Of(`^([0-9]{1,2})/([0-9]{1,2})/((?:20)?[0-9]{2}|1[0-9]{3})$`)
)

// hour reads "14:05", "14.05", "2pm", "2:30 pm".
func hour(s string) (h, min int, ok bool) {
	if strings.EqualFold(s, "noon") || strings.EqualFold(s, "midday") {
		s = "12:00"
	}
	m := clockText().FindStringSubmatch(s)
	for _, other := range []*regexp.Regexp{hourText(), fullHour()} {
		if m == nil {
			m = other.FindStringSubmatch(s)
		}
	}
	if m == nil {
		return 0, 0, false
	}
	h, _ = strconv.Atoi(m[1])
	min, _ = strconv.Atoi(m[2])
	if half := strings.ToLower(strings.TrimSpace(m[3])); half != "" {
		if h < 1 || h > 12 {
			return 0, 0, false
		}
		h %= 12
		if half[0] == 'p' {
			h += 12
		}
	}
	return h, min, true
}

// counts are the numbers people write out.
var counts = map[string]float64{"a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "ten": 10, "twenty": 20, "half an": 0.5, "half a": 0.5, "a quarter of an": 0.25, "quarter of an": 0.25, "three quarters of an": 0.75, "a couple of": 2, "one and a half": 1.5}

// ago reads "half an hour ago", "20 min ago", "2 days ago"; of days only the
// day is known.
func ago(s string, now time.Time) (t time.Time, daily, ok bool) {
	m := agoText().FindStringSubmatch(s)
	if m == nil {
		return t, false, false
	}
	n, known := counts[strings.ToLower(m[1])]
	if !known {
		var err error
		if n, err = strconv.ParseFloat(strings.ReplaceAll(m[1], ",", "."), 64); err != nil || n < 0 || n > 10000 {
			return t, false, false
		}
	}
	switch m[2][0] | 0x20 {
	case 'd':
		return now.AddDate(0, 0, -int(n)), true, n == float64(int(n))
	case 'w':
		return now.AddDate(0, 0, -7*int(n)), true, n == float64(int(n))
	case 'h':
		n *= 60
	}
	return now.Add(-time.Duration(n * float64(time.Minute))), false, true
}

// dayOf parts a day from the hour after it. A day is zero where none is named;
// then all of it is left for the hour.
func dayOf(s string, now time.Time) (day time.Time, clock string, err error) {
	first, rest, _ := strings.Cut(s, " ")
	word := strings.ToLower(strings.TrimSuffix(first, ","))
	switch word {
	case "today":
		return now, rest, nil
	case "yesterday":
		return now.AddDate(0, 0, -1), rest, nil
	case "last":
		for i := 1; i <= 7; i++ {
			d := now.AddDate(0, 0, -i)
			name, clock, _ := strings.Cut(rest, " ")
			if strings.EqualFold(name, d.Weekday().String()) {
				return d, clock, nil
			}
		}
	}
	for i := range 7 {
		d := now.AddDate(0, 0, -i)
		name := strings.ToLower(d.Weekday().String())
		if word != name && word != name[:3] {
			continue
		}
		if h, min, ok := hour(rest); i == 0 && (!ok || time.Date(d.Year(), d.Month(), d.Day(), h, min, 0, 0, now.Location()).After(now.Add(time.Minute))) && rest != "" {
			d = d.AddDate(0, 0, -7) // later today is not meant
		}
		if _, _, ok := hour(rest); ok || rest == "" {
			return d, rest, nil
		}
		return dayOf(rest, now) // "Mon 27 Apr 14:00"
	}
	if m := strokeDate().FindStringSubmatch(first); m != nil {
		m[3] = year(m[3])
		a, _ := strconv.Atoi(m[1])
		b, _ := strconv.Atoi(m[2])
		switch {
		case a <= 12 && b <= 12 && a != b:
			return day, "", refuse.Unclearly("day-or-month", "%q could be %s-%02d-%02d or %s-%02d-%02d", first, m[3], b, a, m[3], a, b)
		case a > 12 || a == b:
			first = m[1] + "." + m[2] + "." + m[3]
		default:
			first = m[2] + "." + m[1] + "." + m[3]
		}
	}
	if m := pointDate().FindStringSubmatch(first); m != nil {
		first = m[1] + "." + m[2] + "." + year(m[3])
		if d, err := time.ParseInLocation("2.1.2006", first, now.Location()); err == nil {
			return d, rest, nil
		}
		return day, s, nil
	}
	if date, clock, ok := strings.Cut(first, "T"); ok && rest == "" {
		first, rest = date, clock
	}
	if d, err := time.ParseInLocation(time.DateOnly, first, now.Location()); err == nil && rest != "" {
		if _, _, ok := hour(rest); ok {
			return d, rest, nil
		}
	}
	return namedDay(s, now)
}

// year gives two figures of a year their century.
func year(figures string) string {
	if len(figures) == 2 {
		return "20" + figures
	}
	return figures
}

// namedDay reads a day with the name of its month, as papers print it.
func namedDay(s string, now time.Time) (day time.Time, clock string, err error) {
	words := strings.Fields(strings.ReplaceAll(s, ",", ""))
	for _, n := range []int{3, 2} {
		if len(words) < n || len(words) > n+2 {
			continue
		}
		text := strings.Join(words[:n], " ")
		for _, layout := range []string{"2 January 2006", "2 Jan 2006", "January 2 2006", "Jan 2 2006", "2 January", "2 Jan", "January 2", "Jan 2"} {
			d, err := time.ParseInLocation(layout, text, now.Location())
			if err != nil {
				continue
			}
			if d.Year() == 0 { // the last one there was
				d = time.Date(now.Year(), d.Month(), d.Day(), 0, 0, 0, 0, now.Location())
				if d.After(now) {
					d = d.AddDate(-1, 0, 0)
				}
			}
			return d, strings.Join(words[n:], " "), nil
		}
	}
	return day, s, nil
}
