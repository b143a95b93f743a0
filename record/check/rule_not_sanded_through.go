package check

import (
	"slices"

	"backleaf/record"
)

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
