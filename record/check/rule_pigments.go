package check

import (
	"slices"

	"backleaf/record"
)

var zincInOil = Rule{
	Name:     "zinc-in-oil",
	Title:    "There is no zinc white in the oil layers.",
	Reason:   "Zinc oxide makes an oil film brittle and lets layers part, years later. In acrylic it does no harm.",
	Source:   "MITRA, answer QID 688",
	Severity: Advice,
	Judged:   "Pigments recorded for each oil layer and for its materials (PW 4, PW 5, or a name with zinc). Names without a Colour Index name settle nothing: a mixed white may hold zinc.",
	Remedy:   "Keep the panel flat and out of changing climate, and leave the note in the record for a conservator.",
	Judge:    judgeZinc,
}

func judgeZinc(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range s.Films {
		if isCloth(f) || isVarnish(f) {
			continue
		}
		oil := s.isOil(f)
		if oil == record.No {
			continue
		}
		at := []int64{f.Layer.Seq}
		ps := s.pigments(f)
		zinc := slices.ContainsFunc(ps, func(p record.Pigment) bool { return isOneOf(p, []string{"PW4", "PW5"}, []string{"zinc"}) })
		switch {
		case oil == record.Unknown && zinc:
			vs = append(vs, verdict(NotRecorded, at, "the %s holds zinc white: whether it is oil", name(f)))
		case oil == record.Unknown && (isPaint(f) || isGround(f)):
			vs = append(vs, verdict(NotRecorded, at, "whether the %s is oil", name(f)))
		case oil == record.Unknown:
		case zinc:
			vs = append(vs, verdict(FallsShort, at, "the %s is oil with zinc white", name(f)))
		case s.allTold(f):
			vs = append(vs, verdict(Holds, at, "no zinc white in the %s", name(f)))
		default:
			vs = append(vs, verdict(NotRecorded, at, "all pigments of the %s, by Colour Index name", name(f)))
		}
	}
	return orNone(vs, "there is no oil layer")
}

// allTold reports that the colourants of a layer are recorded so that nothing
// can hide among them: for a paint its own list, for a coat those of all its
// materials.
func (s *Subject) allTold(f Film) bool {
	ps := s.pigments(f)
	if len(ps) == 0 || slices.ContainsFunc(ps, func(p record.Pigment) bool { return !told(p) }) {
		return false
	}
	if isPaint(f) && len(f.Layer.Paint.Pigments) > 0 {
		return true
	}
	ms, all := s.parts(f)
	return all && !slices.ContainsFunc(ms, func(m record.Material) bool { return len(m.Pigments) == 0 })
}

var toxicLayers = Rule{
	Name:     "toxic-layers",
	Title:    "No layer is harmful to whoever sands or cleans the panel later.",
	Reason:   "Lead, cadmium and other toxic pigments stay in the film. Dust from them harms the next person who does not know.",
	Source:   "OSHA limits for lead (50 µg/m³); habits: common practice",
	Severity: Warning,
	Judged:   "Each material's own statement (harmful when dry), and Colour Index names of lead, cadmium, cobalt-arsenic, chromate, mercury, antimony and arsenic pigments (list from memory of the Colour Index). It holds only where every layer says so.",
	Remedy:   "Never dry-sand, never spray; wet methods, gloves and mask. The label should carry the warning.",
	Judge:    judgeToxic,
}

var toxicIndexes = []string{"PW1", "PW2", "PW16", "PY34", "PY35", "PY36", "PY37", "PY39", "PY41", "PY46", "PY31", "PY32", "PY33",
	"PO20", "PO21", "PO23", "PO45", "PR103", "PR104", "PR105", "PR106", "PR107", "PR108", "PR113", "PG21", "PG22", "PV49", "PW11", "PBK12"}

var toxicWords = []string{"lead", "flake white", "cremnitz", "cadmium", "naples yellow", "chrome yellow", "vermilion", "cinnabar",
	"orpiment", "realgar", "emerald green", "schweinfurt", "strontium yellow", "zinc yellow", "barium yellow", "antimony", "red minium", "minium"}

func judgeToxic(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range s.Films {
		if isCloth(f) {
			continue
		}
		at := []int64{f.Layer.Seq}
		ms, all := s.parts(f)
		harmless := all && !slices.ContainsFunc(ms, func(m record.Material) bool { return m.Toxic != record.No })
		harmful := slices.ContainsFunc(ms, func(m record.Material) bool { return m.Toxic == record.Yes })
		named := slices.IndexFunc(s.pigments(f), func(p record.Pigment) bool { return isOneOf(p, toxicIndexes, toxicWords) })
		switch {
		case named >= 0:
			vs = append(vs, verdict(FallsShort, at, "the %s holds %s", name(f), s.pigments(f)[named].Name))
		case harmful:
			vs = append(vs, verdict(FallsShort, at, "the %s is harmful when sanded or cleaned", name(f)))
		case harmless || isPaint(f) && !harmful && s.allTold(f):
			vs = append(vs, verdict(Holds, at, "nothing harmful in the %s", name(f)))
		default:
			vs = append(vs, verdict(NotRecorded, at, "whether the %s is harmful when dry", name(f)))
		}
	}
	return orNone(vs, "no layer is laid yet")
}
