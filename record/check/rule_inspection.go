package check

import (
	"backleaf/record"
	"backleaf/record/measure"
)

var flatness = Rule{
	Name:     "flatness",
	Title:    "The panel measured flat when it was last looked at.",
	Reason:   "A straightedge knows more than any estimate.",
	Source:   "common practice; MITRA, thread on minor warping of birch plywood (0.20 to 0.26 % of the span called very minor)",
	Severity: Advice,
	Judged:   "The last inspection with a bow: under 0.2 % of the span measured holds, over 0.5 % is a warning. Without a span only a bow too strong even for the longer side can be told.",
	Remedy:   "Lay a coat on the hollow side's other face, weigh the panel down flat while it dries, or brace it.",
	Judge:    judgeFlatness,
}

func judgeFlatness(s *Subject) []Verdict {
	looks := record.Each[record.Inspection](s.Panel)
	for i := len(looks) - 1; i >= 0; i-- {
		b, at := looks[i].Body, []int64{looks[i].Seq}
		um, ok := b.Bow.Micrometers()
		if !ok {
			if b.Toward == "flat" {
				return one(Holds, at, "flat when looked at")
			}
			if !b.Bow.IsZero() {
				return one(NotRecorded, at, "how far the panel bows")
			}
			continue
		}
		// Over a span nobody wrote down, a bow is at its mildest over the
		// longer side.
		span, spanned := b.Span.Micrometers()
		if !spanned {
			long, _, _ := s.sides()
			span = int64(long)
		}
		grade, err := measure.GradeBow(float64(um), float64(span))
		switch {
		case !spanned && (err != nil || grade == measure.BowSlight):
			return one(NotRecorded, at, "over what span the bow of %s was measured", b.Bow)
		case err != nil:
			return one(NotRecorded, at, "the bow: %v", err)
		case grade == measure.BowSlight:
			return one(Holds, at, "%s over %s", b.Bow, spanText(span))
		}
		v := verdict(FallsShort, at, "%s over %s, %.2f %%", b.Bow, spanText(span), float64(um)/float64(span)*100)
		if b.Toward == "front" || b.Toward == "back" {
			v.Text += ", hollow at the " + string(b.Toward)
		}
		if grade == measure.BowStrong {
			v.Severity = Warning
		}
		return []Verdict{v}
	}
	if len(filter(s.Films, isCoat)) == 0 {
		return one(NotApplicable, nil, "no coat is laid yet")
	}
	return one(NotRecorded, nil, "whether the panel is flat: no inspection")
}

func spanText(microns int64) string { return millimetres(float64(microns)) + " mm" }

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
