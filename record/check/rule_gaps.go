package check

import (
	"slices"
	"strings"
)

var gaps = Rule{
	Name:     "gaps",
	Title:    "A conservator finds all they would ask for.",
	Reason:   "Bought panels say nothing. What is not written down now cannot be asked in fifty years.",
	Source:   "AIC Code of Ethics, commentary 24 on documentation; Object ID",
	Severity: Information,
	Judged:   "What the record of the panel leaves open: support, coats with their lots and amounts, cloth, paint, varnish, identification.",
	Remedy:   "Write down what you still know; say unknown where you have looked and cannot learn it.",
	Judge:    judgeGaps,
}

func judgeGaps(s *Subject) []Verdict {
	var vs []Verdict
	var seen []string
	for _, g := range s.Workshop.Gaps(s.Panel) {
		text := string(g.Topic) + ": " + strings.ReplaceAll(strings.TrimPrefix(g.Said.Code, "gap-"), "-", " ")
		if !slices.Contains(seen, text) {
			seen = append(seen, text)
			vs = append(vs, verdict(NotRecorded, []int64{g.Seq}, "%s", text))
		}
	}
	if len(vs) == 0 {
		return one(Holds, []int64{s.Cut.Seq}, "nothing that a reader would miss")
	}
	return vs
}
