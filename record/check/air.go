package check

import (
	"time"

	"backleaf/record"
	"backleaf/record/measure"
)

// near is how far in time a reading of the room may be from a coat to speak
// for it.
const near = 12 * time.Hour

// celsius returns the temperature in which a layer was laid: as recorded for
// it, or else the nearest reading of the room within 12 hours.
func (s *Subject) celsius(f Film) (float64, int64, bool) {
	if mc, ok := f.Layer.Coating.Temperature.Millicelsius(); ok {
		return float64(mc) / 1000, f.Layer.Seq, true
	}
	return nearest(s.readings(), f.Layer.At, func(c record.Climate) (float64, bool) {
		mc, ok := c.Temperature.Millicelsius()
		return float64(mc) / 1000, ok
	})
}

// humidity returns the relative humidity in percent likewise.
func (s *Subject) humidity(f Film) (float64, int64, bool) {
	if mp, ok := f.Layer.Coating.Humidity.Millipercent(); ok {
		return float64(mp) / 1000, f.Layer.Seq, true
	}
	return nearest(s.readings(), f.Layer.At, func(c record.Climate) (float64, bool) {
		mp, ok := c.Humidity.Millipercent()
		return float64(mp) / 1000, ok
	})
}

func (s *Subject) readings() []record.Done[record.Climate] {
	return append(record.Each[record.Climate](s.Panel), s.Workshop.Climate...)
}

func nearest(all []record.Done[record.Climate], at record.When, value func(record.Climate) (float64, bool)) (v float64, seq int64, ok bool) {
	best := near + 1
	for _, c := range all {
		x, known := value(c.Body)
		least, most, timed := elapsed(at, c.At)
		if !known || !timed {
			continue
		}
		if d := max(-least, most); d < best {
			best, v, seq, ok = d, x, c.Seq, true
		}
	}
	return v, seq, ok
}

// cure returns when a film counts as not cured before, and as safely cured
// by, from what its materials state and the humidity it stood in. It says why
// where that cannot be told.
func (s *Subject) cure(f Film) (notBefore, safeBy time.Time, why string) {
	stated, why := s.statedCure(f)
	if why != "" {
		return notBefore, safeBy, why
	}
	from, ok1 := f.Layer.At.Earliest()
	to, ok2 := f.Layer.At.Latest()
	if !ok1 || !ok2 {
		return notBefore, safeBy, "when the " + name(f) + " was laid is not recorded"
	}
	rh, _, known := s.humidity(f)
	w, err := measure.CureWindow(stated, measure.Humidity{Percent: rh, Known: known})
	if err != nil {
		return notBefore, safeBy, err.Error()
	}
	return from.Add(w.NotBefore), to.Add(w.SafeBy), ""
}

// statedCure is the time to cure of the slowest part of a mix.
func (s *Subject) statedCure(f Film) (measure.Stated, string) {
	ms, all := s.parts(f)
	if !all {
		return measure.Stated{}, "the material of the " + name(f) + " is not recorded"
	}
	var stated measure.Stated
	for _, m := range ms {
		to, ok := m.CureTo.Seconds()
		if !ok || to == 0 {
			return measure.Stated{}, "how long " + m.Name + " takes to cure is not recorded"
		}
		// Without an early edge the window is as wide as it can be.
		from, _ := m.CureFrom.Seconds()
		stated.Early = max(stated.Early, time.Duration(from)*time.Second)
		stated.Late = max(stated.Late, time.Duration(to)*time.Second)
	}
	return stated, ""
}
