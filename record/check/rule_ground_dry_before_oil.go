package check

import (
	"time"

	"backleaf/record"
)

var groundDryBeforeOil = Rule{
	Name:     "ground-dry-before-oil",
	Title:    "The ground dries long enough before oil paint.",
	Reason:   "Water keeps leaving an acrylic ground for about a month; an oil ground goes on hardening for a year. Oil paint shuts the way out.",
	Source:   "MITRA, answer QID 351 (acrylic ground 72 hours at least, two weeks better, a month best; oil ground 6 to 12 months)",
	Severity: Advice,
	Judged:   "From the last coat of ground to the first oil paint on that face. Acrylic ground: under 3 days is a warning, under 14 days advice. Oil or alkyd ground: under 6 months is advice. Other grounds are not judged.",
	Remedy:   "Nothing can be hurried now. Leave the painting unvarnished and out of tight frames for as long as possible.",
	Judge:    judgeGroundDry,
}

// Drying times before oil paint.
const (
	acrylicGroundLeast = 3 * day
	acrylicGroundGood  = 14 * day
	oilGroundGood      = 182 * day
)

func judgeGroundDry(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		for _, paint := range filter(s.on(face), isPaint) {
			below := s.below(face, paint.Layer.Seq)
			grounds := filter(below, isGround)
			// A coat of unknown purpose may be ground too.
			doubts := filter(below, func(f Film) bool { return isCoat(f) && !purposeKnown(f) })
			oil := s.isOil(paint)
			if oil == record.No || len(grounds)+len(doubts) == 0 {
				continue
			}
			if n := len(grounds); n > 0 {
				vs = append(vs, s.groundDry(grounds[n-1], paint, oil))
			}
			if n := len(doubts); n > 0 {
				v := s.groundDry(doubts[n-1], paint, oil)
				if v.Outcome == Holds && len(grounds) == 0 {
					v = verdict(NotRecorded, v.Entries, "whether the %s is a ground", name(doubts[n-1]))
				}
				vs = append(vs, v)
			}
			if oil == record.Yes {
				break
			}
		}
	}
	return orNone(vs, "no oil paint over a ground")
}

func (s *Subject) groundDry(ground, paint Film, oil record.Answer) Verdict {
	at := filmSeqs([]Film{paint, ground})
	if oil == record.Unknown {
		return verdict(NotRecorded, at, "whether the %s is oil", name(paint))
	}
	var good, least time.Duration
	switch {
	case s.isOil(ground) == record.Yes:
		good = oilGroundGood
	case s.isAcrylic(ground) == record.Yes:
		good, least = acrylicGroundGood, acrylicGroundLeast
	case s.isOil(ground) == record.Unknown:
		return verdict(NotRecorded, at, "the binder of the %s", name(ground))
	default:
		return verdict(NotApplicable, at, "no waiting time is known for this ground")
	}
	shortest, longest, ok := elapsed(ground.Layer.At, paint.Layer.At)
	switch {
	case !ok:
		return verdict(NotRecorded, at, "when the %s or the %s was laid", name(ground), name(paint))
	case shortest >= good:
		return verdict(Holds, at, "the ground had dried for %s", days(shortest))
	case longest < least:
		return verdict(FallsShort, at, "the ground had dried for %s only", days(longest)).at(Warning)
	case longest < good:
		return verdict(FallsShort, at, "the ground had dried for %s; better %s", days(longest), days(good))
	}
	return verdict(NotRecorded, at, "the dates of ground and paint are not exact enough")
}
