package check

import "backleaf/record"

var temperedBoard = Rule{
	Name:     "tempered-board",
	Title:    "Tempered hardboard is degreased and keyed.",
	Reason:   "Tempering can leave oil at the surface, and the face is too smooth to hold a coat.",
	Source:   "common practice; MITRA, threads on tempered hardboard (doubt about oil residue)",
	Severity: Advice,
	Judged:   "Both answers recorded when the board was cut.",
	Remedy:   "Test adhesion at an edge with tape. If the film lifts, the panel has to be stripped, degreased and sanded.",
	Judge:    judgeTempered,
}

func judgeTempered(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	c := s.Cut.Body
	switch kind := s.board().Kind; {
	case kind == "":
		return one(NotRecorded, at, "the kind of board")
	case kind != record.TemperedHardboard:
		return one(NotApplicable, at, "the board is not tempered hardboard")
	case c.Degreased == record.No && c.Keyed == record.No:
		return one(FallsShort, at, "neither degreased nor keyed")
	case c.Degreased == record.No:
		return one(FallsShort, at, "not degreased")
	case c.Keyed == record.No:
		return one(FallsShort, at, "not keyed")
	case c.Degreased != record.Yes || c.Keyed != record.Yes:
		return one(NotRecorded, at, "whether the board was degreased and keyed")
	}
	return one(Holds, at, "degreased and keyed")
}
