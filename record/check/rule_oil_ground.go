package check

import (
	"slices"
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
			// A coat of unknown purpose may be ground too.
			grounds := filter(s.below(face, paint.Layer.Seq), func(f Film) bool { return isGround(f) || isCoat(f) && !purposeKnown(f) })
			if len(grounds) == 0 {
				continue
			}
			oil := s.isOil(paint)
			if oil == record.No {
				continue
			}
			ground := grounds[len(grounds)-1]
			v := s.groundDry(ground, paint, oil)
			if !slices.ContainsFunc(grounds, isGround) && v.Outcome == Holds {
				v = verdict(NotRecorded, v.Entries, "whether the %s is a ground", name(ground))
			}
			vs = append(vs, v)
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

var sizeBeforeOil = Rule{
	Name:     "size-before-oil",
	Title:    "Cloth is sized before oil ground or oil paint.",
	Reason:   "Oil that reaches the fibres makes them brittle and dark.",
	Source:   "Padfield, Stress, strain and craquelure 7",
	Severity: Warning,
	Judged:   "Between a cloth and the first oil above it there is a coat without oil, or the cloth came sized, or it was wetted through with an adhesive without oil.",
	Remedy:   "It cannot be undone. Say so in the record: a conservator will want to know.",
	Judge:    judgeSizeBeforeOil,
}

func judgeSizeBeforeOil(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := s.on(face)
		for i, f := range films {
			if isCloth(f) {
				if v, ok := s.sized(films, i); ok {
					vs = append(vs, v)
				}
			}
		}
	}
	return orNone(vs, "no oil lies over cloth")
}

// sized judges the cloth at i; false if no oil lies over it.
func (s *Subject) sized(films []Film, i int) (Verdict, bool) {
	cloth := films[i]
	isolated, doubt := int64(0), []int64(nil) // doubt: layers that may be oil
	for _, f := range films[i+1:] {
		if isVarnish(f) || isCloth(f) {
			continue
		}
		switch oil := s.isOil(f); {
		case oil == record.No:
			if isCoat(f) && len(doubt) == 0 {
				isolated = f.Layer.Seq
			}
			continue
		case oil == record.Unknown:
			doubt = append(doubt, f.Layer.Seq)
			continue
		}
		at := []int64{cloth.Layer.Seq, f.Layer.Seq}
		m, _ := s.Workshop.Material(cloth.Layer.Cloth.Cloth)
		wet, sized := cloth.Layer.Cloth.WetThrough, m.Cloth.Sized
		adhesive := record.Answer(record.Unknown)
		if i > 0 && films[i-1].Layer.Seq == cloth.Layer.Seq {
			adhesive = s.isOil(films[i-1])
		}
		switch {
		case isolated != 0:
			return verdict(Holds, append(at, isolated), "a coat without oil lies between cloth and oil"), true
		case sized == record.Yes:
			return verdict(Holds, at, "the cloth came sized"), true
		case wet == record.Yes && adhesive == record.No:
			return verdict(Holds, at, "the cloth was wetted through with a film without oil"), true
		case len(doubt) > 0 || sized != record.No || wet != record.No && adhesive != record.Yes:
			return verdict(NotRecorded, append(at, doubt...), "whether the cloth was sized before the %s", name(f)), true
		}
		return verdict(FallsShort, at, "nothing lies between the cloth and the %s", name(f)), true
	}
	if len(doubt) > 0 {
		return verdict(NotRecorded, append(doubt, cloth.Layer.Seq), "whether there is oil over the cloth"), true
	}
	return Verdict{}, false
}
