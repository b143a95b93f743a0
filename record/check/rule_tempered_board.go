package check

import "backleaf/record"

var temperedBoard = Rule{
	Name:     "tempered-board",
	Source:   "common practice; MITRA, threads on tempered hardboard (doubt about oil residue)",
	Severity: Advice,
	judge:    judgeTempered,
}

func judgeTempered(s *subject) []verdict {
	at := []int64{s.cut.Seq}
	c := s.cut.Body
	tempered := s.isBoard(record.TemperedHardboard)
	o := outcome(tempered, all(c.Degreased, c.Keyed))
	switch {
	case tempered == record.Unknown:
		return one(o, at, "board-kind-open")
	case o == FallsShort:
		return one(o, at, "tempered-not", record.With("degreased", c.Degreased), record.With("keyed", c.Keyed))
	}
	return one(o, at, "tempered"+suffix[o])
}
