package check

import (
	"time"

	"backleaf/record"
)

// term is a waiting time in calendar months and days: six months after 31
// August is the end of February.
type term struct{ months, days int }

// after is when a term that begins at t is over.
func (x term) after(t time.Time) time.Time {
	first := time.Date(t.Year(), t.Month()+time.Month(x.months), 1, t.Hour(), t.Minute(), t.Second(), t.Nanosecond(), t.Location())
	last := first.AddDate(0, 1, -1).Day()
	return first.AddDate(0, 0, min(t.Day(), last)-1+x.days)
}

func (x term) figure() record.Figure {
	if x.months > 0 {
		return figure(float64(x.months), "months")
	}
	return figure(float64(x.days), "d")
}

// passed answers whether a term lay between two recorded times.
func (x term) passed(from, to record.When) record.Answer {
	f1, ok1 := from.Earliest()
	f2, ok2 := from.Latest()
	t1, ok3 := to.Earliest()
	t2, ok4 := to.Latest()
	switch {
	case ok2 && ok3 && !t1.Before(x.after(f2)):
		return record.Yes
	case ok1 && ok4 && t2.Before(x.after(f1)):
		return record.No
	}
	return record.Unknown
}

// wait is how long a layer of some binders dries before the next: least, good
// and best. Shorter than least is a warning, shorter than good advice.
type wait struct {
	binders           []record.Binder
	least, good, best term
}

// groundWaits are for a ground before oil paint.
var groundWaits = []wait{
	{[]record.Binder{record.Acrylic}, term{0, 3}, term{0, 14}, term{0, 30}},
	{[]record.Binder{record.DryingOil, record.Alkyd}, term{}, term{6, 0}, term{12, 0}},
}

// varnishWaits are for a paint before varnish.
var varnishWaits = []wait{
	{[]record.Binder{record.DryingOil, record.Alkyd}, term{1, 0}, term{6, 0}, term{12, 0}},
	{[]record.Binder{record.Acrylic, record.PVA}, term{}, term{0, 7}, term{0, 14}},
}

// waitFor returns the wait for a layer; unknown where its binder is, no where
// the table does not speak of it.
func (s *subject) waitFor(f Film, table []wait) (wait, record.Answer) {
	listed := record.Answer(record.No)
	for _, w := range table {
		switch a := s.has(f, w.binders...); a {
		case record.Yes:
			return w, a
		case record.Unknown:
			listed = a
		}
	}
	return wait{}, listed
}

// dried judges whether the lower layer of a pair had dried before the upper.
func (s *subject) dried(p pair, applies record.Answer, table []wait) verdict {
	w, known := s.waitFor(p.below, table)
	good := record.Answer(record.Unknown)
	if known == record.Yes {
		good = w.good.passed(p.below.Layer.At, p.above.Layer.At)
	}
	o := outcome(all(applies, known), good)
	values := p.names()
	switch waited, _ := between(p.below.Layer.At, p.above.Layer.At); o {
	case Holds:
		values = append(values, record.With("time", lasting(waited.least)))
	case FallsShort:
		values = append(values, record.With("time", lasting(waited.most)), record.With("better", w.good.figure()))
	}
	v := say(o, nil, "dried"+suffix[o], values...)
	if o == FallsShort && w.least.passed(p.below.Layer.At, p.above.Layer.At) == record.No {
		v.severity = Warning
	}
	return v
}
