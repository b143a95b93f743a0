package check

import (
	"cmp"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// Step is what comes next for a panel, with its window. A zero From means at
// once; a zero By means that nothing presses.
type Step struct {
	Panel   record.Number
	Batch   record.Key
	Do      string // what to do, in the words of the bench
	From    time.Time
	By      time.Time
	Note    string  // why, or what to mind
	Entries []int64 // the entries it follows from
}

// State is how a step stands at a moment.
type State string

// States, the most pressing first.
const (
	Overdue State = "overdue"
	Ready   State = "now"
	Waiting State = "later"
)

// At returns how the step stands at a moment.
func (s Step) At(t time.Time) State {
	switch {
	case !s.By.IsZero() && t.After(s.By):
		return Overdue
	case s.From.After(t):
		return Waiting
	}
	return Ready
}

// Waiting times before varnish, from which a step is due. Common practice but
// where a source is named.
const (
	varnishOil   = 182 * day // oil: six months at the least (in print since 1926 at the latest)
	varnishWater = 7 * day   // acrylic: some days to weeks
)

// Due returns the next steps of every panel that is in the studio and not
// discarded, as they stand at a moment: overdue first, then what can be done
// now, then what waits, each by when it can begin.
func Due(w *record.Workshop, at time.Time) []Step {
	var all []Step
	for _, p := range w.Panels {
		if _, gone := p.Discarded(); gone {
			continue
		}
		if _, away := p.Away(); away {
			continue
		}
		all = append(all, next(w, p)...)
	}
	rank := map[State]int{Overdue: 0, Ready: 1, Waiting: 2}
	slices.SortStableFunc(all, func(a, b Step) int {
		return cmp.Or(rank[a.At(at)]-rank[b.At(at)], a.From.Compare(b.From), record.CompareNumbers(a.Panel, b.Panel))
	})
	return all
}

// next returns the open steps of one panel. Where a time is not exactly
// recorded there is no window: the step stands without one and says so.
func next(w *record.Workshop, p *record.Panel) []Step {
	layers := p.Layers()
	step := func(do string) Step { return Step{Panel: p.Number, Batch: p.Batch, Do: do} }
	if len(layers) == 0 {
		s := step("seal front, back and edges")
		if c, ok := record.Latest[record.Cut](p); ok {
			s.Entries = []int64{c.Seq}
		}
		return []Step{s}
	}
	var steps []Step
	if s, ok := trimStep(p, step); ok {
		steps = append(steps, s)
	}
	subject := NewSubject(w, p, time.Time{})
	if s, ok := subject.answerStep(step); ok {
		steps = append(steps, s)
	}
	if s, ok := subject.cureStep(step); ok {
		steps = append(steps, s)
	}
	return steps
}

func trimStep(p *record.Panel, step func(string) Step) (Step, bool) {
	cloth, ok := record.Latest[record.ClothLaid](p)
	if !ok {
		return Step{}, false
	}
	for _, t := range record.Each[record.Trimmed](p) {
		if t.Seq > cloth.Seq {
			return Step{}, false
		}
	}
	if len(p.Layers()) > 0 && p.Stage() != record.StageClothed {
		return Step{}, false // worked on since: the trimming was not written down
	}
	s := step("trim the cloth")
	s.Entries = []int64{cloth.Seq}
	s.Note = "while still slightly tacky; after this it is possible but harder"
	if t, exact := cloth.At.Exact(); exact {
		s.From, s.By = t.Add(trimFrom), t.Add(trimUntil)
	}
	return s, true
}

// answerStep finds coats on one face that the other has not been given. Paint,
// varnish and what lies under them on the front alone are not answered: the
// back has had its share by then.
func (s *Subject) answerStep(step func(string) Step) (Step, bool) {
	if st := s.Panel.Stage(); st == record.StagePainted || st == record.StageVarnished {
		return Step{}, false
	}
	more, less, do := filter(s.on(record.Front), isCoat), filter(s.on(record.Back), isCoat), "turn and coat the back"
	if len(less) > len(more) {
		more, less, do = less, more, "turn and coat the front"
	}
	if len(less) == len(more) {
		return Step{}, false
	}
	next := step(do)
	next.Note = "what one side gets, the other gets"
	next.Entries = filmSeqs(more[len(less):])
	if t, ok := more[len(less)].Layer.At.Exact(); ok {
		next.By = t.Add(day)
	}
	next.From, _ = s.touchDry(more[len(more)-1])
	return next, true
}

// cureStep waits for the last film, or says what the panel is ready for.
func (s *Subject) cureStep(step func(string) Step) (Step, bool) {
	films := filter(s.Films, func(f Film) bool { return !isCloth(f) })
	if len(films) == 0 {
		return Step{}, false
	}
	last := films[len(films)-1]
	at := last.Layer.At
	var next Step
	switch {
	case isVarnish(last):
		return Step{}, false
	case isPaint(last):
		next = step("varnish")
		wait := varnishWater
		next.Note = "after an isolation coat"
		if s.isOil(last) != record.No {
			wait, next.Note = varnishOil, "oil: six to twelve months, and only when firm all through"
		}
		if t, ok := at.Latest(); ok {
			next.From = t.Add(wait)
		}
	case s.Panel.Stage() == record.StageGrounded:
		next = step("paint")
		next.Note = "oil: three days after an acrylic ground at the least, two weeks better"
		if _, safe, why := s.cure(last); why == "" {
			next.From = safe
			if t, ok := at.Latest(); ok && isGround(last) && t.Add(acrylicGroundLeast).After(safe) {
				next.From = t.Add(acrylicGroundLeast)
			}
		}
	default:
		next = step("sand, then prime")
		if slices.ContainsFunc(record.Each[record.Sanded](s.Panel), func(d record.Done[record.Sanded]) bool { return s.place(d.Seq) > s.place(last.Layer.Seq) }) {
			next = step("prime")
		}
		early, safe, why := s.cure(last)
		if next.Note = "when cured; " + why; why == "" {
			next.From = safe
			next.Note = "cured: not before " + early.Format("2 Jan 15:04") + ", safe by " + safe.Format("2 Jan 15:04")
		}
	}
	next.Entries = []int64{last.Layer.Seq}
	return next, true
}

// touchDry returns when a film is touch-dry at the latest, by the slowest of
// its materials. Warm air after it shortens that, and nothing else.
func (s *Subject) touchDry(f Film) (time.Time, bool) {
	at, exact := f.Layer.At.Exact()
	ms, all := s.parts(f)
	if !exact || !all {
		return time.Time{}, false
	}
	rh, _, known := s.humidity(f)
	warm := slices.ContainsFunc(record.Each[record.WarmAir](s.Panel), func(d record.Done[record.WarmAir]) bool { return s.place(d.Seq) > s.place(f.Layer.Seq) })
	var dry time.Time
	for _, m := range ms {
		from, _ := m.TouchDryFrom.Seconds()
		to, _ := m.TouchDryTo.Seconds()
		w, err := measure.TouchDryWindow(measure.Stated{Early: time.Duration(from) * time.Second, Late: time.Duration(to) * time.Second},
			measure.Humidity{Percent: rh, Known: known}, warm)
		if err != nil {
			return time.Time{}, false // not stated
		}
		if t := at.Add(w.SafeBy); t.After(dry) {
			dry = t
		}
	}
	return dry, true
}

// Group is the same step for several panels.
type Group struct {
	Step
	Panels []record.Number
}

// Grouped joins steps that differ only in the panel, in the order in which
// they stand.
func Grouped(steps []Step) []Group {
	var out []Group
	for _, s := range steps {
		i := slices.IndexFunc(out, func(g Group) bool {
			return g.Batch == s.Batch && g.Do == s.Do && g.From.Equal(s.From) && g.By.Equal(s.By) && g.Note == s.Note
		})
		if i < 0 {
			out = append(out, Group{Step: s})
			i = len(out) - 1
		}
		out[i].Panels = append(out[i].Panels, s.Panel)
		for _, e := range s.Entries {
			if !slices.Contains(out[i].Entries, e) {
				out[i].Entries = append(out[i].Entries, e)
			}
		}
	}
	return out
}
