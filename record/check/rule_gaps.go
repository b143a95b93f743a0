package check

import (
	"slices"
)

var gaps = Rule{
	Name:     "gaps",
	Source:   "AIC Code of Ethics, commentary 24 on documentation; Object ID",
	Severity: Information,
	judge:    judgeGaps,
}

func judgeGaps(s *subject) []verdict {
	var vs []verdict
	for _, g := range s.w.Gaps(s.p) {
		said := g.Say()
		v := say(NotRecorded, []int64{g.Seq}, said.Code, said.Values...)
		if !slices.ContainsFunc(vs, func(x verdict) bool { return same(x.said, v.said) }) {
			vs = append(vs, v)
		}
	}
	if len(vs) == 0 {
		return one(Holds, []int64{s.cut.Seq}, "no-gap")
	}
	return vs
}
