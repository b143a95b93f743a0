package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
)

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
