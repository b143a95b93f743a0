package check

import (
	"math"

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
	m, sure := s.measured(s.all())
	if m == nil {
		return one(NotApplicable, nil, "no-bow-since")
	}
	at := m.verdict.entries
	if !m.known {
		return one(NotRecorded, at, m.verdict.said.Code, m.verdict.said.Values...)
	}
	if m.Grade <= balance.Slight {
		return one(NotApplicable, at, "bow-slight", record.With("bow", millimetres(m.BowMicrons)))
	}
	c, agreed := m.Comparison, true
	for _, p := range s.reckoned() { // in every order of the layers that the dates leave
		x := balance.Compare(&p, m.Measured, s.asCut())
		agreed = agreed && x.Explained == c.Explained
		if l := balance.Judge(&p).Lacks; l.Amounts || l.Binders {
			c.Explained = balance.NotCompared
		}
		c.PullMicrons, c.MoistureMicrons = x.PullMicrons, x.MoistureMicrons
	}
	var cut, rest []record.Figure
	if c.CutMicrons > 0 {
		cut = append(cut, millimetres(c.CutMicrons))
	}
	if r := c.RestPercentRH; r.High > 0 {
		rest = append(rest, percent(r.Low), percent(r.High))
	}
	values := []record.Value{record.With("bow", millimetres(m.BowMicrons)), record.With("over", record.Code("over-"+string(c.Over))),
		record.With("pull", millimetres(c.PullMicrons.Most())), record.With("moisture", millimetres(c.MoistureMicrons)), record.With("cut", cut), record.With("rest", rest)}
	known := sure
	for _, face := range faces {
		known = all(known, s.told(face))
	}
	switch {
	case c.Cannot == balance.NoFigure:
		return one(NotApplicable, at, "cannot-no-figure")
	case c.Explained == balance.NotCompared || !agreed || known != record.Yes:
		return one(NotRecorded, at, "bow-compared-open")
	case c.Explained == balance.Within:
		return one(Holds, at, "bow-explained", values...)
	}
	return one(FallsShort, at, "bow-beyond", values...)
}

// percent is a reckoned share in % RH.
func percent(x float64) record.Figure { return figure(math.Round(x), "%") }
