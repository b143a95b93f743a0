package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
)

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

// below returns the layers of a face that were there before an entry.
func (s *Subject) below(face record.Face, seq int64) []Film {
	at := s.place(seq)
	return filter(s.on(face), func(f Film) bool { return s.place(f.Layer.Seq) < at })
}

var sandingGrit = Rule{
	Name:     "sanding-grit",
	Title:    "Nothing coarser than 150 touches the cloth.",
	Reason:   "Coarser grains reach through the film and cut threads. 150, 180 and 220 are usual.",
	Source:   "common practice; particle sizes from a chart of CAMI, P and micron grades",
	Severity: Warning,
	Judged:   "Scale and number of each sanding of a face that carries cloth, against P150; across the scales by mean particle size.",
	Remedy:   "Look for cut threads with a lens. Coat once more before priming; where the weave is cut, lay new cloth.",
	Judge:    judgeGrit,
}

func judgeGrit(s *Subject) []Verdict {
	var vs []Verdict
	for _, sand := range record.Each[record.Sanded](s.Panel) {
		over := slices.ContainsFunc(sand.Body.Faces, func(f record.Face) bool {
			return slices.ContainsFunc(s.below(f, sand.Seq), isCloth)
		})
		if !over {
			continue
		}
		at := []int64{sand.Seq}
		b := sand.Body
		coarse, err := measure.CoarserThan(measure.Abrasive{Scale: measure.GritScale(b.Scale), Grit: int(b.Grit)}, measure.Abrasive{Scale: measure.ScaleP, Grit: 150})
		switch {
		case b.Grit == 0 || b.Scale == "" || b.Scale == record.Unknown:
			vs = append(vs, verdict(NotRecorded, at, "with what the cloth was sanded"))
		case err != nil:
			vs = append(vs, verdict(NotRecorded, at, "how coarse %s %d is", b.Scale, b.Grit))
		case coarse:
			vs = append(vs, verdict(FallsShort, at, "sanded with %s %d", b.Scale, b.Grit))
		default:
			vs = append(vs, verdict(Holds, at, "sanded with %s %d", b.Scale, b.Grit))
		}
	}
	return orNone(vs, "no cloth was sanded")
}

var notSandedThrough = Rule{
	Name:     "not-sanded-through",
	Title:    "Sanding stays in the film.",
	Reason:   "Bare fibre or bare board drinks again: the seal is gone there, and oil can reach the cloth.",
	Source:   "common practice",
	Severity: Warning,
	Judged:   "By what was recorded with each sanding. A coat laid on the same face afterwards closes it again.",
	Remedy:   "Seal the bare places, let them cure, and go on from there.",
	Judge:    judgeSandedThrough,
}

func judgeSandedThrough(s *Subject) []Verdict {
	var vs []Verdict
	for _, sand := range record.Each[record.Sanded](s.Panel) {
		at := []int64{sand.Seq}
		switch sand.Body.Through {
		case record.No:
			vs = append(vs, verdict(Holds, at, "not sanded through"))
		case record.Yes:
			if mended := s.coatedAfter(sand); len(mended) > 0 {
				vs = append(vs, verdict(Holds, append(at, mended...), "sanded through and coated again"))
			} else {
				vs = append(vs, verdict(FallsShort, at, "sanded through to fibre or board, and not coated since"))
			}
		default:
			vs = append(vs, verdict(NotRecorded, at, "whether it was sanded through"))
		}
	}
	return orNone(vs, "nothing was sanded")
}

// coatedAfter returns the first coat on each sanded face after a sanding, or
// nothing if one of them got none.
func (s *Subject) coatedAfter(sand record.Done[record.Sanded]) []int64 {
	var out []int64
	for _, face := range sand.Body.Faces {
		i := slices.IndexFunc(s.on(face), func(f Film) bool {
			return isCoat(f) && purposeKnown(f) && f.Layer.Purpose != record.Ground && s.place(f.Layer.Seq) > s.place(sand.Seq)
		})
		if i < 0 {
			return nil
		}
		out = append(out, s.on(face)[i].Layer.Seq)
	}
	return out
}
