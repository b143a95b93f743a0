package edtf

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"time"
)

type kind int

const (
	none    kind = iota // an open or unknown end of an interval
	year                // 1985, -1985, Y170000002, 201X, 20XX
	season              // 2001-21
	month               // 1985-04, 2004-XX
	day                 // 1985-04-12, 1985-04-XX, 1985-XX-XX
	instant             // 1985-04-12T23:20:30+04:30
)

// point is one date: the whole expression, or one end of an interval.
type point struct {
	kind       kind
	year       int  // the first year if digits are unspecified
	years      int  // how many years it spans: 1, 10 (201X) or 100 (20XX)
	month, day int  // 0: unspecified; month is 21 to 24 for a season
	qualifier  byte // '?', '~', '%' or 0
	open       bool // for none: ".." (open) and not "" (unknown)
	at         time.Time
}

// expr is a parsed expression; from and to are the same unless it is an interval.
type expr struct {
	from, to point
	interval bool
}

// A year has four digits, or five to maxLongDigits after a Y.
const maxLongDigits = 9

func parse(s string) (expr, error) {
	if s == "" {
		return expr{}, errors.New("it is empty")
	}
	if strings.ContainsAny(s, "[]{}") {
		return expr{}, fmt.Errorf("sets in brackets are %w", ErrLevel2)
	}
	left, right, interval := strings.Cut(s, "/")
	if !interval {
		p, err := parsePoint(s)
		return expr{from: p, to: p}, err
	}
	from, err := parseEnd(left)
	if err != nil {
		return expr{}, err
	}
	to, err := parseEnd(right)
	if err != nil {
		return expr{}, err
	}
	if from.kind == none && to.kind == none {
		return expr{}, errors.New("an interval needs a date at one end")
	}
	if from.kind != none && to.kind != none {
		first, _ := from.bounds()
		if _, last := to.bounds(); last.Before(first) {
			return expr{}, errors.New("the interval ends before it begins")
		}
	}
	return expr{from, to, true}, nil
}

// parseEnd reads one end of an interval, which may be open or unknown.
func parseEnd(s string) (point, error) {
	if s == "" || s == ".." {
		return point{open: s == ".."}, nil
	}
	p, err := parsePoint(s)
	if err != nil {
		return point{}, err
	}
	if p.kind == instant {
		return point{}, errors.New("an interval runs between dates, without times of day")
	}
	if p.unspecified() {
		return point{}, fmt.Errorf("unspecified digits within an interval are %w", ErrLevel2)
	}
	return p, nil
}

func parsePoint(s string) (point, error) {
	if strings.Contains(s, "T") {
		return parseInstant(s)
	}
	body, q := s, byte(0)
	if s != "" && strings.IndexByte("?~%", s[len(s)-1]) >= 0 {
		body, q = s[:len(s)-1], s[len(s)-1]
	}
	if strings.ContainsAny(body, "?~%") {
		if strings.ContainsAny(strings.TrimRight(body, "?~%"), "?~%") || strings.TrimLeft(body, "?~%") != body {
			return point{}, fmt.Errorf("marks on single parts are %w", ErrLevel2)
		}
		return point{}, errors.New("only one of ?, ~ and % may stand at the end")
	}
	p, err := parseDate(body)
	p.qualifier = q
	return p, err
}

// parseDate reads a year, month, season or day without qualifier.
func parseDate(s string) (point, error) {
	if long, ok := strings.CutPrefix(s, "Y"); ok {
		return parseLongYear(long)
	}
	sign, rest := 1, s
	if r, ok := strings.CutPrefix(s, "-"); ok {
		sign, rest = -1, r
	}
	parts := strings.Split(rest, "-")
	if len(parts) > 3 {
		return point{}, errors.New("it has too many parts, expected year-month-day")
	}
	p, err := parseYear(parts[0], sign)
	if err != nil || len(parts) == 1 {
		return p, err
	}
	if p.years > 1 {
		return point{}, fmt.Errorf("a month or day after an unspecified year is %w", ErrLevel2)
	}
	if p.month, err = parsePart(parts[1], "month"); err != nil {
		return point{}, err
	}
	switch {
	case p.month >= 25 && p.month <= 41:
		return point{}, fmt.Errorf("season %d is %w", p.month, ErrLevel2)
	case len(parts) == 2 && p.month >= 21 && p.month <= 24:
		p.kind = season
		return p, nil
	case p.month > 12:
		return point{}, fmt.Errorf("there is no month %d", p.month)
	case len(parts) == 2:
		p.kind = month
		return p, nil
	}
	p.kind = day
	if p.day, err = parsePart(parts[2], "day"); err != nil {
		return point{}, err
	}
	switch {
	case p.month == 0 && p.day != 0:
		return point{}, fmt.Errorf("a day in an unspecified month is %w", ErrLevel2)
	case p.day > 0 && p.day > daysIn(p.year, p.month):
		return point{}, fmt.Errorf("there is no day %d in that month", p.day)
	}
	return p, nil
}

// parseYear reads four digits, of which the last one or two may be X.
func parseYear(s string, sign int) (point, error) {
	p := point{kind: year, years: 1}
	if head, tail, found := strings.Cut(s, "S"); found && digits(head) && digits(tail) {
		return point{}, fmt.Errorf("significant digits are %w", ErrLevel2)
	}
	if len(s) != 4 {
		return point{}, errors.New("a year has four digits (five or more after a Y)")
	}
	known := strings.TrimRight(s, "X")
	switch 4 - len(known) {
	case 1:
		p.years = 10
	case 2:
		p.years = 100
	case 3, 4:
		return point{}, fmt.Errorf("more than two unspecified digits of a year are %w", ErrLevel2)
	}
	if !digits(known) {
		if digits(strings.ReplaceAll(s, "X", "0")) {
			return point{}, fmt.Errorf("an unspecified digit before a known one is %w", ErrLevel2)
		}
		return point{}, errors.New("a year has four digits (five or more after a Y)")
	}
	n, _ := strconv.Atoi(known)
	p.year = n * p.years
	if sign < 0 {
		if p.year == 0 {
			return point{}, errors.New("there is no year minus zero")
		}
		p.year = -p.year - (p.years - 1)
	}
	return p, nil
}

// parseLongYear reads what follows the Y of a year beyond four digits.
func parseLongYear(s string) (point, error) {
	num := strings.TrimPrefix(s, "-")
	if base, _, found := cutAny(num, "ES"); found && digits(base) {
		return point{}, fmt.Errorf("exponents and significant digits are %w", ErrLevel2)
	}
	switch {
	case !digits(num):
		return point{}, errors.New("after Y only a whole number may follow")
	case len(num) < 5 || num[0] == '0':
		return point{}, errors.New("the letter Y is only for years of more than four digits")
	case len(num) > maxLongDigits:
		return point{}, fmt.Errorf("years of more than %d digits are not kept here", maxLongDigits)
	}
	n, _ := strconv.Atoi(num)
	if len(num) != len(s) {
		n = -n
	}
	return point{kind: year, year: n, years: 1}, nil
}

// parsePart reads a two-digit month or day; XX gives 0.
func parsePart(s, name string) (int, error) {
	if s == "XX" {
		return 0, nil
	}
	if len(s) == 2 && digits(strings.ReplaceAll(s, "X", "0")) && strings.Contains(s, "X") {
		return 0, fmt.Errorf("a %s with one unspecified digit is %w", name, ErrLevel2)
	}
	if len(s) != 2 || !digits(s) {
		return 0, fmt.Errorf("a %s has two digits", name)
	}
	n, _ := strconv.Atoi(s)
	if n == 0 {
		return 0, fmt.Errorf("there is no %s 00", name)
	}
	return n, nil
}

var errInstant = errors.New("a date with time is written 1985-04-12T23:20:30, with Z, +02 or +02:00 after it if the offset is known")

// parseInstant reads a complete date-time: seconds always, an offset of Z,
// ±hh or ±hh:mm, or none for a local time. The lengths are checked first
// because time.Parse would also take fractions of a second.
func parseInstant(s string) (point, error) {
	const local = "2006-01-02T15:04:05"
	if len(s) < len(local) {
		return point{}, errInstant
	}
	layout := local
	switch offset := s[len(local):]; {
	case offset == "":
	case offset == "Z":
		layout += "Z07:00"
	case offset == "-00" || offset == "-00:00":
		return point{}, errors.New("an offset of zero is written Z, +00 or +00:00")
	case len(offset) == len("+02") && offset[0] != '.':
		layout += "-07"
	case len(offset) == len("+02:00") && offset[0] != '.':
		layout += "-07:00"
	default:
		return point{}, errInstant
	}
	t, err := time.Parse(layout, s)
	if err != nil {
		return point{}, errInstant
	}
	if _, off := t.Zone(); off <= -24*3600 || off >= 24*3600 {
		return point{}, errInstant
	}
	y, m, d := t.Date()
	return point{kind: instant, year: y, years: 1, month: int(m), day: d, at: t}, nil
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

func cutAny(s, chars string) (before, after string, found bool) {
	if i := strings.IndexAny(s, chars); i >= 0 {
		return s[:i], s[i+1:], true
	}
	return s, "", false
}

func daysIn(year, month int) int {
	return time.Date(year, time.Month(month)+1, 0, 0, 0, 0, 0, time.UTC).Day()
}
