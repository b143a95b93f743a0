package amount

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// shares shares out the amounts of entries over faces and panels. It keeps
// what it has reckoned: an entry may name thousands of panels.
type shares struct {
	w    *record.Workshop
	took map[took]taken
}

type took struct {
	p   *record.Panel
	seq int64
}

type taken struct {
	amount amount
	why    record.Said
}

func newShares(w *record.Workshop) *shares {
	return &shares{w, map[took]taken{}}
}

// spread estimates a wet film from the amount laid.
func (s *shares) spread(p *record.Panel, l record.Layer) (microns float64, why record.Said) {
	a, why := s.amount(p, l.Seq)
	if why.Code != "" {
		return 0, why
	}
	e, _ := p.Event(l.Seq)
	all := s.w.Spread(p, e.Body)
	if all == 0 {
		return 0, record.Say("size-open")
	}
	volume := a.microliters
	if volume == 0 {
		b, why := blendOf(s.w, l.Coating)
		if why.Code != "" {
			return 0, why
		}
		if b.density == 0 {
			return 0, record.Say("density-open", record.With("material", b.names))
		}
		volume = a.milligrams / b.laidDensity()
	}
	microns, err := measure.WetMicrons(volume*l.Share(), all)
	if err != nil {
		return 0, record.Say("film-out-of-range")
	}
	return microns, record.Said{}
}

// amount is what one panel took of an application: a mass or a volume.
type amount struct{ milligrams, microliters float64 }

// amount returns what of one entry's amount is on a panel.
func (s *shares) amount(p *record.Panel, seq int64) (amount, record.Said) {
	k := took{p, seq}
	t, known := s.took[k]
	if !known {
		t.amount, t.why = s.reckon(p, seq)
		s.took[k] = t
	}
	return t.amount, t.why
}

func (s *shares) reckon(p *record.Panel, seq int64) (amount, record.Said) {
	e, _ := p.Event(seq)
	c, _, _ := record.Entry{Body: e.Body}.Wet()
	if c == nil {
		return amount{}, record.Say("amount-open")
	}
	share, total := 1.0, c.WetEach
	if total.IsZero() {
		total = c.WetTotal
	}
	mg, byMass := total.Milligrams()
	ul, byVolume := total.Microliters()
	if mg+ul == 0 || !byMass && !byVolume {
		return amount{}, record.Say("amount-open")
	}
	if c.WetEach.IsZero() {
		var all float64
		as := func(n record.Number) *record.Panel {
			if n == p.Number {
				return p // as it was at some time, perhaps
			}
			return s.w.Panel(n)
		}
		for n, a := range s.w.Sharers(e, as) {
			switch {
			case as(n) == nil:
				return amount{}, record.Say("amount-shared-with-absent", record.With("panel", n))
			case a == 0:
				return amount{}, record.Say("amount-shared-without-size", record.With("panel", n))
			}
			all += a
		}
		share = s.w.Spread(p, e.Body) / all
	}
	return amount{float64(mg) * share, float64(ul) * share}, record.Said{}
}
