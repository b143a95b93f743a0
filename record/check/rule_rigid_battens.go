package check

import (
	"slices"

	"backleaf/record"
)

var rigidBattens = Rule{
	Name:     "rigid-battens",
	Source:   "The Structural Conservation of Panel Paintings (Getty 1998)",
	Severity: Information,
	judge:    judgeBattens,
}

// judgeBattens judges the bracing as it is today; where the dates do not tell
// which was fixed last, all that may be.
func judgeBattens(s *subject) []verdict {
	var vs []verdict
	for _, b := range last(each[record.Braced](s)) {
		o := outcome(record.Yes, some(word(b.Body.Fixing, "sliding"), word(b.Body.Run, "along-grain")))
		v := say(o, []int64{b.Seq}, "bracing-moves"+suffix[o])
		if s.board().Kind == record.SolidWood {
			v.severity = Warning // it moves far more than a board
		}
		vs = append(vs, v)
	}
	if len(vs) > 1 && slices.ContainsFunc(vs, func(v verdict) bool { return v.outcome != vs[0].outcome }) {
		return one(NotRecorded, seqs(each[record.Braced](s)), "bracing-moves-open")
	}
	return orNone(vs, "not-braced")
}
