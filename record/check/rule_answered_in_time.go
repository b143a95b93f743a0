package check

import (
	"slices"

	"backleaf/record"
)

var answeredInTime = Rule{
	Name:     "answered-in-time",
	Title:    "A coat is answered on the other face the same day, or at least before the next coat.",
	Reason:   "While only one face carries the wet and shrinking film the board takes a set that later coats do not fully undo.",
	Source:   "common practice",
	Severity: Advice,
	Judged:   "The first coat of one face goes with the first of the other, the second with the second. Each pair holds when it was laid within 24 hours, or before anything further was laid on the face that was ahead. Only dated coats can be judged.",
	Remedy:   "Nothing to undo: check the panel for bow with a straightedge before you go on, and answer the next coat the same day.",
	Judge:    judgeAnsweredInTime,
}

func judgeAnsweredInTime(s *Subject) []Verdict {
	front, back := filter(s.on(record.Front), isCoat), filter(s.on(record.Back), isCoat)
	var vs []Verdict
	for i := range min(len(front), len(back)) {
		first, answer := front[i], back[i]
		if s.place(answer.Layer.Seq) < s.place(first.Layer.Seq) {
			first, answer = answer, first
		}
		entries := filmSeqs([]Film{first, answer})
		// Which coat answers which, and what lay between, hangs on all of them.
		all := filmSeqs(slices.Concat([]Film{first, answer}, s.on(record.Front), s.on(record.Back)))
		least, most, ok := elapsed(first.Layer.At, answer.Layer.At)
		switch {
		case first.Layer.Seq == answer.Layer.Seq:
			vs = append(vs, verdict(Holds, entries, "both faces in one go"))
		case !ok:
			vs = append(vs, verdict(NotRecorded, all, "when the %s or its answer was laid", name(first)))
		case most <= day:
			vs = append(vs, verdict(Holds, entries, "the %s was answered within a day", name(first)))
		case s.beforeNext(first, answer):
			vs = append(vs, verdict(Holds, entries, "the %s was answered before the next layer", name(first)))
		case least > day:
			vs = append(vs, verdict(FallsShort, entries, "the %s was answered only %s later, after the next layer", name(first), days(least)))
		default:
			vs = append(vs, verdict(NotRecorded, all, "the %s: the dates are not exact enough", name(first)))
		}
	}
	if len(vs) == 0 {
		return one(NotApplicable, nil, "no coat is answered yet")
	}
	return vs
}

// beforeNext reports that nothing but a cloth went onto the leading face
// between its coat and the answer to it.
func (s *Subject) beforeNext(first, answer Film) bool {
	for _, f := range s.on(first.Layer.Face) {
		if at := s.place(f.Layer.Seq); f.Layer.Seq != first.Layer.Seq && at > s.place(first.Layer.Seq) && at < s.place(answer.Layer.Seq) {
			return false
		}
	}
	return true
}
