package plan

import (
	"cmp"
	"fmt"
	"slices"
	"time"
)

// Batch is panels that go through a recipe together.
type Batch struct {
	Name   string
	Panels int
	Acts   []Act
}

// Hours are when the painter works, from and to counted from midnight.
type Hours struct{ From, To time.Duration }

// Slot is one act on one batch: when it is planned, and between which hours it
// may be done. A zero Until is an open side.
type Slot struct {
	Batch, Act int
	Start, End time.Time
	From, Safe time.Time // not before; surely from
	Until      time.Time
	Late       bool // the plan could not keep Until
}

// Timetable is what to do when.
type Timetable struct {
	Slots []Slot
	Ready []time.Time // of each batch: its last coat is surely cured; zero: not known
	// Untimed are acts after which nothing can be timed, for no time of drying is
	// known, by batch; -1 where all are timed.
	Untimed []int
}

// Times of cloth and of a coat that answers another, common practice.
const (
	TrimFrom    = 10 * time.Minute
	TrimUntil   = 30 * time.Hour
	AnswerUntil = 24 * time.Hour
)

// maxBatches bounds the work.
const maxBatches = 50

// Schedule plans batches one act at a time, never two at once, each act at the
// hour from which it is safe or later, within the hours of work. Among acts
// that are ready the one that must be done first comes first, then the one that
// has waited longest. An act that is longer than what is left of a day begins
// the next morning.
func Schedule(batches []Batch, start time.Time, hours Hours) (Timetable, error) {
	if len(batches) == 0 || len(batches) > maxBatches {
		return Timetable{}, fmt.Errorf("cannot plan %d batches; at least 1 and at most %d", len(batches), maxBatches)
	}
	if hours.From < 0 || hours.To > 24*time.Hour || hours.From >= hours.To {
		return Timetable{}, fmt.Errorf("cannot plan: the hours of work must be in order and within a day")
	}
	t := Timetable{Ready: make([]time.Time, len(batches)), Untimed: make([]int, len(batches))}
	done := make([][]Slot, len(batches))
	for i, b := range batches {
		t.Untimed[i] = -1
		for _, a := range b.Acts {
			if day := hours.To - hours.From; a.Takes*time.Duration(b.Panels) > day {
				return Timetable{}, &TooLong{a.Name, a.Takes, b.Panels, int(day / slices.MaxFunc(b.Acts, longer).Takes)}
			}
		}
	}
	now := start
	for {
		var best *Slot
		for i, b := range batches {
			n := len(done[i])
			if n == len(b.Acts) || t.Untimed[i] >= 0 {
				continue
			}
			s, ok := b.window(done[i], n, start)
			if !ok {
				t.Untimed[i] = n
				continue
			}
			s.Batch = i
			s.Start = hours.fit(latest(now, s.Safe), b.Acts[n].Takes*time.Duration(b.Panels))
			s.End = s.Start.Add(b.Acts[n].Takes * time.Duration(b.Panels))
			if best == nil || s.before(*best) {
				best = &s
			}
		}
		if best == nil {
			break
		}
		best.Late = !best.Until.IsZero() && best.Start.After(best.Until)
		t.Slots = append(t.Slots, *best)
		done[best.Batch] = append(done[best.Batch], *best)
		now = best.End
	}
	for i, b := range batches {
		if t.Untimed[i] < 0 {
			t.Ready[i], _ = b.reached(done[i], len(b.Acts), Cured, start)
		}
	}
	return t, nil
}

// TooLong is why a batch cannot be planned: an act on its panels takes longer
// than a day's work.
type TooLong struct {
	Act    string
	Each   time.Duration // for one panel
	Panels int
	Most   int // panels on which any act of the recipe is done in a day
}

func (e *TooLong) Error() string {
	return fmt.Sprintf("cannot plan: %s takes %d min for each of the %d panels of a batch, together longer than a day's work; make the batches smaller", e.Act, int(e.Each.Minutes()), e.Panels)
}

func longer(a, b Act) int { return cmp.Compare(a.Takes, b.Takes) }

// before orders acts that could be next.
func (s Slot) before(o Slot) bool {
	if c := s.Start.Compare(o.Start); c != 0 {
		return c < 0
	}
	if s.Until.IsZero() != o.Until.IsZero() {
		return o.Until.IsZero()
	}
	if c := s.Until.Compare(o.Until); c != 0 {
		return c < 0
	}
	if c := s.Safe.Compare(o.Safe); c != 0 {
		return c < 0
	}
	return s.Batch < o.Batch
}

// window is when the next act may be done, after those that are done.
func (b Batch) window(done []Slot, next int, start time.Time) (Slot, bool) {
	a := b.Acts[next]
	s := Slot{Act: next, From: start, Safe: start}
	if next > 0 {
		s.From, s.Safe = done[next-1].End, done[next-1].End
	}
	if a.Needs == Tacky {
		for i := next - 1; i >= 0; i-- {
			if b.Acts[i].Do == LayingCloth {
				s.From = latest(s.From, done[i].End.Add(TrimFrom))
				s.Safe, s.Until = s.From, done[i].End.Add(TrimUntil)
				break
			}
		}
		return s, true
	}
	safe, from := b.reached(done, next, a.Needs, start)
	if safe.IsZero() {
		return s, false
	}
	s.From, s.Safe = latest(s.From, from), latest(s.Safe, safe)
	if i, ok := b.answers(next); ok {
		s.Until = done[i].End.Add(AnswerUntil)
	}
	return s, true
}

// answers finds the first coat on one side that the act answers on the other.
func (b Batch) answers(next int) (first int, ok bool) {
	coated := map[Face][]int{}
	for i, a := range b.Acts[:next+1] {
		if a.Do != Coating && a.Do != LayingCloth {
			continue
		}
		for _, f := range a.Faces {
			coated[f] = append(coated[f], i)
		}
	}
	front, back := coated[Front], coated[Back]
	if len(front) < len(back) {
		front, back = back, front
	}
	n := len(back)
	if n == 0 || back[n-1] != next || front[n-1] == next {
		return 0, false
	}
	return front[n-1], true
}

// reached is when all that was laid before an act is touch-dry or cured, surely
// and at the earliest; zero where it is not known.
func (b Batch) reached(done []Slot, next int, need Need, start time.Time) (safe, from time.Time) {
	safe, from = start, start
	if need < TouchDry {
		return safe, from
	}
	for i, a := range b.Acts[:next] {
		if a.Do != Coating && a.Do != LayingCloth {
			continue
		}
		w := a.Dry
		if need == Cured {
			w = a.Cure
		}
		if !w.Known {
			return time.Time{}, time.Time{}
		}
		safe, from = latest(safe, done[i].End.Add(w.Safe)), latest(from, done[i].End.Add(w.From))
	}
	return safe, from
}

// fit returns the first moment from which something can be done within the
// hours of one day.
func (h Hours) fit(t time.Time, takes time.Duration) time.Time {
	midnight := time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, t.Location())
	day := func(n int, of time.Duration) time.Time {
		// by the clock on the wall: a day may have 23 or 25 hours
		return time.Date(midnight.Year(), midnight.Month(), midnight.Day()+n, 0, int(of/time.Minute), 0, 0, t.Location())
	}
	for n := 0; ; n++ {
		at := latest(t, day(n, h.From))
		if !at.Add(takes).After(day(n, h.To)) {
			return at
		}
	}
}

func latest(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}
