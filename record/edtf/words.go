package edtf

import (
	"strconv"
	"strings"
	"time"
)

// A Lexicon says dates in one language. Each text may hold placeholders in
// braces: {date}, {from}, {to}, {year}, {month}, {day}, {time}.
type Lexicon struct {
	Months  [12]string
	Seasons [4]string // spring, summer, autumn, winter

	Day, Month, Season string // "{day} {month} {year}", "{month} {year}", "{season} {year}"
	At                 string // "{date}, {time}"
	Decade             string // "{year}s"
	TheDecade          string // a decade after "about" or "possibly": "the {date}"
	Years              string // "between {from} and {to}"
	BC, AD             string // "{year} BC", "AD {year}"

	Possibly, About, PossiblyAbout string // "about {date}"
	NoMonth, NoMonthDay, NoDay     string // "{date}, month not stated"

	Between                  string // "between {from} and {to}"
	OnOrBefore, InOrBefore   string // "on or before {date}"; In for what is longer than a day
	OnOrAfter, InOrAfter     string
	BeginUnknown, EndUnknown string // "until {date}, beginning not known"
	NotRecorded              string
}

// English is the Lexicon of [Date.Words].
var English = Lexicon{
	Months:  [12]string{"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"},
	Seasons: [4]string{"spring", "summer", "autumn", "winter"},
	Day:     "{day} {month} {year}", Month: "{month} {year}", Season: "{season} {year}", At: "{date}, {time}",
	Decade: "{year}s", TheDecade: "the {date}", Years: "between {from} and {to}", BC: "{year} BC", AD: "AD {year}",
	Possibly: "possibly {date}", About: "about {date}", PossiblyAbout: "possibly about {date}",
	NoMonth: "{date}, month not stated", NoMonthDay: "{date}, month and day not stated", NoDay: "{date}, day not stated",
	Between:    "between {from} and {to}",
	OnOrBefore: "on or before {date}", InOrBefore: "in or before {date}",
	OnOrAfter: "on or after {date}", InOrAfter: "in or after {date}",
	BeginUnknown: "until {date}, beginning not known", EndUnknown: "from {date}, end not known",
	NotRecorded: "not recorded",
}

// Words gives d in English for print: "12 April 1985", "about 1998",
// "spring 2019", "1990s", "between 1964 and 2008", "on or before 12 April
// 1985". The time of day of a timestamp is the local one, as it was written.
// The zero Date is "not recorded".
func (d Date) Words() string { return d.In(English) }

// In is [Date.Words] in another language.
func (d Date) In(l Lexicon) string {
	if d.IsZero() {
		return l.NotRecorded
	}
	e := d.expr()
	if !e.interval {
		return l.point(e.from)
	}
	switch {
	case e.from.kind == none && e.from.open:
		return fill(e.to.either(l.OnOrBefore, l.InOrBefore), "date", l.point(e.to))
	case e.from.kind == none:
		return fill(l.BeginUnknown, "date", l.point(e.to))
	case e.to.kind == none && e.to.open:
		return fill(e.from.either(l.OnOrAfter, l.InOrAfter), "date", l.point(e.from))
	case e.to.kind == none:
		return fill(l.EndUnknown, "date", l.point(e.from))
	}
	return fill(l.Between, "from", l.point(e.from), "to", l.point(e.to))
}

// fill puts values into the places of a text.
func fill(text string, pairs ...string) string {
	for i := range pairs {
		if i%2 == 0 {
			pairs[i] = "{" + pairs[i] + "}"
		}
	}
	return strings.NewReplacer(pairs...).Replace(text)
}

// either chooses between the words for a day and for anything longer.
func (p point) either(aDay, longer string) string {
	if p.kind == day {
		return aDay
	}
	return longer
}

func (l Lexicon) point(p point) string {
	s := l.plain(p)
	if p.years == 10 && p.qualifier != 0 && p.year%100 != 0 && p.year > 0 {
		s = fill(l.TheDecade, "date", s)
	}
	switch p.qualifier {
	case '?':
		return fill(l.Possibly, "date", s)
	case '~':
		return fill(l.About, "date", s)
	case '%':
		return fill(l.PossiblyAbout, "date", s)
	}
	return s
}

func (l Lexicon) plain(p point) string {
	y := l.year(p.year)
	switch p.kind {
	case season:
		return fill(l.Season, "season", l.Seasons[p.month-21], "year", y)
	case month:
		if p.month == 0 {
			return fill(l.NoMonth, "date", y)
		}
		return fill(l.Month, "month", l.Months[p.month-1], "year", y)
	case day:
		switch {
		case p.month == 0:
			return fill(l.NoMonthDay, "date", y)
		case p.day == 0:
			return fill(l.NoDay, "date", fill(l.Month, "month", l.Months[p.month-1], "year", y))
		}
		return l.OfDay(p.year, time.Month(p.month), p.day)
	case instant:
		clock := "15:04"
		if p.at.Second() != 0 {
			clock = "15:04:05"
		}
		return fill(l.At, "date", l.OfDay(p.year, time.Month(p.month), p.day), "time", p.at.Format(clock))
	}
	switch {
	case p.years == 1:
		return y
	case p.years == 10 && p.year > 0 && p.year%100 != 0:
		return fill(l.Decade, "year", y)
	}
	// "2000s" could be a decade or a century, and neither fits before year 1.
	return fill(l.Years, "from", y, "to", l.year(p.year+p.years-1))
}

// OfDay says a calendar day.
func (l Lexicon) OfDay(year int, month time.Month, day int) string {
	return fill(l.Day, "day", strconv.Itoa(day), "month", l.Months[month-1], "year", l.year(year))
}

// year counts as people do: the year before 1 is 1 BC, which EDTF and ISO 8601
// write 0000.
func (l Lexicon) year(y int) string {
	switch {
	case y <= 0:
		return fill(l.BC, "year", strconv.Itoa(1-y))
	case y < 1000:
		return fill(l.AD, "year", strconv.Itoa(y))
	}
	return strconv.Itoa(y)
}
