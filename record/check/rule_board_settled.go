package check

import (
	"time"

	"backleaf/record"
)

var boardSettled = Rule{
	Name:     "board-settled",
	Source:   "a board makers' note on controlling the moisture of MDF; two days as the least: own reading",
	Severity: Advice,
	judge:    judgeSettled,
}

func judgeSettled(s *subject) []verdict {
	at := []int64{s.cut.Seq}
	stood := s.cut.Body.Settled
	sec, ok := stood.Seconds()
	good := record.Answer(record.Unknown)
	if ok {
		good = is(time.Duration(sec)*time.Second >= 2*day)
	}
	switch o := outcome(not(s.isBoard(record.AluminiumComp)), good).evenSo(good); {
	case o == NotApplicable:
		return one(o, at, "board-takes-no-moisture")
	case o == NotRecorded:
		return one(o, at, "settled-open")
	default:
		return one(o, at, "settled"+suffix[o], record.With("time", stood))
	}
}
