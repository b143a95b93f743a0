package check

import (
	"time"

	"backleaf/record"
)

var varnishWaiting = Rule{
	Name:     "varnish-waiting",
	Title:    "The paint has hardened all through before it is varnished.",
	Reason:   "Soft paint takes up varnish: the two can then no longer be parted, and cleaning takes paint with it.",
	Source:   "note on waiting before varnishing (6 to 12 months for oil, in print since at least 1926); acrylic: common practice",
	Severity: Advice,
	Judged:   "From each paint layer to the first varnish over it. Oil, alkyd and water-mixable oil: under 6 months is advice, under 1 month a warning. Acrylic and vinyl: under 7 days is advice. Other media are not judged.",
	Remedy:   "Note it for whoever cleans the painting: test first, the varnish may be part of the paint. Do not varnish again.",
	Judge:    judgeVarnishWaiting,
}

// Waiting times before varnish.
const (
	oilVarnishLeast = 30 * day
	oilVarnishGood  = 182 * day
	acrylicVarnish  = 7 * day
)

// varnishWait returns how long a paint should wait for varnish; false where no
// time is known for it.
func varnishWait(b record.Binder) (good, least time.Duration, ok bool) {
	switch b {
	case record.DryingOil, record.Alkyd:
		return oilVarnishGood, oilVarnishLeast, true
	case record.Acrylic, record.PVA:
		return acrylicVarnish, 0, true
	}
	return 0, 0, false
}

func judgeVarnishWaiting(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := s.on(face)
		for i, paint := range films {
			if !isPaint(paint) {
				continue
			}
			for _, varnish := range films[i+1:] {
				if isVarnish(varnish) {
					vs = append(vs, s.waited(paint, varnish))
					break
				}
			}
		}
	}
	return orNone(vs, "no paint is varnished")
}

func (s *Subject) waited(paint, varnish Film) Verdict {
	at := filmSeqs([]Film{varnish, paint})
	b := s.binder(paint)
	if b == "" {
		return verdict(NotRecorded, at, "the medium of the %s", name(paint))
	}
	good, least, known := varnishWait(b)
	if !known {
		return verdict(NotApplicable, at, "no waiting time is known for this medium")
	}
	shortest, longest, ok := elapsed(paint.Layer.At, varnish.Layer.At)
	switch {
	case !ok:
		return verdict(NotRecorded, at, "when the %s was painted or varnished", name(paint))
	case shortest >= good:
		return verdict(Holds, at, "the %s waited %s for varnish", name(paint), days(shortest))
	case longest < least:
		return verdict(FallsShort, at, "the %s waited %s for varnish", name(paint), days(longest)).at(Warning)
	case longest < good:
		return verdict(FallsShort, at, "the %s waited %s for varnish; better %s", name(paint), days(longest), days(good))
	}
	return verdict(NotRecorded, at, "the dates of the %s and of the varnish are not exact enough", name(paint))
}

var varnishRemovable = Rule{
	Name:     "varnish-removable",
	Title:    "The varnish can be removed, and is named.",
	Reason:   "Varnish yellows and gets dirty. Whoever takes it off needs to know what it is and what takes it off.",
	Source:   "MITRA, Surface coatings",
	Severity: Advice,
	Judged:   "For each varnish: that it is removable, as recorded with it or with its material, and that its resin or its material is named.",
	Remedy:   "Name the varnish and what dissolves it. Lay no further coat over one that cannot be removed.",
	Judge:    judgeVarnishRemovable,
}

func judgeVarnishRemovable(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range filter(s.Films, isVarnish) {
		at := []int64{f.Layer.Seq}
		ms, all := s.parts(f)
		removable := f.Layer.Varnish.Removable
		if removable == "" {
			removable = mixRemovable(ms, all)
		}
		named := f.Layer.Varnish.Resin != "" && f.Layer.Varnish.Resin != record.Unknown || all
		switch {
		case removable == record.No:
			vs = append(vs, verdict(FallsShort, at, "the %s cannot be removed", name(f)))
		case removable != record.Yes:
			vs = append(vs, verdict(NotRecorded, at, "whether the %s can be removed", name(f)))
		case !named:
			vs = append(vs, verdict(NotRecorded, at, "what the %s is", name(f)))
		default:
			vs = append(vs, verdict(Holds, at, "the %s is named and can be removed", name(f)))
		}
	}
	return orNone(vs, "there is no varnish")
}

// mixRemovable answers for a mix: one part that stays makes it stay.
func mixRemovable(ms []record.Material, all bool) record.Answer {
	answer := record.Yes
	for _, m := range ms {
		switch m.Removable {
		case record.No:
			return record.No
		case record.Yes:
		default:
			all = false
		}
	}
	if !all {
		return record.Unknown
	}
	return answer
}

var isolationCoat = Rule{
	Name:     "isolation-coat",
	Title:    "An isolation coat parts acrylic paint from its varnish.",
	Reason:   "What removes the varnish also swells acrylic paint. A clear coat in between is the margin for cleaning.",
	Source:   "a secondary page on the care of acrylic paintings; common practice",
	Severity: Information,
	Judged:   "For each varnish over acrylic paint: a coat laid as isolation after the last paint and before the varnish.",
	Remedy:   "Leave it as it is. Note that the varnish lies directly on the paint, so that it is tested before cleaning.",
	Judge:    judgeIsolation,
}

func judgeIsolation(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := s.on(face)
		last, isolated, doubt := -1, int64(0), false
		for i, f := range films {
			switch {
			case isPaint(f):
				last, isolated, doubt = i, 0, false
			case last >= 0 && f.Layer.Purpose == record.Isolation:
				isolated = f.Layer.Seq
			case last >= 0 && isCoat(f) && !purposeKnown(f):
				doubt = true
			case last >= 0 && isVarnish(f):
				vs = append(vs, s.isolated(films[last], f, isolated, doubt))
				last = -1
			}
		}
	}
	return orNone(vs, "no acrylic paint is varnished")
}

func (s *Subject) isolated(paint, varnish Film, by int64, doubt bool) Verdict {
	at := filmSeqs([]Film{varnish, paint})
	switch acrylic := s.isAcrylic(paint); {
	case acrylic == record.No:
		return verdict(NotApplicable, at, "the varnished paint is not acrylic")
	case acrylic == record.Unknown:
		return verdict(NotRecorded, at, "whether the %s is acrylic", name(paint))
	case by != 0:
		return verdict(Holds, append(at, by), "an isolation coat lies under the varnish")
	case doubt:
		return verdict(NotRecorded, at, "whether the coat under the varnish is an isolation coat")
	}
	return verdict(FallsShort, at, "the varnish lies directly on the %s", name(paint))
}

var paintOverVarnish = Rule{
	Name:     "paint-over-varnish",
	Title:    "No paint lies over a removable varnish.",
	Reason:   "Paint over varnish goes when the varnish goes.",
	Source:   "a paint maker's technical note on oil over varnish",
	Severity: Warning,
	Judged:   "Every paint layer above a varnish on the same face.",
	Remedy:   "If the paint is yours and recent, take it off with the varnish and paint again; else mark on the label what lies over the varnish.",
	Judge:    judgePaintOverVarnish,
}

func judgePaintOverVarnish(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := s.on(face)
		for i, varnish := range films {
			if !isVarnish(varnish) {
				continue
			}
			v := verdict(Holds, []int64{varnish.Layer.Seq}, "nothing is painted over the %s", name(varnish))
			for _, f := range films[i+1:] {
				if isPaint(f) {
					v = s.overVarnish(f, varnish)
					break
				}
			}
			vs = append(vs, v)
		}
	}
	return orNone(vs, "there is no varnish")
}

func (s *Subject) overVarnish(paint, varnish Film) Verdict {
	at := filmSeqs([]Film{paint, varnish})
	removable := varnish.Layer.Varnish.Removable
	if removable == "" {
		removable = mixRemovable(s.parts(varnish))
	}
	switch removable {
	case record.Yes:
		return verdict(FallsShort, at, "the %s lies over a removable varnish", name(paint))
	case record.No:
		return verdict(NotApplicable, at, "the varnish under the %s is not meant to be removed", name(paint))
	}
	return verdict(NotRecorded, at, "whether the varnish under the %s can be removed", name(paint))
}
