package check

import "backleaf/record"

var veneerCloth = Rule{
	Name:     "veneer-cloth",
	Source:   "MITRA, answers QID 553 and 388, thread on birch plywood, Rigid Supports",
	Severity: Advice,
	judge:    judgeVeneer,
}

// judgeVeneer judges the face that carries the work: a ground on the other is
// there for balance.
func judgeVeneer(s *subject) []verdict {
	var vs []verdict
	for _, face := range faces {
		if s.facing() == "" || s.facing() == face {
			vs = append(vs, s.veneer(s.on(face))...)
		}
	}
	return orNone(vs, "no-ground")
}

func (s *subject) veneer(films []film) []verdict {
	grounded := record.Answer(record.No)
	var grounds, cloths []film
	for _, f := range films {
		if a := isGround(f); a != record.No {
			grounds, grounded = append(grounds, f), some(grounded, a)
		}
		if isCloth(f) {
			cloths = append(cloths, f)
		}
	}
	if grounded == record.No {
		return nil
	}
	// A cloth lies between if one came before every ground.
	between := record.Answer(record.No)
	for _, c := range cloths {
		under := record.Answer(record.Yes)
		for _, g := range grounds {
			under = all(under, some(not(isGround(g)), laidBefore(c, g)))
		}
		between = some(between, under)
	}
	meant := s.clothIntended()
	if len(cloths) == 0 && meant != record.No {
		between = s.unless()
	}
	o := outcome(all(s.isBoard(record.Plywood), grounded), between)
	if o == FallsShort && meant == record.No {
		return []verdict{say(o, append(filmSeqs(grounds...), s.cut.Seq), "veneer-meant-bare").at(Information)}
	}
	return one(o, append(filmSeqs(append(grounds, cloths...)...), s.cut.Seq), "veneer-covered"+suffix[o])
}
