package check

import (
	"slices"

	"backleaf/record"
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
		free := record.Answer(record.Unknown)
		switch {
		case slices.ContainsFunc(s.pigments(f), func(p record.Pigment) bool { return isOneOf(p, []string{"PW4", "PW5"}, []string{"zinc"}) }):
			free = record.No
		case s.allTold(f):
			free = record.Yes
		}
		o := outcome(oil, free)
		vs = append(vs, say(o, filmSeqs(f), "no-zinc"+suffix[o], what(f)))
	}
	return orNone(vs, "no-oil-layer")
}

var toxicLayers = Rule{
	Name:     "toxic-layers",
	Source:   "OSHA limits for lead (50 µg/m³); habits: common practice; Colour Index names from memory",
	Severity: Warning,
	judge:    judgeToxic,
}

var toxicIndexes = []string{"PW1", "PW2", "PW16", "PY34", "PY35", "PY36", "PY37", "PY39", "PY41", "PY46", "PY31", "PY32", "PY33",
	"PO20", "PO21", "PO23", "PO45", "PR103", "PR104", "PR105", "PR106", "PR107", "PR108", "PR113", "PG21", "PG22", "PV49", "PW11", "PBK12"}

var toxicWords = []string{"lead", "flake white", "cremnitz", "cadmium", "naples yellow", "chrome yellow", "vermilion", "cinnabar",
	"orpiment", "realgar", "emerald green", "schweinfurt", "strontium yellow", "zinc yellow", "barium yellow", "antimony", "red minium", "minium"}

func judgeToxic(s *subject) []verdict {
	var vs []verdict
	for _, f := range s.films {
		if isCloth(f) {
			continue
		}
		at := filmSeqs(f)
		ms, known := s.parts(f)
		harmless := known && !slices.ContainsFunc(ms, func(m record.Material) bool { return m.Toxic != record.No })
		harmful := slices.ContainsFunc(ms, func(m record.Material) bool { return m.Toxic == record.Yes })
		ps := s.pigments(f)
		named := slices.IndexFunc(ps, func(p record.Pigment) bool { return isOneOf(p, toxicIndexes, toxicWords) })
		switch {
		case named >= 0:
			vs = append(vs, say(FallsShort, at, "holds-pigment", what(f), record.With("pigment", ps[named].Name)))
		case harmful:
			vs = append(vs, say(FallsShort, at, "harmful", what(f)))
		case harmless || isPaint(f) && s.allTold(f):
			vs = append(vs, say(Holds, at, "harmless", what(f)))
		default:
			vs = append(vs, say(NotRecorded, at, "harmful-open", what(f)))
		}
	}
	return orNone(vs, "no-layer")
}
