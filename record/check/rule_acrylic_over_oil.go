package check

import "backleaf/record"

var acrylicOverOil = Rule{
	Name:     "acrylic-over-oil",
	Title:    "No acrylic lies over oil.",
	Reason:   "An acrylic film does not bond to oil and cracks as the oil under it moves.",
	Source:   "a magazine's answer to painters; US Navy manual 14262, p. 1-54",
	Severity: Warning,
	Judged:   "Every coat and paint layer above the first oil layer of a face, by binder or medium. Varnish is judged by its own rules.",
	Remedy:   "If the acrylic is recent and unsound, take it off while it can be lifted; otherwise leave it and ask a conservator before any treatment.",
	Judge:    judgeAcrylicOverOil,
}

func judgeAcrylicOverOil(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := filter(s.on(face), func(f Film) bool { return isCoat(f) || isPaint(f) })
		var oil, maybe *Film
		for i, f := range films {
			base := oil
			if base == nil {
				base = maybe
			}
			if base != nil {
				at := filmSeqs([]Film{f, *base})
				switch a := s.isAcrylic(f); {
				case a == record.Yes && oil != nil:
					vs = append(vs, verdict(FallsShort, at, "the %s is acrylic over oil", name(f)))
				case a == record.Yes:
					vs = append(vs, verdict(NotRecorded, at, "whether there is oil under the %s", name(f)))
				case a == record.Unknown:
					vs = append(vs, verdict(NotRecorded, at, "whether the %s over oil is acrylic", name(f)))
				case oil != nil:
					vs = append(vs, verdict(Holds, at, "the %s over oil is not acrylic", name(f)))
				}
			}
			switch s.isOil(f) {
			case record.Yes:
				oil = &films[i]
			case record.Unknown:
				maybe = &films[i]
			}
		}
	}
	return orNone(vs, "nothing lies over oil")
}
