package edtf

import (
	"strconv"
	"strings"
	"time"
)

// A Lexicon says dates in one language.
type Lexicon struct {
	Months  map[string][12]string // by set, "" the ordinary one
	Seasons map[string][4]string  // spring, summer, autumn, winter; by set
	Roles   map[string]Phrases
	First   string // the first day of a month, where its figure is not enough ("1ᵉʳ")
	Clock   string // time of day as a layout of package time: "15:04"
	Seconds string // the same to the second
}

// Phrases are the texts of one role by what is said; a text that a role does
// not have is that of role "". A role is what a sentence wants of a date: ""
// alone, or one that the language names itself, such as "on" ("on 2 May", "in
// May", "in the 1990s").
//
// Places stand in braces: {date}, {from}, {to}, {year}, {month}, {day},
// {season}, {time}. With a name after a colon, {month:of} is a name of that
// set, {date:on} the date in that role.
type Phrases map[string]string

// English is the Lexicon of [Date.Words].
var English = Lexicon{
	Months:  map[string][12]string{"": {"January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"}},
	Seasons: map[string][4]string{"": {"spring", "summer", "autumn", "winter"}},
	Clock:   "15:04", Seconds: "15:04:05",
	Roles: map[string]Phrases{
		"": {
			"day": "{day} {month} {year}", "month": "{month} {year}", "season": "{season} {year}", "year": "{year}", "decade": "{year}s",
			"years": "between {from} and {to}", "time": "{date}, {time}", "bc": "{year} BC", "ad": "AD {year}",
			"possibly": "possibly {date:the}", "about": "about {date:the}", "possibly about": "possibly about {date:the}",
			"no month": "{date}, month not stated", "no month or day": "{date}, month and day not stated", "no day": "{date}, day not stated",
			"between":          "between {from} and {to}",
			"on or before day": "on or before {date}", "in or before": "in or before {date}", "on or after day": "on or after {date}", "in or after": "in or after {date}",
			"begin unknown": "until {date}, beginning not known", "end unknown": "from {date}, end not known",
			"none": "not recorded",
		},
		"the": {"decade": "the {year}s"},
		"on": {
			"day": "on {day} {month} {year}", "month": "in {month} {year}", "season": "in {season} {year}", "year": "in {year}", "decade": "in the {year}s",
			"time": "{date:on}, {time}", "possibly": "possibly {date:on}",
			"no month": "{date:on}, month not stated", "no month or day": "{date:on}, month and day not stated", "no day": "{date:on}, day not stated",
		},
		"short": { // spans of days in one month, or in one year
			"days of month": "{from}–{to} {month} {year}", "days of year": "{from} {month} – {to} {toMonth} {year}",
		},
	},
}

// Words gives d in English for print: "12 April 1985", "about 1998",
// "spring 2019", "1990s", "between 1964 and 2008", "on or before 12 April
// 1985". The time of day of a timestamp is the local one, as it was written.
// The zero Date is "not recorded".
func (d Date) Words() string { return d.In(English, "") }

// In is [Date.Words] in another language, in a role.
func (d Date) In(l Lexicon, role string) string {
	s := speaker{l, role}
	if d.IsZero() {
		return s.text("none")
	}
	e := d.expr()
	if !e.interval {
		return s.point(e.from)
	}
	ends := values{"from": s.in("").point(e.from), "to": s.in("").point(e.to)}
	begin, end := values{"date": ends["from"]}, values{"date": ends["to"]}
	switch {
	case e.from.kind == none && !e.from.open:
		return s.fill("begin unknown", end)
	case e.to.kind == none && !e.to.open:
		return s.fill("end unknown", begin)
	case e.from.kind == none && e.to.kind == day:
		return s.fill("on or before day", end)
	case e.from.kind == none:
		return s.fill("in or before", end)
	case e.to.kind == none && e.from.kind == day:
		return s.fill("on or after day", begin)
	case e.to.kind == none:
		return s.fill("in or after", begin)
	}
	if short := s.days(e.from, e.to); short != "" {
		return short
	}
	return s.fill("between", ends)
}

// Day is d without its time of day.
func (d Date) Day() Date {
	if e := d.expr(); !e.interval && e.from.kind == instant {
		return Date{e.from.at.Format(time.DateOnly)}
	}
	return d
}

// Kind says what d names, as far as words depend on it: "day", "month",
// "season", "year", "decade", "years" for a longer run of years, "span" for an
// interval, "open" for one without beginning or end, "none" for the zero Date.
func (d Date) Kind() string {
	switch e := d.expr(); {
	case d.IsZero():
		return "none"
	case !e.interval:
		return e.from.name()
	case e.from.kind == none || e.to.kind == none:
		return "open"
	}
	return "span"
}

// name is the kind of a point in words: what is not stated of it does not
// count.
func (p point) name() string {
	switch {
	case p.kind == instant, p.kind == day && p.day != 0:
		return "day"
	case p.kind == season:
		return "season"
	case p.month != 0:
		return "month"
	case p.years == 1:
		return "year"
	case p.years == 10 && p.year > 0 && p.year%100 != 0:
		return "decade"
	}
	// "2000s" could be a decade or a century, and neither fits before year 1.
	return "years"
}

// A speaker says dates in one language and role.
type speaker struct {
	l    Lexicon
	role string
}

// values are what stands in the places of a phrase.
type values map[string]string

func (s speaker) in(role string) speaker { return speaker{s.l, role} }

// text returns a phrase of the role, or that of role "".
func (s speaker) text(phrase string) string {
	if t, ok := s.l.Roles[s.role][phrase]; ok {
		return t
	}
	return s.l.Roles[""][phrase]
}

func (s speaker) fill(phrase string, v values) string {
	return fill(s.text(phrase), func(name, _ string) string { return v[name] })
}

var qualifiers = map[byte]string{'?': "possibly", '~': "about", '%': "possibly about"}

func (s speaker) point(p point) string {
	phrase, qualified := qualifiers[p.qualifier]
	if !qualified {
		return s.stated(p)
	}
	return fill(s.text(phrase), func(_, role string) string { return s.in(role).stated(p) })
}

// stated says what of a point is stated, and what of it is not.
func (s speaker) stated(p point) string {
	phrase := ""
	switch {
	case p.kind == instant:
		phrase = "time"
	case p.kind == month && p.month == 0:
		phrase = "no month"
	case p.kind == day && p.month == 0:
		phrase = "no month or day"
	case p.kind == day && p.day == 0:
		phrase = "no day"
	default:
		return s.calendar(p)
	}
	return fill(s.text(phrase), func(name, role string) string {
		if name == "time" {
			return p.at.Format(s.clock(p))
		}
		return s.in(role).calendar(p)
	})
}

func (s speaker) clock(p point) string {
	if p.at.Second() != 0 {
		return s.l.Seconds
	}
	return s.l.Clock
}

// calendar says a day, month, season, year, decade or longer.
func (s speaker) calendar(p point) string {
	return fill(s.text(p.name()), func(name, set string) string {
		switch name {
		case "day":
			return s.day(p.day)
		case "month":
			return s.l.Months[set][p.month-1]
		case "season":
			return s.l.Seasons[set][p.month-21]
		case "to":
			return s.year(p.year + p.years - 1)
		}
		return s.year(p.year)
	})
}

// days says a span of days of one month or year in the short form of the role,
// if it has one.
func (s speaker) days(from, to point) string {
	if !from.exactDay() || !to.exactDay() || from.year != to.year {
		return ""
	}
	phrase := "days of year"
	if from.month == to.month {
		phrase = "days of month"
	}
	return fill(s.text(phrase), func(name, set string) string {
		switch name {
		case "from":
			return s.day(from.day)
		case "to":
			return s.day(to.day)
		case "month":
			return s.l.Months[set][from.month-1]
		case "toMonth":
			return s.l.Months[set][to.month-1]
		}
		return s.year(from.year)
	})
}

func (s speaker) day(d int) string {
	if d == 1 && s.l.First != "" {
		return s.l.First
	}
	return strconv.Itoa(d)
}

// year counts as people do: the year before 1 is 1 BC, which EDTF and ISO 8601
// write 0000.
func (s speaker) year(y int) string {
	switch {
	case y <= 0:
		return s.fill("bc", values{"year": strconv.Itoa(1 - y)})
	case y < 1000:
		return s.fill("ad", values{"year": strconv.Itoa(y)})
	}
	return strconv.Itoa(y)
}

// fill puts values into the places of a text.
func fill(text string, value func(name, form string) string) string {
	var b strings.Builder
	for {
		before, rest, _ := strings.Cut(text, "{")
		place, after, found := strings.Cut(rest, "}")
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, form, _ := strings.Cut(place, ":")
		b.WriteString(value(name, form))
		text = after
	}
}
