package edtf

import (
	"fmt"
	"time"
)

// Words gives d in English for print: "12 April 1985", "about 1998",
// "spring 2019", "1990s", "between 1964 and 2008", "on or before 12 April
// 1985". The time of day of a timestamp is the local one, as it was written.
// The zero Date is "not recorded".
func (d Date) Words() string {
	if d.IsZero() {
		return "not recorded"
	}
	e := d.expr()
	if !e.interval {
		return e.from.words()
	}
	switch {
	case e.from.kind == none && e.from.open:
		return e.to.preposition() + " or before " + e.to.words()
	case e.from.kind == none:
		return "until " + e.to.words() + ", beginning not known"
	case e.to.kind == none && e.to.open:
		return e.from.preposition() + " or after " + e.from.words()
	case e.to.kind == none:
		return "from " + e.from.words() + ", end not known"
	}
	return "between " + e.from.words() + " and " + e.to.words()
}

func (p point) preposition() string {
	if p.kind == day {
		return "on"
	}
	return "in"
}

func (p point) words() string {
	s := p.plainWords()
	if p.years == 10 && p.qualifier != 0 && p.year%100 != 0 && p.year > 0 {
		s = "the " + s
	}
	switch p.qualifier {
	case '?':
		return "possibly " + s
	case '~':
		return "about " + s
	case '%':
		return "possibly about " + s
	}
	return s
}

func (p point) plainWords() string {
	y := yearWords(p.year)
	name := time.Month(p.month).String()
	switch p.kind {
	case season:
		return [...]string{"spring ", "summer ", "autumn ", "winter "}[p.month-21] + y
	case month:
		if p.month == 0 {
			return y + ", month not stated"
		}
		return name + " " + y
	case day:
		switch {
		case p.month == 0:
			return y + ", month and day not stated"
		case p.day == 0:
			return name + " " + y + ", day not stated"
		}
		return fmt.Sprintf("%d %s %s", p.day, name, y)
	case instant:
		clock := "15:04"
		if p.at.Second() != 0 {
			clock = "15:04:05"
		}
		return fmt.Sprintf("%d %s %s, %s", p.day, name, y, p.at.Format(clock))
	}
	switch {
	case p.years == 1:
		return y
	case p.years == 10 && p.year > 0 && p.year%100 != 0:
		return y + "s"
	}
	// "2000s" could be a decade or a century, and neither fits before year 1.
	return "between " + y + " and " + yearWords(p.year+p.years-1)
}

// yearWords counts as people do: the year before 1 is 1 BC, which EDTF and
// ISO 8601 write 0000.
func yearWords(y int) string {
	switch {
	case y <= 0:
		return fmt.Sprintf("%d BC", 1-y)
	case y < 1000:
		return fmt.Sprintf("AD %d", y)
	}
	return fmt.Sprint(y)
}
