package amount

import (
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
)

// shares shares out the amounts of entries over faces and panels. It keeps
// what it has reckoned: an entry may name thousands of panels.
type shares struct {
	w     *record.Workshop
	areas map[*record.Panel]area
	took  map[took]taken
}

// area is what a panel measures in mm², 0 where it is not known.
type area struct{ face, edges float64 }

type took struct {
	p   *record.Panel
	seq int64
}

type taken struct {
	amount amount
	why    record.Said
}

func newShares(w *record.Workshop) *shares {
	return &shares{w, map[*record.Panel]area{}, map[took]taken{}}
}

// spread estimates a wet film from the amount laid.
func (s *shares) spread(p *record.Panel, l record.Layer) (microns float64, why record.Said) {
	a, why := s.amount(p, l.Seq)
	if why.Code != "" {
		return 0, why
	}
	all := s.weighed(p, l.Seq)
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
	share := 1.0
	if l.Extra {
		share = extraShare
	}
	microns, err := measure.WetMicrons(volume*share, all)
	if err != nil {
		return 0, record.Say("film-out-of-range")
	}
	return microns, record.Said{}
}

// extraShare is how much more a face counts that was given extra.
const extraShare = 2

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
	e, c := application(p, seq)
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
		for _, n := range e.Panels {
			q := s.w.Panel(n)
			if q == nil {
				return amount{}, record.Say("amount-shared-with-absent", record.With("panel", n))
			}
			if n == p.Number {
				q = p
			}
			if _, c := application(q, seq); c == nil {
				continue // withdrawn for that panel
			}
			a := s.weighed(q, seq)
			if a == 0 {
				return amount{}, record.Say("amount-shared-without-size", record.With("panel", n))
			}
			all += a
		}
		share = s.weighed(p, seq) / all
	}
	return amount{float64(mg) * share, float64(ul) * share}, record.Said{}
}

// application returns an entry as it stands for a panel, and its coating; nil
// where there is none.
func application(p *record.Panel, seq int64) (record.Event, *record.Coating) {
	e, ok := p.Event(seq)
	if !ok {
		return e, nil
	}
	switch b := e.Body.(type) {
	case record.Coat:
		return e, &b.Coating
	case record.ClothLaid:
		return e, &b.Coating
	case record.PaintLayer:
		return e, &b.Coating
	case record.Varnish:
		return e, &b.Coating
	}
	return e, nil
}

// weighed is the area in mm² over which an entry was spread on a panel, faces
// that were given extra counting twice; 0 where it is not known.
func (s *shares) weighed(p *record.Panel, seq int64) float64 {
	e, _ := application(p, seq)
	faces, extra := facesOf(e.Body)
	var all float64
	for _, f := range faces {
		a := s.face(p, f)
		if a == 0 {
			return 0
		}
		if slices.Contains(extra, f) {
			a *= extraShare
		}
		all += a
	}
	return all
}

// facesOf returns the faces of a wet application and those given extra. A
// painting without faces is on the front.
func facesOf(b record.Body) (faces, extra []record.Face) {
	switch b := b.(type) {
	case record.Coat:
		return b.Faces, b.Extra
	case record.ClothLaid:
		return b.Faces, nil
	case record.PaintLayer:
		faces = b.Faces
	case record.Varnish:
		faces = b.Faces
	}
	if len(faces) == 0 {
		faces = []record.Face{record.Front}
	}
	return faces, nil
}

// face is the area of a face in mm²; 0 where it is not known.
func (s *shares) face(p *record.Panel, f record.Face) float64 {
	a, known := s.areas[p]
	if !known {
		h, ok1 := p.Size().Height.Micrometers()
		b, ok2 := p.Size().Width.Micrometers()
		if ok1 && ok2 {
			a.face = float64(h) * float64(b) / 1e6
			if d, ok := BoardMicrons(s.w, p); ok {
				a.edges = 2 * float64(h+b) * d / 1e6
			}
		}
		s.areas[p] = a
	}
	if f == record.Edges {
		return a.edges
	}
	return a.face
}
