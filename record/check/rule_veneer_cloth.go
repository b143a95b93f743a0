package check

import (
	"slices"

	"backleaf/record"
)

var veneerCloth = Rule{
	Name:     "veneer-cloth",
	Title:    "Cloth lies between plywood and ground.",
	Reason:   "Fine checks in the veneer print through every ground laid straight on plywood; a cloth keeps them from showing.",
	Source:   "MITRA, answers QID 553 and 388, thread on birch plywood, Rigid Supports",
	Severity: Advice,
	Judged:   "On each face of a plywood board that has a ground: a cloth below the first ground.",
	Remedy:   "Before painting: sand the ground lightly, lay fine cloth over it and ground again. Later: keep the climate steady.",
	Judge:    judgeVeneer,
}

func judgeVeneer(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		if s.facing() != "" && face != s.facing() {
			continue // a ground on the back is there for balance
		}
		films := s.on(face)
		for i, f := range films {
			if !isGround(f) {
				continue
			}
			at := []int64{f.Layer.Seq, s.Cut.Seq}
			cloth := filter(films[:i], isCloth)
			under := films[:slices.IndexFunc(films, func(f Film) bool { return isCloth(f) || isGround(f) })]
			switch kind := s.board().Kind; {
			case kind == "" && len(cloth) == 0:
				vs = append(vs, verdict(NotRecorded, at, "the kind of board under the ground"))
			case kind != record.Plywood && kind != "":
				return one(NotApplicable, at, "the board is not plywood")
			case len(cloth) > 0 && kind == record.Plywood && slices.ContainsFunc(under, func(f Film) bool { return isCoat(f) && !purposeKnown(f) }):
				vs = append(vs, verdict(NotRecorded, append(at, filmSeqs(under)...), "whether the coat under the cloth is a ground"))
			case len(cloth) > 0 && kind == record.Plywood:
				vs = append(vs, verdict(Holds, append(at, cloth[0].Layer.Seq), "cloth lies under the ground"))
			case kind == "":
				vs = append(vs, verdict(NotRecorded, at, "the kind of board under the cloth"))
			default:
				vs = append(vs, verdict(FallsShort, at, "the ground lies on bare veneer"))
			}
			break
		}
	}
	return orNone(vs, "no ground is laid")
}
