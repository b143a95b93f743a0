package check

import "backleaf/record"

var backBarrier = Rule{
	Name:     "back-barrier",
	Source:   "MITRA, answer QID 431 on back coats",
	Severity: Advice,
	judge:    judgeBarrier,
}

func judgeBarrier(s *subject) []verdict {
	meant := s.p.Description().MeantFor
	mp, ok := meant.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "meant-for-open")
	}
	if mp <= 60_000 {
		return one(NotApplicable, nil, "meant-for-dry-air", record.With("meant", meant))
	}
	if s.facing() == "" {
		return one(NotApplicable, nil, "no-work")
	}
	face := opposite(s.facing())
	coats := filter(s.on(face), isCoat)
	barrier := record.Answer(record.No)
	for _, f := range coats {
		bs, known := s.binders(f)
		a := s.has(f, record.Shellac, record.Alkyd)
		if a == record.Yes && (!known || len(bs) > 1) {
			a = is(false) // thinned with what slows vapour less
		}
		barrier = some(barrier, a)
	}
	if len(coats) == 0 {
		barrier = s.unless()
	}
	o := outcome(record.Yes, barrier)
	return one(o, filmSeqs(coats...), "barrier"+suffix[o], record.With("face", face), record.With("meant", meant))
}
