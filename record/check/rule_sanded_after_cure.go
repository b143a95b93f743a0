package check

import "backleaf/record"

var sandedAfterCure = Rule{
	Name:     "sanded-after-cure",
	Title:    "Nothing is sanded before it is cured.",
	Reason:   "Dry is not cured: a soft film rolls up, clogs the paper and leaves the weave open. Warm air drives out water but hardens nothing.",
	Source:   "common practice (24 to 36 hours, longer in humid air)",
	Severity: Advice,
	Judged:   "From the last coat below to the sanding, against the time to cure that the material states, moved inside its window by the humidity recorded. Without a humidity the dampest air is assumed.",
	Remedy:   "Look for torn or bare threads. Let it cure, coat once more, and sand again when it is hard.",
	Judge:    judgeSandedCure,
}

func judgeSandedCure(s *Subject) []Verdict {
	var vs []Verdict
	for _, sand := range record.Each[record.Sanded](s.Panel) {
		for _, face := range sand.Body.Faces {
			below := filter(s.below(face, sand.Seq), isCoat)
			if len(below) == 0 {
				continue
			}
			last := below[len(below)-1]
			at := []int64{sand.Seq, last.Layer.Seq}
			notBefore, safeBy, why := s.cure(last)
			sanded1, ok1 := sand.At.Earliest()
			sanded2, ok2 := sand.At.Latest()
			switch {
			case why != "":
				vs = append(vs, verdict(NotRecorded, at, "%s", why))
			case !ok1 || !ok2:
				vs = append(vs, verdict(NotRecorded, at, "when the %s was sanded", face))
			case sanded2.Before(notBefore):
				vs = append(vs, verdict(FallsShort, at, "the %s was sanded %s before the %s could be cured", face, days(notBefore.Sub(sanded2)), name(last)))
			case sanded1.Before(safeBy):
				vs = append(vs, verdict(NotRecorded, at, "the %s was sanded inside the window in which the %s cures: whether it was hard", face, name(last)))
			default:
				vs = append(vs, verdict(Holds, at, "the %s was sanded after the %s had cured", face, name(last)))
			}
		}
	}
	return orNone(vs, "nothing was sanded over a coat")
}
