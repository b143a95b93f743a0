package check

import (
	"math"

	"backleaf/record"
)

var balancedFilms = Rule{
	Name:     "balanced-films",
	Title:    "The coats on both faces are equally thick when dry.",
	Reason:   "Films of one kind balance by dry thickness, not by number: two thin coats do not answer two heavy ones.",
	Source:   "common practice; moments of thin films subtract (Stoney 1909)",
	Severity: Advice,
	Judged:   "Dry thickness of all coats of one kind of binder, front against back, measured or estimated from the amounts. A quarter of the thicker side is allowed, since an estimate is no better (own reading).",
	Remedy:   "Lay another coat on the thinner side, or leave it: compare with the bow measured on the panel.",
	Judge:    judgeBalanced,
}

const balanceTolerance = 0.25

func judgeBalanced(s *Subject) []Verdict {
	type sum struct{ front, back float64 }
	sums := map[record.Binder]*sum{}
	coats := filter(s.Films, func(f Film) bool { return isCoat(f) && f.Layer.Face != record.Edges })
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no coat is laid yet")
	}
	entries := filmSeqs(coats)
	for _, f := range coats {
		b := s.binder(f)
		if f.Dry == Unknown {
			return one(NotRecorded, entries, "how thick the %s of entry %d is: %s", f.Layer.Name(), f.Layer.Seq, f.Why)
		}
		if b == "" {
			return one(NotRecorded, entries, "the binder of the %s of entry %d is not recorded", f.Layer.Name(), f.Layer.Seq)
		}
		if sums[b] == nil {
			sums[b] = &sum{}
		}
		if f.Layer.Face == record.Front {
			sums[b].front += f.DryMicrons
		} else {
			sums[b].back += f.DryMicrons
		}
	}
	var front, back float64
	balanced := true
	for _, t := range sums {
		front, back = front+t.front, back+t.back
		balanced = balanced && math.Abs(t.front-t.back) <= balanceTolerance*max(t.front, t.back)
	}
	if balanced {
		return one(Holds, entries, "%.0f µm dry on the front, %.0f µm on the back", front, back)
	}
	v := verdict(FallsShort, entries, "%.0f µm dry on the front, %.0f µm on the back", front, back)
	if math.Abs(front-back) <= balanceTolerance*max(front, back) {
		v.Text += ", but of different kinds"
	}
	if len(filter(coats, onFront))*2 == len(coats) { // else answered-coats tells the bow
		v = s.withBow(v)
	}
	return []Verdict{v}
}

func onFront(f Film) bool { return f.Layer.Face == record.Front }
