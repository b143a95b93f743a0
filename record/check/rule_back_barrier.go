package check

import "backleaf/record"

var backBarrier = Rule{
	Name:     "back-barrier",
	Title:    "A panel for a humid place has a vapour barrier on its back.",
	Reason:   "Water-borne films slow vapour less than solvent-borne ones. In damp air pigmented shellac or semi-gloss alkyd on the back keeps the board steadier.",
	Source:   "MITRA, answer QID 431 on back coats",
	Severity: Advice,
	Judged:   "Only for panels meant for more than 60 % RH: some coat on the face opposite the painting is shellac or alkyd.",
	Remedy:   "Lay a coat of pigmented shellac or alkyd over the cured back, or hang the panel in a drier room.",
	Judge:    judgeBarrier,
}

func judgeBarrier(s *Subject) []Verdict {
	mp, ok := s.Panel.Description().MeantFor.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "the humidity of the room the panel is meant for")
	}
	if mp <= 60_000 {
		return one(NotApplicable, nil, "the panel is meant for %s RH", s.Panel.Description().MeantFor)
	}
	facing := s.facing()
	if facing == "" {
		return one(NotApplicable, nil, "no face carries cloth or paint yet")
	}
	back := filter(s.on(opposite(facing)), isCoat)
	doubt := false
	for _, f := range back {
		switch s.has(f, record.Shellac, record.Alkyd) {
		case record.Yes:
			if s.binder(f) != mixed {
				return one(Holds, []int64{f.Layer.Seq}, "the back has a coat of %s", words(string(s.binder(f))))
			}
		case record.Unknown:
			doubt = true
		}
	}
	if doubt {
		return one(NotRecorded, filmSeqs(back), "what the back is coated with")
	}
	return one(FallsShort, filmSeqs(back), "meant for %s RH without a barrier on the back", s.Panel.Description().MeantFor)
}
