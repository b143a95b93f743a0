package check

import (
	"slices"
	"time"

	"backleaf/record"
)

// air is a temperature or a humidity: where the dates leave several readings,
// all of them, from the lowest to the highest.
type air struct {
	low, high float64
	seqs      []int64 // where it was read
}

// celsius returns the temperature in which a layer was laid: as recorded for
// it, or else by the nearest reading of the room within 12 hours.
func (s *subject) celsius(f film) (air, bool) {
	if mc, ok := f.Layer.Coating.Temperature.Millicelsius(); ok {
		return air{float64(mc) / 1000, float64(mc) / 1000, filmSeqs(f)}, true
	}
	return s.nearest(f.Layer.At, "temperature", func(c record.Climate) (float64, bool) {
		mc, ok := c.Temperature.Millicelsius()
		return float64(mc) / 1000, ok
	})
}

// humidity returns the relative humidity in percent likewise.
func (s *subject) humidity(f film) (air, bool) {
	if mp, ok := f.Layer.Coating.Humidity.Millipercent(); ok {
		return air{float64(mp) / 1000, float64(mp) / 1000, filmSeqs(f)}, true
	}
	return s.nearest(f.Layer.At, "humidity", func(c record.Climate) (float64, bool) {
		mp, ok := c.Humidity.Millipercent()
		return float64(mp) / 1000, ok
	})
}

// airAt is what was looked for at a time.
type airAt struct{ at, what string }

// nearest reads the air at a time: of the room once for all layers of that
// time, on any panel.
func (s *subject) nearest(at record.When, what string, value func(record.Climate) (float64, bool)) (air, bool) {
	own := each[record.Climate](s)
	reckon := func() any {
		a, _ := nearest(slices.Concat(own, s.w.Readings(at)), at, value)
		return a
	}
	var read any
	if own != nil {
		read = reckon()
	} else {
		read = s.w.Once(airAt{at.String(), what}, reckon)
	}
	a := read.(air)
	return a, a.seqs != nil
}

// nearest joins the readings that may be the nearest to a time; false where it
// may be that none is near. A vaguer time never leaves fewer of them.
func nearest(readings []record.Done[record.Climate], at record.When, value func(record.Climate) (float64, bool)) (air, bool) {
	from, to, near, ok := at.Air()
	if !ok {
		return air{}, false
	}
	type reading struct {
		from, to time.Time
		value    float64
		seq      int64
	}
	var rs []reading
	moments := []time.Time{from, to} // where the nearest reading can change
	for _, c := range readings {
		x, known := value(c.Body)
		f, ok1 := c.At.Earliest()
		t, ok2 := c.At.Latest()
		if !known || !ok1 || !ok2 || f.Sub(to) > near || from.Sub(t) > near {
			continue
		}
		rs = append(rs, reading{f, t, x, c.Seq})
	}
	for _, a := range rs {
		moments = append(moments, a.from, a.to)
		for _, b := range rs {
			for _, x := range []time.Time{a.from, a.to} {
				for _, y := range []time.Time{b.from, b.to} {
					moments = append(moments, x.Add(y.Sub(x)/2))
				}
			}
		}
	}
	least := func(r reading, t time.Time) time.Duration { return max(r.from.Sub(t), t.Sub(r.to), 0) }
	most := func(r reading, t time.Time) time.Duration { return max(t.Sub(r.from), r.to.Sub(t)) }
	var out air
	for _, t := range moments {
		if t.Before(from) || t.After(to) {
			continue
		}
		sure := near + 1
		for _, r := range rs {
			sure = min(sure, most(r, t))
		}
		if sure > near {
			return air{}, false
		}
		for _, r := range rs {
			if least(r, t) > sure || slices.Contains(out.seqs, r.seq) {
				continue
			}
			if out.seqs == nil {
				out.low, out.high = r.value, r.value
			}
			out.low, out.high = min(out.low, r.value), max(out.high, r.value)
			out.seqs = append(out.seqs, r.seq)
		}
	}
	return out, out.seqs != nil
}
