package check

import (
	"math"
	"slices"

	"backleaf/record"
	"backleaf/record/balance"
)

var explainedBow = Rule{
	Name:     "explained-bow",
	Source:   "as for balanced-pull and balanced-moisture; a sheet as bought may be bowed by 0.5 % (a trade forum)",
	Severity: Advice,
	judge:    judgeExplained,
}

// judgeExplained holds a measured bow against what pull and a change of 10 % RH
// can do in the direction in which it was measured.
func judgeExplained(s *subject) []verdict {
	m, sure := s.measured(s.films)
	if m == nil {
		return one(NotApplicable, nil, "no-bow-since")
	}
	at := m.verdict.entries
	if !m.known {
		return one(NotRecorded, at, m.verdict.said.Code, m.verdict.said.Values...)
	}
	if balance.GradeOf(m.BowMicrons, m.SpanMicrons) <= balance.Slight {
		return one(NotApplicable, at, "bow-slight", record.With("bow", millimetres(m.BowMicrons)))
	}
	var c balance.Comparison
	for i, x := range s.compared(m.Measured) {
		if i > 0 && x.Explained != c.Explained {
			return one(NotRecorded, at, "bow-compared-open")
		}
		c = x
	}
	values := []record.Value{record.With("bow", millimetres(m.BowMicrons)), record.With("over", record.Code("over-"+string(c.Over))),
		record.With("pull", millimetres(c.PullMicrons.Most())), record.With("moisture", millimetres(c.MoistureMicrons))}
	known := sure
	for _, face := range faces {
		known = all(known, s.told(face))
	}
	switch {
	case c.Cannot == balance.NoFigure:
		return one(NotApplicable, at, "cannot-no-figure")
	case c.Explained == balance.NotCompared || known != record.Yes:
		return one(NotRecorded, at, "bow-compared-open")
	case c.Explained == balance.Within:
		return one(Holds, at, "bow-explained", values...)
	}
	return one(FallsShort, at, "bow-beyond", values...)
}

// compared holds a bow against every panel, run of the grain and line that the
// record leaves possible.
func (s *subject) compared(m balance.Measured) []balance.Comparison {
	var out []balance.Comparison
	for _, p := range s.reckoned() {
		grains := []record.Grain{"height", "width"}
		if slices.Contains(grains, p.Grain) {
			grains = []record.Grain{p.Grain}
		}
		lacks := balance.Judge(&p).Lacks
		for _, p.Grain = range grains {
			for _, m.Over = range s.lines(m) {
				c := balance.Compare(&p, m, s.asCut())
				if lacks.Amounts || lacks.Binders {
					c.Explained = balance.NotCompared
				}
				out = append(out, c)
			}
		}
	}
	return out
}

// lines are the lines that a bow may have been measured over: as recorded, or
// those as long as its span, within a twentieth.
func (s *subject) lines(m balance.Measured) []balance.Over {
	if m.Over != "" {
		return []balance.Over{m.Over}
	}
	h, _ := s.p.Size().Height.Micrometers()
	w, _ := s.p.Size().Width.Micrometers()
	long := map[balance.Over]float64{balance.OverHeight: float64(h), balance.OverWidth: float64(w), balance.OverDiagonal: math.Hypot(float64(h), float64(w))}
	var out []balance.Over
	for _, o := range []balance.Over{balance.OverHeight, balance.OverWidth, balance.OverDiagonal} {
		if math.Abs(m.SpanMicrons-long[o]) <= long[o]/20 {
			out = append(out, o)
		}
	}
	if out == nil {
		return []balance.Over{""}
	}
	return out
}
