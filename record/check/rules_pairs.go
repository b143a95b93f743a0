package check

import (
	"backleaf/record"
)

var acrylicOverOil = Rule{
	Name:     "acrylic-over-oil",
	Source:   "a magazine's answer to painters; US Navy manual 14262, p. 1-54",
	Severity: Warning,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			applies := all(p.direct, s.isOil(p.below))
			o := outcome(applies, not(s.isAcrylic(p.above)))
			return say(o, nil, "no-acrylic-over-oil"+suffix[o], p.names()...), applies != record.No && !isVarnish(p.above)
		}), "nothing-over-oil")
	},
}

var paintOverVarnish = Rule{
	Name:     "paint-over-varnish",
	Source:   "a paint maker's technical note on oil over varnish",
	Severity: Warning,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			if !isVarnish(p.below) || !isPaint(p.above) {
				return verdict{}, false
			}
			o := outcome(p.over, not(s.removable(p.below)))
			return say(o, nil, "no-paint-over-varnish"+suffix[o], p.names()...), true
		}), "no-paint-over-varnish")
	},
}

var oilOnGlossyAcrylic = Rule{
	Name:     "oil-on-glossy-acrylic",
	Source:   "MITRA, answer QID 54",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			applies := all(p.direct, s.isOil(p.above), s.isAcrylic(p.below))
			o := outcome(applies, some(word(s.gloss(p.below), "matt", "satin"), s.thin(p.below), s.sandedBetween(p)))
			return say(o, nil, "oil-on-tooth"+suffix[o], p.names()...), applies != record.No
		}), "no-oil-over-acrylic")
	},
}

// thin answers whether a paint is recorded as thin; of coats nothing is.
func (s *subject) thin(f Film) record.Answer {
	if isPaint(f) {
		return word(f.Layer.Paint.Film, "thin")
	}
	return record.No
}

// gloss is the sheen of a layer: as recorded for it, or the glossiest of its
// materials; empty where one is not known.
func (s *subject) gloss(f Film) record.Gloss {
	if isPaint(f) && f.Layer.Paint.Gloss != "" {
		return f.Layer.Paint.Gloss
	}
	ms, known := s.parts(f)
	if !known {
		return ""
	}
	order := []record.Gloss{"", record.Unknown, "gloss", "satin", "matt"}
	least := len(order) - 1
	for _, m := range ms {
		least = min(least, rank(order, m.Gloss))
	}
	return order[least]
}

// sandedBetween answers whether the lower layer was sanded before the upper.
func (s *subject) sandedBetween(p pair) record.Answer {
	out := record.Answer(record.No)
	for _, sand := range record.Each[record.Sanded](s.p) {
		for _, f := range sand.Body.Faces {
			if f == p.above.Layer.Face {
				out = some(out, all(before(p.below.Layer.At, sand.At), before(sand.At, p.above.Layer.At)))
			}
		}
	}
	return some(out, s.unless())
}

var sizeBeforeOil = Rule{
	Name:     "size-before-oil",
	Source:   "Padfield, Stress, strain and craquelure 7",
	Severity: Warning,
	judge:    judgeSizeBeforeOil,
}

func judgeSizeBeforeOil(s *subject) []verdict {
	return orNone(s.each(true, func(p pair) (verdict, bool) {
		applies := all(p.over, s.isOil(p.above))
		if !isCloth(p.below) || applies == record.No || isVarnish(p.above) {
			return verdict{}, false
		}
		m, _ := s.w.Material(p.below.Layer.Cloth.Cloth, p.below.Layer.Cloth.ClothAs)
		sized := m.Cloth.Sized
		for _, f := range s.on(p.below.Layer.Face) {
			if !isCoat(f) {
				continue
			}
			oilFree := not(s.isOil(f))
			if f.Layer.Seq == p.below.Layer.Seq { // its adhesive
				sized = some(sized, all(p.below.Layer.Cloth.WetThrough, oilFree))
				continue
			}
			sized = some(sized, all(oilFree, s.lay(p.below, f), s.lay(f, p.above)))
		}
		o := outcome(applies, sized)
		return say(o, nil, "cloth-sized"+suffix[o], what(p.above)), true
	}), "no-oil-over-cloth")
}

var fatOverLean = Rule{
	Name:     "fat-over-lean",
	Source:   "MITRA, thread on oil over acrylic ground; common practice",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			if !isPaint(p.above) || !isPaint(p.below) {
				return verdict{}, false
			}
			applies := all(p.direct, s.isOil(p.above), s.isOil(p.below))
			faster := all(s.has(p.above, record.Alkyd), s.has(p.below, record.DryingOil))
			o := outcome(applies, all(word(p.above.Layer.Paint.Oil, "same", "fat"), not(faster)))
			return say(o, nil, "fat-over-lean"+suffix[o], p.names()...), applies != record.No
		}), "no-two-oil-layers")
	},
}

var groundDryBeforeOil = Rule{
	Name:     "ground-dry-before-oil",
	Source:   "MITRA, answer QID 351 (acrylic ground 72 hours at least, two weeks better, a month best; oil ground 6 to 12 months)",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			applies := all(p.direct, isGround(p.below), s.isOil(p.above))
			return s.dried(p, applies, groundWaits), isPaint(p.above) && applies != record.No
		}), "no-oil-over-ground")
	},
}

var varnishWaiting = Rule{
	Name:     "varnish-waiting",
	Source:   "note on waiting before varnishing (6 to 12 months for oil, in print since at least 1926); acrylic: common practice",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return orNone(s.each(false, func(p pair) (verdict, bool) {
			return s.dried(p, p.over, varnishWaits), isPaint(p.below) && isVarnish(p.above)
		}), "no-varnished-paint")
	},
}
