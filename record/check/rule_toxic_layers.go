package check

import (
	"slices"

	"backleaf/record"
)

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
