package check

import "backleaf/record"

var soundLayers = Rule{
	Name:     "sound-layers",
	Title:    "Edges and cloth held when the panel was last looked at.",
	Reason:   "A loose edge or a hollow spot grows.",
	Source:   "common practice",
	Severity: Warning,
	Judged:   "Edges and adhesion at the last inspection that looked at each.",
	Remedy:   "Work adhesive under the loose place, press it, and inspect again. On a finished painting ask a conservator.",
	Judge:    judgeSound,
}

func judgeSound(s *Subject) []Verdict {
	if len(filter(s.Films, isCloth)) == 0 && len(record.Each[record.Inspection](s.Panel)) == 0 {
		return one(NotApplicable, nil, "no cloth is laid")
	}
	return []Verdict{
		s.lastLook("edges", func(i record.Inspection) record.Sound { return i.Edges }),
		s.lastLook("adhesion", func(i record.Inspection) record.Sound { return i.Adhesion }),
	}
}

// lastLook judges what the last inspection that looked at something found. A
// later one that could not tell settles nothing.
func (s *Subject) lastLook(what string, of func(record.Inspection) record.Sound) Verdict {
	looks := record.Each[record.Inspection](s.Panel)
	for i := len(looks) - 1; i >= 0; i-- {
		at := []int64{looks[i].Seq}
		switch found := of(looks[i].Body); found {
		case "":
		case "sound":
			return verdict(Holds, at, "%s sound", what)
		case record.Unknown:
			return verdict(NotRecorded, at, "%s: looked at, but not known", what)
		default:
			return verdict(FallsShort, at, "%s %s", what, found)
		}
	}
	return verdict(NotRecorded, nil, "%s: not inspected", what)
}
