package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

// isPaint, isVarnish, isCloth and isCoat tell the layers of a face apart. The
// adhesive that a cloth is laid into is a coat.
func isPaint(f Film) bool   { return f.Layer.Paint != nil }
func isVarnish(f Film) bool { return f.Layer.Varnish != nil }
func isCloth(f Film) bool   { return f.Layer.Cloth != nil }
func isCoat(f Film) bool    { return !isPaint(f) && !isVarnish(f) && !isCloth(f) }

// laidAs answers whether a layer is a coat for one of some purposes.
func laidAs(f Film, purposes ...record.Purpose) record.Answer {
	switch {
	case !isCoat(f):
		return record.No
	case f.Layer.Purpose == "" || f.Layer.Purpose == record.Unknown:
		return record.Unknown
	}
	return is(slices.Contains(purposes, f.Layer.Purpose))
}

func isGround(f Film) record.Answer { return laidAs(f, record.Ground) }

// seals answers whether a coat closes the face it lies on. A ground is no
// sealer.
func (s *subject) seals(f Film) record.Answer { return s.made(f).Seals() }

func filter(films []Film, keep func(Film) bool) []Film {
	var out []Film
	for _, f := range films {
		if keep(f) {
			out = append(out, f)
		}
	}
	return out
}

// lay answers whether one layer was laid before another. Those of one entry
// lie as they are listed: the adhesive under its cloth.
func (s *subject) lay(a, b Film) record.Answer {
	if a.Layer.Seq == b.Layer.Seq {
		return is(isCoat(a) && isCloth(b))
	}
	return before(a.Layer.At, b.Layer.At)
}

// made is a layer with the materials it was made of.
func (s *subject) made(f Film) trade.Made { return trade.Of(s.w, f.Layer) }

// binders lists what holds a layer together, and whether that is all of it.
func (s *subject) binders(f Film) (bs []record.Binder, known bool) { return s.made(f).Binders() }

// has answers whether a layer contains one of some binders.
func (s *subject) has(f Film, want ...record.Binder) record.Answer {
	return s.made(f).Contains(want...)
}

func (s *subject) isOil(f Film) record.Answer     { return s.made(f).IsOil() }
func (s *subject) isAcrylic(f Film) record.Answer { return s.has(f, record.Acrylic) }

// waterborne answers whether the film of a layer fuses from particles in water.
func (s *subject) waterborne(f Film) record.Answer {
	bs, known := s.binders(f)
	out := record.Answer(record.No)
	for _, b := range bs {
		out = some(out, trade.Fuses(b))
	}
	if !known {
		out = some(out, record.Unknown)
	}
	return out
}

// parts returns the materials of a layer that the shelf describes, and whether
// those are all.
func (s *subject) parts(f Film) (ms []record.Material, known bool) {
	m := s.made(f)
	return m.Materials, m.All && !isCloth(f)
}

// removable answers for a varnish: as recorded with it, or with its materials,
// of which one that stays makes all stay.
func (s *subject) removable(f Film) record.Answer {
	if r := f.Layer.Varnish.Removable; r != "" {
		return r
	}
	ms, known := s.parts(f)
	answers := []record.Answer{}
	for _, m := range ms {
		answers = append(answers, m.Removable)
	}
	if !known {
		answers = append(answers, record.Unknown)
	}
	return all(answers...)
}

// what is what a finding calls a layer.
func what(f Film) record.Value {
	switch {
	case isCloth(f):
		return record.With("layer", record.Code("cloth"))
	case isPaint(f):
		return record.With("layer", record.Code("paint"))
	case isVarnish(f):
		return record.With("layer", record.Code("varnish"))
	case f.Layer.Purpose == "" || f.Layer.Purpose == record.Unknown || f.Layer.Purpose == "other":
		return record.With("layer", record.Code("coat"))
	}
	return record.With("layer", f.Layer.Purpose)
}
