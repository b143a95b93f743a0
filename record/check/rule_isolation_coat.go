package check

import "backleaf/record"

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
