package check

import "backleaf/record"

var wetThrough = Rule{
	Name:     "wet-through",
	Title:    "The cloth is wetted through from above.",
	Reason:   "Only a saturated cloth lies without air under it, and only a saturated weave is locked by the cured film, so that light sanding does not cut it.",
	Source:   "common practice",
	Severity: Warning,
	Judged:   "By what was recorded when each cloth was laid.",
	Remedy:   "Tap the cloth for hollow spots. Another thin coat of the sealer, worked in until it soaks through, can still lock the weave; a hollow has to be relaid.",
	Judge: func(s *Subject) []Verdict {
		return s.cloths(func(c record.ClothLaid) (record.Answer, string) { return c.WetThrough, "wetted through" })
	},
}
