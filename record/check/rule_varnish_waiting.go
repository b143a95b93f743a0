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
