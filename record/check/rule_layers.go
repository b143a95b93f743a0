package check

import (
	"slices"

	"backleaf/record"
)

var fatOverLean = Rule{
	Name:     "fat-over-lean",
	Title:    "Each oil layer is at least as fat as the one below it, and none dries faster.",
	Reason:   "A film that hardens over one that still moves cracks.",
	Source:   "MITRA, thread on oil over acrylic ground; common practice",
	Severity: Advice,
	Judged:   "By the oil content recorded against the layer below, for every oil layer over another; alkyd over oil counts as faster over slower.",
	Remedy:   "Nothing can be undone. Leave a long time before varnish and keep the record: it explains cracks that may come.",
	Judge:    judgeFatOverLean,
}

func judgeFatOverLean(s *Subject) []Verdict {
	var vs []Verdict
	for _, face := range faces {
		paints := filter(s.on(face), func(f Film) bool { return isPaint(f) && s.isOil(f) != record.No })
		for i := 1; i < len(paints); i++ {
			below, f := paints[i-1], paints[i]
			at := filmSeqs([]Film{f, below})
			switch oil := f.Layer.Paint.Oil; {
			case oil == "lean":
				vs = append(vs, verdict(FallsShort, at, "the %s is leaner than what lies below", name(f)))
			case s.isOil(f) == record.Unknown || s.isOil(below) == record.Unknown:
				vs = append(vs, verdict(NotRecorded, at, "whether the %s and the one below are oil", name(f)))
			case s.binder(f) == record.Alkyd && s.binder(below) == record.DryingOil:
				vs = append(vs, verdict(FallsShort, at, "the %s is alkyd over oil: it dries faster than what lies below", name(f)))
			case oil == "fat" || oil == "same":
				vs = append(vs, verdict(Holds, at, "the %s is no leaner than what lies below", name(f)))
			default:
				vs = append(vs, verdict(NotRecorded, at, "whether the %s is fatter than what lies below", name(f)))
			}
		}
	}
	return orNone(vs, "there are no two oil layers")
}

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

// gloss is the sheen of a layer: as recorded for it, or the glossiest of its
// materials; empty where one is not known.
func (s *Subject) gloss(f Film) record.Gloss {
	if isPaint(f) && f.Layer.Paint.Gloss != "" {
		return f.Layer.Paint.Gloss
	}
	ms, all := s.parts(f)
	if !all {
		return ""
	}
	order := []record.Gloss{"matt", "satin", "gloss"}
	most := record.Gloss("matt")
	for _, m := range ms {
		if m.Gloss == "" || m.Gloss == record.Unknown {
			return ""
		}
		if slices.Index(order, m.Gloss) > slices.Index(order, most) {
			most = m.Gloss
		}
	}
	return most
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
