package check

import "backleaf/record"

var rigidBattens = Rule{
	Name:     "rigid-battens",
	Source:   "The Structural Conservation of Panel Paintings (Getty 1998)",
	Severity: Information,
	judge:    judgeBattens,
}

func judgeBattens(s *subject) []verdict {
	var vs []verdict
	for _, b := range record.Each[record.Braced](s.p) {
		o := outcome(record.Yes, some(word(b.Body.Fixing, "sliding"), word(b.Body.Run, "along-grain")))
		v := say(o, []int64{b.Seq}, "bracing-moves"+suffix[o])
		if s.board().Kind == record.SolidWood {
			v.severity = Warning // it moves far more than a board
		}
		vs = append(vs, v)
	}
	return orNone(vs, "not-braced")
}
