package check

import (
	"backleaf/record"
	"backleaf/record/measure"
)

var clothTension = Rule{
	Name:     "cloth-tension",
	Title:    "The board is stiff enough for the pull of the cloth.",
	Reason:   "Cloth laid wet shrinks as it dries and pulls one face. A thin board gives way; cloth on the back is not needed where the board is stiff.",
	Source:   "MITRA, answer on mounting paper and cloth (fabric shrinks on drying); pull of the cloth from memory of usual tensions of canvas on a stretcher",
	Severity: Advice,
	Judged:   "The bow that the cloth alone could cause over the longer side: under 0.2 % of the span holds, over 0.5 % is a warning (common practice, beside one case that a conservator called very minor at 0.20 to 0.26 %).",
	Remedy:   "Measure the bow with a straightedge. A further coat or a cloth on the back, or a brace, brings it down.",
	Judge:    judgeClothTension,
}

func judgeClothTension(s *Subject) []Verdict {
	cloths := filter(s.Films, isCloth)
	n := 0
	for _, f := range cloths {
		switch f.Layer.Face {
		case record.Front:
			n++
		case record.Back:
			n--
		}
	}
	if len(cloths) == 0 {
		return one(NotApplicable, nil, "no cloth is laid")
	}
	if n == 0 {
		return one(NotApplicable, nil, "cloth on both faces pulls against itself")
	}
	entries := append(filmSeqs(cloths), s.Cut.Seq)
	b, err := s.bow(isCloth)
	switch {
	case err != nil:
		return one(NotRecorded, entries, "%v", err)
	case b.Grade == measure.BowSlight:
		return one(Holds, entries, "%s", b)
	case b.Grade == measure.BowStrong:
		return []Verdict{verdict(FallsShort, entries, "%s", b).at(Warning)}
	}
	return one(FallsShort, entries, "%s", b)
}
