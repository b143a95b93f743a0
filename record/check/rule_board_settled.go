package check

import (
	"time"

	"backleaf/record"
)

var boardSettled = Rule{
	Name:     "board-settled",
	Title:    "The board settles to the room before it is coated.",
	Reason:   "A board sealed while it is still taking up or giving off moisture moves under its coats. A single board needs a few days, the middle of a stack weeks.",
	Source:   "a board makers' note on controlling the moisture of MDF; two days as the least: own reading",
	Severity: Advice,
	Judged:   "By the time recorded that the board stood open in the workroom: 2 days or more.",
	Remedy:   "Check the panel for bow over the next weeks before it is framed.",
	Judge:    judgeSettled,
}

func judgeSettled(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	sec, ok := s.Cut.Body.Settled.Seconds()
	switch {
	case ok && time.Duration(sec)*time.Second >= 2*day:
		return one(Holds, at, "the board settled for %s", asRecorded(s.Cut.Body.Settled))
	case s.board().Kind == record.AluminiumComp:
		return one(NotApplicable, at, "the board takes up no moisture")
	case !ok:
		return one(NotRecorded, at, "how long the board settled to the room")
	}
	return one(FallsShort, at, "the board settled for %s only", asRecorded(s.Cut.Body.Settled))
}
