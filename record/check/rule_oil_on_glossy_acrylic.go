package check

import (
	"slices"

	"backleaf/record"
)

var oilOnGlossyAcrylic = Rule{
	Name:     "oil-on-glossy-acrylic",
	Title:    "Oil does not lie on thick glossy acrylic.",
	Reason:   "A smooth closed film gives oil paint nothing to hold to. A matt, absorbent acrylic ground is sound.",
	Source:   "MITRA, answer QID 54",
	Severity: Advice,
	Judged:   "The acrylic layer directly under oil: by its recorded gloss, a paint also by its thickness. Sanding in between gives it tooth.",
	Remedy:   "Handle the painting gently, and record the layers: flaking would start between them.",
	Judge:    judgeOilOnGloss,
}

func judgeOilOnGloss(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		films := filter(s.on(face), func(f Film) bool { return isCoat(f) || isPaint(f) })
		for i := 1; i < len(films); i++ {
			below, f := films[i-1], films[i]
			oil, acrylic := s.isOil(f), s.isAcrylic(below)
			if oil == record.No || acrylic == record.No {
				continue
			}
			at := filmSeqs([]Film{f, below})
			gloss, film := s.gloss(below), record.Film("thick")
			if isPaint(below) {
				film = below.Layer.Paint.Film
			}
			switch {
			case oil == record.Unknown || acrylic == record.Unknown:
				vs = append(vs, verdict(NotRecorded, at, "whether the %s is oil over acrylic", name(f)))
			case gloss == "matt" || gloss == "satin":
				vs = append(vs, verdict(Holds, at, "the %s under oil is %s", name(below), gloss))
			case film == "thin":
				vs = append(vs, verdict(Holds, at, "the %s under oil is thin", name(below)))
			case s.sandedBetween(face, below, f):
				vs = append(vs, verdict(Holds, at, "the %s was sanded before the oil", name(below)))
			case gloss == "" || gloss == record.Unknown || film == "" || film == record.Unknown:
				vs = append(vs, verdict(NotRecorded, at, "how glossy and thick the %s under oil is", name(below)))
			default:
				vs = append(vs, verdict(FallsShort, at, "the %s under oil is a thick glossy film", name(below)))
			}
		}
	}
	return orNone(vs, "no oil lies over acrylic")
}

func (s *Subject) sandedBetween(face record.Face, below, above Film) bool {
	for _, sand := range record.Each[record.Sanded](s.Panel) {
		at := s.place(sand.Seq)
		if slices.Contains(sand.Body.Faces, face) && at > s.place(below.Layer.Seq) && at < s.place(above.Layer.Seq) {
			return true
		}
	}
	return false
}
