package check

import (
	"slices"
	"strings"
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// window is when something may be done: not before from, surely from safe, and
// until the last moment. rests says on what that rests, or why nothing is known.
type window struct {
	from, safe, until time.Time
	rests             []record.Said
}

// drying is one of the two times of a film: the times that a material states,
// and the usual ones of a water-borne coat where it states none (common
// practice).
type drying struct {
	stated func(*record.Material) (from, to record.Duration)
	usual  measure.Stated
	warm   bool // warm air helps
}

var (
	touchDry = drying{func(m *record.Material) (_, _ record.Duration) { return m.TouchDryFrom, m.TouchDryTo },
		measure.Stated{Early: 20 * time.Minute, Late: 30 * time.Minute}, true}
	cured = drying{func(m *record.Material) (_, _ record.Duration) { return m.CureFrom, m.CureTo },
		measure.Stated{Early: day, Late: 36 * time.Hour}, false}
)

// window returns when a film is dry to the touch or cured, for the next step:
// with the usual times where a water-borne coat states none, and only counted
// from a date that is exact to the day.
func (s *subject) window(f film, d drying) window {
	stated, why := s.stated(f, d)
	var usual []record.Said
	if why.Code != "" {
		if f.fuses() != record.Yes {
			return unknown(why)
		}
		stated, usual = d.usual, []record.Said{record.Say("usual-times")}
	}
	from, to, ok := dated(f.Layer.At)
	if !ok {
		return unknown(record.Say("laid-when-open", what(f)))
	}
	w := s.from(f, stated, from, to, d.warm && s.warmed(f))
	w.rests = append(usual, w.rests...)
	return w
}

// unknown is a window of which nothing is known, and why.
func unknown(why record.Said) window {
	why.Code = strings.TrimSuffix(why.Code, "-open") + "-unknown"
	return window{rests: []record.Said{why}}
}

// cure returns when a film counts as cured, for judgement: by stated times
// only, from any date. It says why where that cannot be told.
func (s *subject) cure(f film) (w window, why record.Said) {
	stated, why := s.stated(f, cured)
	if why.Code != "" {
		return w, why
	}
	from, ok1 := f.Layer.At.Earliest()
	to, ok2 := f.Layer.At.Latest()
	if !ok1 || !ok2 {
		return w, record.Say("laid-when-open", what(f))
	}
	if w = s.from(f, stated, from, to, false); w.safe.IsZero() {
		return w, record.Say("times-unlikely", what(f))
	}
	return w, why
}

// Curing is when a coating that still lies on a panel counts as cured: surely from
// then, by what its materials state and the air that was read; or why that cannot be told.
type Curing struct {
	Layer  record.Layer
	Surely time.Time
	Why    record.Said
}

// Cures lists the coatings of a panel, as [Rules] judge them.
func Cures(w *record.Workshop, p *record.Panel, now time.Time) (out []Curing) {
	s := unmeasured(w, p, now)
	for _, f := range s.films {
		if f.Layer.Coating != nil && f.Layer.Cloth == nil {
			at, why := s.cure(f)
			out = append(out, Curing{f.Layer, at.safe, why})
		}
	}
	return out
}

// from reckons the window of a film that was laid between two times, in the
// air it stood in: where nobody recorded the air, from is for the driest and
// safe for the dampest.
func (s *subject) from(f film, stated measure.Stated, laid1, laid2 time.Time, warm bool) window {
	reckon := func() any { return s.dryingFrom(f, stated, laid1, laid2, warm) }
	var w any
	if each[record.Climate](s) != nil {
		w = reckon()
	} else { // the same of all panels of an act
		w = s.w.Once(dries{f.Layer.Seq, f.Layer.At.String(), f.Layer.Coating.Humidity, stated, warm}, reckon)
	}
	if w := w.(window); !w.unknown() {
		return w
	}
	return unknown(record.Say("times-unlikely", what(f)))
}

// dries is what the window of a film follows from, where no air was read on its
// panel.
type dries struct {
	entry    int64
	at       string
	humidity record.Percent
	stated   measure.Stated
	warm     bool
}

// dryingFrom is the zero window where the times are unlikely.
func (s *subject) dryingFrom(f film, stated measure.Stated, laid1, laid2 time.Time, warm bool) window {
	var w window
	rh, read := s.humidity(f)
	if !read {
		rh = air{low: 0, high: 100}
		w.rests = append(w.rests, record.Say("air-open"))
	} else if !slices.Contains(rh.seqs, f.Layer.Seq) {
		w.rests = append(w.rests, record.Say("air-read", entriesOf(rh.seqs)...))
	}
	dry, err := measure.DryingWindow(stated, rh.low, warm)
	damp, err2 := measure.DryingWindow(stated, rh.high, warm)
	if err != nil || err2 != nil {
		return window{}
	}
	w.from, w.safe = laid1.Add(dry.NotBefore), laid2.Add(damp.SafeBy)
	return w
}

// dated returns the bounds of a date that is exact to the day: from "about
// 1999" no day follows on which anything is due.
func dated(at record.When) (from, to time.Time, ok bool) {
	if _, exact := at.Exact(); !exact && !at.Date().IsExactDay() {
		return from, to, false
	}
	from, ok1 := at.Earliest()
	to, ok2 := at.Latest()
	return from, to, ok1 && ok2
}

// stated is the time of the slowest part of a mix, or why it is not known.
func (s *subject) stated(f film, d drying) (measure.Stated, record.Said) {
	ms, known := f.materials()
	if !known {
		return measure.Stated{}, record.Say("material-open", what(f))
	}
	var stated measure.Stated
	for _, m := range ms {
		early, late := d.stated(m)
		to, ok := late.Seconds()
		if !ok || to == 0 {
			return measure.Stated{}, record.Say("times-of-material-open", record.With("material", m.Name))
		}
		// Without an early edge the window is as wide as it can be.
		from, _ := early.Seconds()
		stated.Early = max(stated.Early, time.Duration(from)*time.Second)
		stated.Late = max(stated.Late, time.Duration(to)*time.Second)
	}
	return stated, record.Said{}
}

// warmed reports that warm air was blown over a film after it was laid.
func (s *subject) warmed(f film) bool {
	return slices.ContainsFunc(each[record.WarmAir](s), func(e record.Done[record.WarmAir]) bool {
		return before(f.Layer.At, e.At) == record.Yes && (len(e.Body.Faces) == 0 || slices.Contains(e.Body.Faces, f.Layer.Face))
	})
}

// unknown reports that nothing is known of when it opens.
func (w window) unknown() bool { return w.from.IsZero() }

// latest joins windows that all have to be open; one that is not known leaves
// it unknown. It rests on what the latest rests on.
func latest(ws ...window) window {
	var out window
	for _, w := range ws {
		switch {
		case w.unknown():
			return w
		case w.end().After(out.end()):
			out.rests = w.rests
		}
		if w.from.After(out.from) {
			out.from = w.from
		}
		if w.safe.After(out.safe) {
			out.safe = w.safe
		}
		if out.until.IsZero() || !w.until.IsZero() && w.until.Before(out.until) {
			out.until = w.until
		}
	}
	return out
}

// end is when it is surely open.
func (w window) end() time.Time {
	if w.safe.After(w.from) {
		return w.safe
	}
	return w.from
}
