package check

import (
	"cmp"
	"slices"
	"strings"
	"time"

	"backleaf/record"
)

// Task is what is to be done next.
type Task string

// Tasks.
const (
	TaskSeal    Task = "seal"
	TaskLay     Task = "lay cloth or ground"
	TaskTrim    Task = "trim"
	TaskAnswer  Task = "answer the coat"
	TaskSand    Task = "sand"
	TaskPrime   Task = "prime"
	TaskPaint   Task = "paint"
	TaskVarnish Task = "varnish"
	TaskLabel   Task = "label"
)

// Step is one thing that is due on one panel, or after [Group] on several, and
// its window. A zero time is an open side: no From means at any time, no Until
// means that nothing is lost by waiting.
type Step struct {
	Panels  []record.Number
	Batch   record.Key
	Task    Task
	Text    string    // what to do, ready to print
	From    time.Time // not before
	Safe    time.Time // certain from here; zero where From is certain
	Until   time.Time // at the latest
	Overdue bool
	Entry   int64 // the entry the window is counted from; 0 for none
}

// Due says what is next for every panel in the studio at a moment, overdue
// steps first. What happened later than that moment is left out, so that it
// can be asked of any time. Given up and handed over panels have no steps.
//
// A water-borne coat for whose material no time is stated is reckoned with the
// usual ones: touch-dry in 20 to 30 minutes, cured in 24 to 36 hours (common
// practice). The text says so.
func Due(w *record.Workshop, at time.Time) []Step {
	var steps []Step
	for _, p := range w.Panels {
		s := unmeasured(w, asOf(p, at), at)
		if s.Cut.Seq == 0 {
			continue
		}
		if _, gone := s.Panel.Discarded(); gone {
			continue
		}
		if _, away := s.Panel.Away(); away {
			continue
		}
		for _, st := range s.steps() {
			steps = append(steps, s.undated(st))
		}
	}
	order(steps, at)
	return steps
}

// undated takes the window from a step that is counted from a date which is
// only roughly known: "about 1999" has no day on which anything is due.
func (s *Subject) undated(st Step) Step {
	i := slices.IndexFunc(s.Panel.Events, func(e record.Event) bool { return e.Seq == st.Entry })
	if i < 0 || st.From.IsZero() && st.Until.IsZero() {
		return st
	}
	at := s.Panel.Events[i].At
	if _, exact := at.Exact(); exact || at.Date().IsExactDay() {
		return st
	}
	st.From, st.Safe, st.Until, st.Overdue = time.Time{}, time.Time{}, time.Time{}, false
	st.Text += " (no times: the date it is counted from is not exact)"
	return st
}

// asOf is a panel without what had certainly not happened yet.
func asOf(p *record.Panel, at time.Time) *record.Panel {
	q := *p
	q.Events = nil
	for _, e := range p.Events {
		if first, ok := e.At.Earliest(); !ok || !first.After(at) {
			q.Events = append(q.Events, e)
		}
	}
	return &q
}

func order(steps []Step, at time.Time) {
	class := func(s Step) int {
		switch {
		case s.Overdue:
			return 0
		case !s.From.IsZero() && !s.From.After(at):
			return 1
		case !s.From.IsZero():
			return 2
		}
		return 3
	}
	slices.SortStableFunc(steps, func(a, b Step) int {
		end := func(s Step) int64 {
			if s.Until.IsZero() {
				return 1 << 62
			}
			return s.Until.Unix()
		}
		begin := a.From.Compare(b.From)
		if class(a) == 2 && class(b) == 2 { // what waits goes by its beginning, the rest by its end
			return begin
		}
		return cmp.Or(class(a)-class(b), cmp.Compare(end(a), end(b)), begin)
	})
}

// Group joins the steps that are the same for several panels of a batch, so
// that fourteen panels in one state are one line. Order is kept.
func Group(steps []Step) []Step {
	type key struct {
		batch             record.Key
		task              Task
		text              string
		from, safe, until int64
	}
	var out []Step
	at := map[key]int{}
	for _, s := range steps {
		k := key{s.Batch, s.Task, s.Text, s.From.Unix(), s.Safe.Unix(), s.Until.Unix()}
		if i, ok := at[k]; ok {
			out[i].Panels = append(out[i].Panels, s.Panels...)
			continue
		}
		at[k] = len(out)
		s.Panels = slices.Clone(s.Panels)
		out = append(out, s)
	}
	for _, s := range out {
		slices.SortFunc(s.Panels, record.CompareNumbers)
	}
	return out
}

// State says in a word how a step stands at a moment: overdue, now, later, or
// any time where it has no window.
func (s Step) State(at time.Time) string {
	switch {
	case s.Overdue:
		return "overdue"
	case s.From.IsZero():
		return "any time"
	case s.From.After(at):
		return "later"
	}
	return "now"
}

// Numbers lists the panels of a step in words.
func (s Step) Numbers() string {
	var ns []string
	for _, n := range s.Panels {
		ns = append(ns, string(n))
	}
	return strings.Join(ns, ", ")
}
