package check

import (
	"cmp"
	"slices"
	"time"

	"backleaf/record"
)

// Task is what is to be done next.
type Task string

// Tasks.
const (
	TaskSeal    Task = "seal"
	TaskLay     Task = "lay"
	TaskPress   Task = "press"
	TaskTrim    Task = "trim"
	TaskAnswer  Task = "answer"
	TaskSand    Task = "sand"
	TaskPrime   Task = "prime"
	TaskPaint   Task = "paint"
	TaskVarnish Task = "varnish"
	TaskLabel   Task = "label"
)

// Step is one thing that is due on one panel, or after [Group] on several, and
// its window. A zero time is an open side: no From means at any time, no Until
// means that nothing is lost by waiting. No window ends before it begins.
type Step struct {
	Panels  []record.Number
	Batch   record.Key
	Task    Task
	Said    record.Said   // what to do
	Rests   []record.Said // on what the window rests, or why there is none
	From    time.Time     // not before
	Safe    time.Time     // certain from here; zero where From is certain
	Until   time.Time     // at the latest
	Overdue bool
	Entry   int64 // the entry the window is counted from; 0 for none
}

// Due says what is next for every panel in the studio at a moment, overdue
// steps first. What happened later than that moment is left out, so that it
// can be asked of any time. Given up and handed over panels have no steps.
//
// Windows are reckoned from what the tins state and from the air recorded with
// a coat or read nearest to it. Where nobody recorded the air, From is for the
// driest and Safe for the dampest. A water-borne coat for whose material no
// time is stated is reckoned with the usual ones: touch-dry in 20 to 30
// minutes, cured in 24 to 36 hours (common practice). Rests says all this.
func Due(w *record.Workshop, at time.Time) []Step {
	var steps []Step
	for _, p := range w.Panels {
		steps = append(steps, Next(w, p, at)...)
	}
	Order(steps, at)
	return steps
}

// Next is [Due] for one panel.
func Next(w *record.Workshop, p *record.Panel, at time.Time) []Step {
	s := unmeasured(w, asOf(p, at), at)
	_, gone := s.p.Discarded()
	_, away := s.p.Away()
	if s.cut.Seq == 0 || gone || away {
		return nil
	}
	return s.steps()
}

// asOf is a panel without what had certainly not happened yet.
func asOf(p *record.Panel, at time.Time) *record.Panel {
	later := func(e record.Event) bool { first, ok := e.At.Earliest(); return ok && first.After(at) }
	first := slices.IndexFunc(p.Events, later)
	if first < 0 {
		return p
	}
	before := slices.Clip(p.Events[:first])
	for _, e := range p.Events[first:] { // few or none
		if !later(e) {
			before = append(before, e)
		}
	}
	return p.With(before)
}

// State is how a step stands at a moment.
type State string

// The states, in the order of a day's list.
const (
	Overdue State = "overdue"
	Now     State = "now"
	Later   State = "later"
	AnyTime State = "any-time" // it has no window
)

var states = []State{Overdue, Now, Later, AnyTime}

// State says how a step stands at a moment.
func (s Step) State(at time.Time) State {
	switch {
	case s.Overdue:
		return Overdue
	case s.From.IsZero():
		return AnyTime
	case s.From.After(at):
		return Later
	}
	return Now
}

// Order puts overdue steps first, as [Due] does.
func Order(steps []Step, at time.Time) {
	end := func(s Step) int64 {
		if s.Until.IsZero() {
			return 1 << 62
		}
		return s.Until.Unix()
	}
	slices.SortStableFunc(steps, func(a, b Step) int {
		begin := a.From.Compare(b.From)
		if a.State(at) == Later && b.State(at) == Later { // what waits goes by its beginning, the rest by its end
			return begin
		}
		return cmp.Or(rank(states, a.State(at))-rank(states, b.State(at)), cmp.Compare(end(a), end(b)), begin)
	})
}

// Group joins the steps that are the same for several panels of a batch, so
// that fourteen panels in one state are one line. Order is kept.
func Group(steps []Step) []Step {
	type window struct {
		batch             record.Key
		code              string
		from, safe, until int64
	}
	var out []Step
	at := map[window][]int{}
	for _, s := range steps {
		k := window{s.Batch, s.Said.Code, s.From.Unix(), s.Safe.Unix(), s.Until.Unix()}
		same := slices.IndexFunc(at[k], func(i int) bool {
			return out[i].Task == s.Task && alike(out[i].Said, s.Said) && slices.EqualFunc(out[i].Rests, s.Rests, alike)
		})
		if same >= 0 {
			first := &out[at[k][same]]
			first.Panels = append(first.Panels, s.Panels...)
			continue
		}
		at[k] = append(at[k], len(out))
		s.Panels = slices.Clone(s.Panels)
		out = append(out, s)
	}
	for _, s := range out {
		slices.Sort(s.Panels)
	}
	return out
}

// alike reports that the same is said.
func alike(a, b record.Said) bool {
	return a.Code == b.Code && slices.EqualFunc(a.Values, b.Values, func(v, x record.Value) bool {
		return v.Name == x.Name && v.Type == x.Type && slices.Equal(v.Texts, x.Texts)
	})
}
