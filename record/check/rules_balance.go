package check

import (
	"math"

	"backleaf/record"
	"backleaf/record/measure"
)

var answeredCoats = Rule{
	Name:     "answered-coats",
	Source:   "common practice; MITRA, thread on fibreboard for egg tempera (grounds on both sides)",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		front, back := filter(s.on(record.Front), isCoat), filter(s.on(record.Back), isCoat)
		if len(front)+len(back) == 0 {
			return one(NotApplicable, nil, "no-coat")
		}
		o := outcome(record.Yes, some(is(len(front) == len(back)), s.unless()))
		return one(o, filmSeqs(append(front, back...)...), "coats-answered"+suffix[o], record.With("front", len(front)), record.With("back", len(back)))
	},
}

var flatness = Rule{
	Name:     "flatness",
	Source:   "common practice; MITRA, thread on minor warping of birch plywood (0.20 to 0.26 % of the span called very minor)",
	Severity: Advice,
	judge:    judgeFlatness,
}

func judgeFlatness(s *subject) []verdict {
	looks := record.Each[record.Inspection](s.p)
	for i := len(looks) - 1; i >= 0; i-- {
		b, at := looks[i].Body, []int64{looks[i].Seq}
		um, ok := b.Bow.Micrometers()
		if !ok {
			if b.Toward == "flat" {
				return one(Holds, at, "measured-flat")
			}
			if !b.Bow.IsZero() {
				return one(NotRecorded, at, "bow-open")
			}
			continue
		}
		values := []record.Value{record.With("bow", b.Bow), record.With("span", b.Span), record.With("toward", b.Toward)}
		span, spanned := b.Span.Micrometers()
		grade, err := measure.GradeBow(math.Abs(float64(um)), float64(span))
		switch {
		case !spanned || err != nil:
			return one(NotRecorded, at, "bow-span-open", values...)
		case grade == measure.BowSlight:
			return one(Holds, at, "measured-bow", values...)
		case grade == measure.BowStrong:
			return []verdict{say(FallsShort, at, "measured-bow", values...).at(Warning)}
		}
		return one(FallsShort, at, "measured-bow", values...)
	}
	if len(filter(s.films, isCoat)) == 0 {
		return one(NotApplicable, nil, "no-coat")
	}
	return one(NotRecorded, nil, "lay-a-straightedge")
}
