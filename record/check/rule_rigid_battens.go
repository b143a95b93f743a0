package check

import "backleaf/record"

var rigidBattens = Rule{
	Name:     "rigid-battens",
	Title:    "Battens and cradles across the grain let the board move.",
	Reason:   "Held rigid across the grain, wood that wants to shrink is torn, and wood that wants to swell buckles.",
	Source:   "The Structural Conservation of Panel Paintings (Getty 1998)",
	Severity: Information,
	Judged:   "Bracing across the grain must slide. It is a warning on solid wood and a note on boards, which move less.",
	Remedy:   "Free the battens from the glue and let them slide in slots or under clips.",
	Judge:    judgeBattens,
}

func judgeBattens(s *Subject) []Verdict {
	var vs []Verdict
	for _, b := range record.Each[record.Braced](s.Panel) {
		at := []int64{b.Seq}
		switch {
		case b.Body.Fixing == "sliding":
			vs = append(vs, verdict(Holds, at, "the bracing slides"))
		case b.Body.Run == "along-grain":
			vs = append(vs, verdict(Holds, at, "the bracing runs along the grain"))
		case b.Body.Fixing == "rigid" && b.Body.Run == "across-grain":
			v := verdict(FallsShort, at, "the bracing is rigid across the grain")
			if s.board().Kind == record.SolidWood {
				v.Severity = Warning
			}
			vs = append(vs, v)
		default:
			vs = append(vs, verdict(NotRecorded, at, "how the bracing is fixed and which way it runs"))
		}
	}
	return orNone(vs, "the panel is not braced")
}
