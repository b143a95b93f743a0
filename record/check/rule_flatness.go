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
