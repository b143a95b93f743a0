package check

import "backleaf/record"

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
