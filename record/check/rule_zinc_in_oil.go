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
