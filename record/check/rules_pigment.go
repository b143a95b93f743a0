package check

import (
	"cmp"
	"slices"

	"backleaf/record"
	"backleaf/record/trade"
)

var zincInOil = Rule{
	Name:     "zinc-in-oil",
	Source:   "MITRA, answer QID 688",
	Severity: Advice,
	judge:    judgeZinc,
}

func judgeZinc(s *subject) []verdict {
	var vs []verdict
	for _, f := range s.films {
		oil := record.Answer(record.No)
		if isPaint(f) || isGround(f) != record.No {
			oil = s.isOil(f)
		}
		if oil == record.No {
			continue
		}
		m := s.made(f)
		zinc := trade.Among(m.Pigments(), oxide)
		if zinc == record.No && !m.Told() {
			zinc = record.Unknown
		}
		o := outcome(oil, not(zinc))
		code := "no-zinc" + suffix[o]
		if o == NotRecorded && m.Told() && oil == record.Yes {
			code = "zinc-form-open"
		}
		vs = append(vs, say(o, filmSeqs(f), code, what(f)))
	}
	return orNone(vs, "no-oil-layer")
}

var toxicLayers = Rule{
	Name:     "toxic-layers",
	Source:   "OSHA limits for lead (50 µg/m³); habits: common practice; Colour Index names from conservation literature and, for the greater part, from memory",
	Severity: Warning,
	judge:    judgeToxic,
}

func judgeToxic(s *subject) []verdict {
	var vs []verdict
	for _, f := range s.films {
		if isCloth(f) {
			continue
		}
		at := filmSeqs(f)
		d := trade.DangersOf([]trade.Made{s.made(f)})
		named := slices.IndexFunc(d.Found, func(x trade.Danger) bool {
			return x.Grave && x.Pigment != (record.Pigment{}) && x.Sure == (d.Harmful == record.Yes)
		})
		o := outcome(record.Yes, not(d.Harmful))
		switch {
		case o == FallsShort && named >= 0:
			vs = append(vs, say(o, at, "holds-pigment", what(f), record.With("pigment", called(d.Found[named].Pigment))))
		case o == FallsShort:
			vs = append(vs, say(o, at, "harmful", what(f)))
		case o == Holds:
			vs = append(vs, say(o, at, "harmless", what(f)))
		case named >= 0:
			vs = append(vs, say(o, at, "pigment-open", what(f), record.With("pigment", called(d.Found[named].Pigment))))
		default:
			vs = append(vs, say(o, at, "harmful-open", what(f)))
		}
	}
	return orNone(vs, "no-layer")
}

func oxide(p record.Pigment) record.Answer { return trade.HoldsZinc(p, trade.ZincOxide) }

// called is what a pigment is called: by its name, or else its index name.
func called(p record.Pigment) string { return cmp.Or(p.Name, p.Index) }
