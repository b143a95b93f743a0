package check

import "backleaf/record"

// pair is one layer over another on the same face.
type pair struct {
	above, below Film
	over         record.Answer // whether it lies over it
	direct       record.Answer // with nothing between
}

// pairs lists what may lie over what on a face, coats, paints and varnishes;
// cloths too if asked for.
func (s *subject) pairs(face record.Face, withCloth bool) []pair {
	films := filter(s.on(face), func(f Film) bool { return withCloth || !isCloth(f) })
	var out []pair
	for i, below := range films {
		for j, above := range films {
			over := s.lay(below, above)
			if i == j || over == record.No {
				continue
			}
			direct := over
			for k, f := range films {
				if k != i && k != j {
					direct = all(direct, not(all(s.lay(below, f), s.lay(f, above))))
				}
			}
			out = append(out, pair{above, below, over, direct})
		}
	}
	return out
}

// each judges the pairs of both faces; judge gives false for one that the rule
// does not ask about.
func (s *subject) each(withCloth bool, judge func(pair) (verdict, bool)) []verdict {
	var vs []verdict
	for _, face := range faces {
		for _, p := range s.pairs(face, withCloth) {
			if v, ok := judge(p); ok {
				v.entries = append(filmSeqs(p.above, p.below), v.entries...)
				vs = append(vs, v)
			}
		}
	}
	return vs
}

// aboveBelow names the two layers of a pair.
func (p pair) names(more ...record.Value) []record.Value {
	below := what(p.below)
	below.Name = "below"
	return append([]record.Value{what(p.above), below}, more...)
}
