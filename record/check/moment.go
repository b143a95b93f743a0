package check

import (
	"slices"
	"strconv"
	"time"

	"backleaf/record"
)

const day = 24 * time.Hour

// before answers whether one recorded time is earlier than another: yes or no
// only if every reading of the two agrees.
func before(a, b record.When) record.Answer {
	switch {
	case a.Before(b):
		return record.Yes
	case b.Before(a):
		return record.No
	}
	return record.Unknown
}

// last returns what may have happened last: those of which none was certainly
// later.
func last[B record.Body](all []record.Done[B]) []record.Done[B] {
	return slices.DeleteFunc(slices.Clone(all), func(a record.Done[B]) bool {
		return slices.ContainsFunc(all, func(b record.Done[B]) bool { return before(a.At, b.At) == record.Yes })
	})
}

// span is the least and the most time that can lie between two recorded times.
type span struct{ least, most time.Duration }

// between returns the time from one recorded time to another; false where one
// of them is open or not known.
func between(from, to record.When) (span, bool) {
	f1, ok1 := from.Earliest()
	f2, ok2 := from.Latest()
	t1, ok3 := to.Earliest()
	t2, ok4 := to.Latest()
	return span{t1.Sub(f2), t2.Sub(f1)}, ok1 && ok2 && ok3 && ok4
}

// atLeast answers whether the time is no shorter than d.
func (s span) atLeast(d time.Duration) record.Answer {
	switch {
	case s.least >= d:
		return record.Yes
	case s.most < d:
		return record.No
	}
	return record.Unknown
}

// lasting gives a reckoned span in round units: "20 min", "3 h", "2 d".
func lasting(d time.Duration) record.Figure {
	n, unit := int64(d/time.Minute), "min"
	switch {
	case d >= 60*day:
		n, unit = int64(d.Hours()/24/30.44), "months"
	case d >= 2*day:
		n, unit = int64(d/day), "d"
	case d >= 2*time.Hour:
		n, unit = int64(d/time.Hour), "h"
	}
	return figure(float64(max(n, 0)), unit)
}

// figure is a reckoned number with its unit, without needless zeros.
func figure(x float64, unit string) record.Figure {
	return record.Figure(strconv.FormatFloat(x, 'f', -1, 64) + " " + unit)
}
