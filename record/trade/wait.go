package trade

import (
	"sync"
	"time"

	"backleaf/record"
)

// Span is a time to wait: calendar months and days, or hours. From 31 August six
// months end on 28 or 29 February.
type Span struct{ Months, Days, Hours int }

// After returns the end of the span.
func (s Span) After(t time.Time) time.Time {
	end := t.AddDate(0, s.Months, 0)
	if want := (int(t.Month()) - 1 + s.Months) % 12; int(end.Month())-1 != want {
		end = end.AddDate(0, 0, -end.Day()) // the month is shorter: its last day
	}
	return end.AddDate(0, 0, s.Days).Add(time.Duration(s.Hours) * time.Hour)
}

// IsZero reports that nothing is said.
func (s Span) IsZero() bool { return s == Span{} }

// Wait is how long a lower layer should dry before an upper one: at the least,
// as is usual, and better. A zero span says nothing. Cold below 15 °C, damp
// above 65 % RH, darkness and thick layers lengthen all of them, and the test
// outranks the calendar: a thumb-nail on the thickest spot, and cotton with a
// drop of the solvent to come must lift no colour.
type Wait struct {
	Least, Usual, Better Span
	Rests                Standing
}

type waitRow struct {
	over, on             string
	thick                bool // the lower layer is thick, or holds slow colours
	least, usual, better Span
	from                 string
}

type waitOf struct {
	Wait
	thick bool
}

func hours(n int) Span  { return Span{Hours: n} }
func days(n int) Span   { return Span{Days: n} }
func months(n int) Span { return Span{Months: n} }

// waits: where a source gives a range its lower end stands. The first row that
// fits decides.
var waits = []waitRow{
	{"AG", "AM", false, Span{}, hours(12), Span{}, "maker-plywood"},
	{"AG", "AG", false, hours(1), hours(12), Span{}, "maker-plywood"},
	{"OG OP AK", "AG", false, days(3), days(14), days(30), "MITRA-351"},
	{"OG OP AK", "AP", true, days(3), days(14), days(30), "practice"},
	{"OP AK", "AP", false, days(3), days(14), Span{}, "MITRA-54 practice"},
	{"OG OP AK", "AM", false, days(3), Span{}, Span{}, "oil-block-figures"},
	{"OP", "OG", false, Span{}, months(1), months(6), "MITRA-351 memory"},
	{"OP", "AK", false, days(1), days(7), Span{}, "memory"},
	{"OP", "ET", false, days(2), days(7), Span{}, "memory"},
	{"OP AG AP", "CA", false, days(14), Span{}, Span{}, "memory"},
	{"NR AR HC KR AV SH PU WX", "OP", true, months(6), months(12), Span{}, "varnish-wait memory"},
	{"NR AR HC KR AV SH PU WX", "OP", false, months(3), months(6), months(12), "varnish-wait memory"},
	{"NR AR HC KR AV SH PU WX", "AK", false, months(1), months(3), months(6), "maker-varnishing memory"},
	{"NR AR HC KR AV", "AM", false, days(3), days(14), days(28), "practice"},
	{"NR AR HC KR AV SH PU WX", "AP", false, days(3), days(14), days(28), "practice"},
	{"AM", "AP", true, days(1), days(7), days(28), "practice"},
	{"AM", "AP", false, days(1), days(7), Span{}, "practice"},
	{"NR AR HC KR AV", "ET", false, months(3), months(6), months(12), "MITRA-151 memory"},
	{"NR AR HC KR AV", "EO", false, months(6), months(12), Span{}, "memory"},
}

// WaitFor returns how long a lower layer should dry before an upper one; false
// where no time is known. Thick says that the lower layer is thick or holds
// slow colours; unless that is known not to be so, the longer time holds.
func WaitFor(upper, lower Stratum, thick record.Answer) (Wait, bool) {
	for _, r := range waitRows()[[2]Stratum{upper, lower}] {
		if !r.thick || thick != no {
			return r.Wait, true
		}
	}
	return Wait{}, false
}

// waitRows finds the rows of a pair.
var waitRows = sync.OnceValue(func() map[[2]Stratum][]waitOf {
	m := map[[2]Stratum][]waitOf{}
	for _, r := range waits {
		w := waitOf{Wait{r.least, r.usual, r.better, standing(r.from)}, r.thick}
		for _, u := range strataOf(r.over) {
			for _, l := range strataOf(r.on) {
				m[[2]Stratum{u, l}] = append(m[[2]Stratum{u, l}], w)
			}
		}
	}
	return m
})

// WaitsFor returns all the waits that may hold for layers of which the record
// may leave open what they are and whether the lower is thick. Known is no where
// none is known for any of them, and unknown where some have one and some not.
func WaitsFor(upper, lower Strata, thick record.Answer) (ws []Wait, known record.Answer) {
	var as []record.Answer
	for _, u := range upper {
		for _, l := range lower {
			for _, reading := range []record.Answer{yes, no} {
				if (thick == yes || thick == no) && thick != reading {
					continue
				}
				w, ok := WaitFor(u, l, reading)
				if as = append(as, Is(ok)); ok {
					ws = append(ws, w)
				}
			}
		}
	}
	return ws, agreed(as)
}

// Passed answers whether a span had passed between two recorded dates, by every
// reading of them: a date known to the month counts from its last day and up to
// its first.
func Passed(lower, upper record.When, s Span) record.Answer {
	from, ok1 := lower.Earliest()
	last, ok2 := lower.Latest()
	first, ok3 := upper.Earliest()
	to, ok4 := upper.Latest()
	switch {
	case ok2 && ok3 && !s.After(last).After(first):
		return yes
	case ok1 && ok4 && s.After(from).After(to):
		return no
	}
	return maybe
}

// SafeFrom returns the first moment at which a span has passed by every reading
// of a date; false where its end is open or not known.
func SafeFrom(lower record.When, s Span) (time.Time, bool) {
	last, ok := lower.Latest()
	return s.After(last), ok
}
