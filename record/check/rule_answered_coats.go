package check

import (
	"fmt"
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
)

var answeredCoats = Rule{
	Name:     "answered-coats",
	Title:    "What one side gets, the other gets: every coat is answered on the other face.",
	Reason:   "A film shrinks as it dries and pulls a thin board hollow towards it. A coat of the same kind on the other side pulls it flat again.",
	Source:   "common practice; MITRA, thread on fibreboard for egg tempera (grounds on both sides)",
	Severity: Advice,
	Judged:   "Coats on front and back are counted by kind of binder, the adhesive of a cloth among them; paint and varnish are not. The bow that coats and cloth together could cause is added where the amounts are recorded; over 0.5 % of the span it is a warning. Unequal moisture, which an unanswered coat lets in, can bow a board much further and is told beside it.",
	Remedy:   "Lay the missing coat on the other face, of the same material and as thick, and let it dry lying flat.",
	Judge:    judgeAnswered,
}

func judgeAnswered(s *Subject) []Verdict {
	front, back := filter(s.on(record.Front), isCoat), filter(s.on(record.Back), isCoat)
	all := slices.Concat(front, back)
	if len(all) == 0 {
		return one(NotApplicable, nil, "no coat is laid yet")
	}
	entries := filmSeqs(all)
	if d := len(front) - len(back); d != 0 {
		lacks := record.Back
		if d < 0 {
			d, lacks = -d, record.Front
		}
		v := verdict(FallsShort, entries, "the %s lacks %s that the %s has", lacks, count(d, "coat"), opposite(lacks))
		return []Verdict{s.withBow(v)}
	}
	kinds := map[record.Binder]int{}
	known := true
	for i, face := range [][]Film{front, back} {
		for _, f := range face {
			b := s.binder(f)
			known = known && b != ""
			kinds[b] += 1 - 2*i
		}
	}
	if !known {
		return one(NotRecorded, entries, "as many coats on both faces (%d), but not all their binders are recorded", len(front))
	}
	for _, n := range kinds {
		if n != 0 {
			v := verdict(FallsShort, entries, "as many coats on both faces (%d), but not of the same kind", len(front))
			return []Verdict{s.withBow(v)}
		}
	}
	return one(Holds, entries, "%s on each face, of the same kind", count(len(front), "coat"))
}

// withBow adds what bow the difference between the coats could cause.
func (s *Subject) withBow(v Verdict) Verdict {
	b, err := s.bow(func(f Film) bool { return isCoat(f) || isCloth(f) })
	if err != nil || len(b.Entries) == 0 {
		return v
	}
	v.Text += ": " + b.String()
	if bow, ok := s.moistureBow(); ok {
		v.Text += fmt.Sprintf("; 10 %% RH between the faces bows this board up to %s mm more", millimetres(bow))
	}
	if b.Grade == measure.BowStrong {
		v.Severity = Warning
	}
	return v
}

// moistureBow is how far the board bows, in µm over the longer side, when its
// faces stand in air 10 % RH apart; false where no figure is known.
func (s *Subject) moistureBow() (float64, bool) {
	long, _, ok1 := s.sides()
	t, ok2 := s.thickness()
	m, err := s.moves()
	if !ok1 || !ok2 || err != nil {
		return 0, false
	}
	k, err := measure.MoistureCurvature(t, 0, 10*m.High)
	if err != nil {
		return 0, false
	}
	bow, err := measure.BowMicrons(k, long)
	return bow, err == nil
}
