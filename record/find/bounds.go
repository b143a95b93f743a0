package find

import (
	"fmt"
	"strings"

	"backleaf/record"
)

// MadeBetween fits dates that may lie between two dates, both included: what is
// recorded overlaps with them.
func MadeBetween(from, to record.When) (func(made record.When) bool, error) {
	if !from.Known() || !to.Known() {
		return nil, fmt.Errorf("a date is unknown")
	}
	if to.Before(from) {
		return nil, fmt.Errorf("the later date stands first: %s, then %s", from, to)
	}
	first, bounded := from.Earliest()
	last, ends := to.Latest()
	return func(made record.When) bool {
		if !made.Known() {
			return false
		}
		if t, ok := made.Latest(); ok && bounded && t.Before(first) {
			return false
		}
		t, ok := made.Earliest()
		return !ok || !ends || !t.After(last)
	}, nil
}

// ParseBetween reads two dates as a person types them: "1998 2004",
// "1998..2004", one EDTF date or interval ("199X", "1998/2004", "2019-21").
func ParseBetween(s string) (from, to record.When, err error) {
	words := strings.Fields(s)
	if a, b, ok := strings.Cut(s, ".."); ok && len(words) == 1 && a != "" && b != "" && !strings.Contains(s, "/") {
		words = []string{a, b}
	}
	if len(words) == 3 && (words[1] == "and" || words[1] == "to") {
		words = []string{words[0], words[2]}
	}
	switch len(words) {
	case 1:
		words = append(words, words[0])
	case 2:
	default:
		return from, to, fmt.Errorf("%q: expected two dates, like \"1998 2004\" or \"2019-03 2019-06\"", s)
	}
	for i, into := range []*record.When{&from, &to} {
		if *into, err = record.ParseWhen(words[i]); err != nil {
			return from, to, fmt.Errorf("%q is no date: expected one like 1998, 1998-05, 199X (the nineties) or 2019-21 (spring)", words[i])
		}
	}
	return from, to, nil
}

// SizeFrom fits sizes at least as large as a size, whichever way up.
func SizeFrom(s record.Size) func(record.Size) bool {
	return sized(s, func(have, bound int64) bool { return have >= bound })
}

// SizeTo fits sizes at most as large as a size, whichever way up.
func SizeTo(s record.Size) func(record.Size) bool {
	return sized(s, func(have, bound int64) bool { return have <= bound })
}

func sized(bound record.Size, fits func(have, bound int64) bool) func(record.Size) bool {
	return func(size record.Size) bool {
		short, long, ok := sides(size)
		boundShort, boundLong, ok2 := sides(bound)
		if !ok || !ok2 || !fits(short, boundShort) || !fits(long, boundLong) {
			return false
		}
		if bound.Depth.IsZero() {
			return true
		}
		d, ok := size.Depth.Micrometers()
		b, ok2 := bound.Depth.Micrometers()
		return ok && ok2 && fits(d, b)
	}
}

func sides(s record.Size) (short, long int64, ok bool) {
	h, ok := s.Height.Micrometers()
	w, ok2 := s.Width.Micrometers()
	return min(h, w), max(h, w), ok && ok2
}
