package check

import (
	"slices"
	"strings"

	"backleaf/record"
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
func (s *subject) seals(f Film) record.Answer {
	switch {
	case s.w.Seals(f.Layer):
		return record.Yes
	case f.Layer.Purpose == "other" && isCoat(f):
		return record.Unknown
	}
	return all(laidAs(f, record.Sizing, record.Sealer, record.Adhesive, record.StainBlock, record.Isolation, record.Barrier))
}

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

var mediumBinder = map[record.PaintMedium]record.Binder{
	record.Oil: record.DryingOil, record.WaterMixableOil: record.DryingOil, record.AlkydPaint: record.Alkyd,
	record.AcrylicPaint: record.Acrylic, record.VinylPaint: record.PVA, record.EggTempera: record.Egg,
	record.CaseinPaint: record.Casein, record.Gouache: record.Gum, record.Watercolour: record.Gum, record.Encaustic: record.Wax,
}

// binders lists what holds a layer together, and whether that is all of it. A
// paint is known by its medium where its materials are not.
func (s *subject) binders(f Film) (bs []record.Binder, known bool) {
	if isPaint(f) {
		if b := mediumBinder[f.Layer.Paint.Medium]; b != "" {
			return []record.Binder{b}, true
		}
	}
	if isCloth(f) || len(f.Layer.Coating.Mix) == 0 {
		return nil, false
	}
	known = true
	for _, part := range f.Layer.Coating.Mix {
		m, _ := s.w.Material(part.Material, part.As)
		if m.Binder == "" || m.Binder == record.Unknown {
			known = false
		} else if !slices.Contains(bs, m.Binder) {
			bs = append(bs, m.Binder)
		}
	}
	return bs, known
}

// has answers whether a layer contains one of some binders.
func (s *subject) has(f Film, want ...record.Binder) record.Answer {
	bs, known := s.binders(f)
	switch {
	case slices.ContainsFunc(bs, func(b record.Binder) bool { return slices.Contains(want, b) }):
		return record.Yes
	case known:
		return record.No
	}
	return record.Unknown
}

func (s *subject) isOil(f Film) record.Answer     { return s.has(f, record.DryingOil, record.Alkyd) }
func (s *subject) isAcrylic(f Film) record.Answer { return s.has(f, record.Acrylic) }

// waterborne answers whether the films of a layer form from water. Size of
// glue, gum or starch gels or dries without a lowest temperature and is left
// out.
func (s *subject) waterborne(f Film) record.Answer { return s.has(f, record.Acrylic, record.PVA) }

// parts returns the materials of a layer that the shelf describes, and whether
// those are all.
func (s *subject) parts(f Film) (ms []record.Material, known bool) {
	if isCloth(f) {
		return nil, false
	}
	known = len(f.Layer.Coating.Mix) > 0
	for _, part := range f.Layer.Coating.Mix {
		m, ok := s.w.Material(part.Material, part.As)
		if !ok {
			known = false
			continue
		}
		ms = append(ms, m)
	}
	return ms, known
}

// pigments lists the colourants of a layer as recorded for it and for its
// materials.
func (s *subject) pigments(f Film) []record.Pigment {
	var ps []record.Pigment
	if isPaint(f) {
		ps = append(ps, f.Layer.Paint.Pigments...)
	}
	ms, _ := s.parts(f)
	for _, m := range ms {
		ps = append(ps, m.Pigments...)
	}
	return ps
}

// told reports that a pigment can be recognised without doubt: by its Colour
// Index name. A name in words ("mixing white") may hide several.
func told(p record.Pigment) bool { return p.Index != "" && p.Index != record.Unknown }

// allTold reports that the colourants of a layer are recorded so that nothing
// can hide among them: for a paint its own list, for a coat those of all its
// materials.
func (s *subject) allTold(f Film) bool {
	ps := s.pigments(f)
	if len(ps) == 0 || slices.ContainsFunc(ps, func(p record.Pigment) bool { return !told(p) }) {
		return false
	}
	if isPaint(f) && len(f.Layer.Paint.Pigments) > 0 {
		return true
	}
	ms, known := s.parts(f)
	return known && !slices.ContainsFunc(ms, func(m record.Material) bool { return len(m.Pigments) == 0 })
}

// isOneOf reports that a pigment has one of the Colour Index names, or a name
// that contains one of the words.
func isOneOf(p record.Pigment, indexes, words []string) bool {
	index := strings.ToUpper(strings.ReplaceAll(p.Index, " ", ""))
	index, _, _ = strings.Cut(index, ":")
	name := strings.ToLower(p.Name)
	return slices.Contains(indexes, index) || slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, w) })
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
