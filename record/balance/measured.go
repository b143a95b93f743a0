package balance

import (
	"math"
	"slices"

	"backleaf/record"
)

// Measured is a bow that somebody measured.
type Measured struct {
	BowMicrons  float64       // 0 to 2e7, without sign; 0 is flat
	SpanMicrons float64       // 0: not recorded
	Toward      record.Toward // the face it is hollow to, where recorded
	Over        Over          // the line it was measured over; empty: told by the span
}

// Comparison is what a measured bow says, which decides, and whether pull and
// moisture can explain it.
type Comparison struct {
	Cannot    Cannot
	Outcome   Outcome // Holds, FallsShort, or NotRecorded without a span
	Grade     Grade   // over the span; without one, over the diagonal, where it is mildest
	Explained Explained

	Over            Over    // the line it was compared over; empty: the span fits none
	PullMicrons     Range   // what all layers do over that span
	MoistureMicrons float64 // what a change of 10 % RH adds at most, either way
	CutMicrons      float64 // what of it the board had as cut
	RestPercentRH   Range   // linear difference between the faces that the rest would take
}

// Explained says whether pull and a change of 10 % RH account for a bow.
type Explained string

// The answers.
const (
	NotCompared Explained = ""       // see Cannot, or the span fits no side, or what is not recorded decides
	Within      Explained = "within" // what pull and moisture can do
	Beyond      Explained = "beyond" // the board as bought, water on one side, or another line
)

// swing is the change of humidity, in % RH, that museums still allow in a day.
const swing = 10

// even are two lines that explain as much, up to this many µm.
const even = 1e-6

// fits is how far a span may differ from a side and still be it.
const fits = 0.05

// Compare grades a measured bow and holds it against the reckoned one in the
// direction in which it was measured: over a side, or over the diagonal, which
// takes both bows together. asCut is the bow before the first coat, nil where
// it was not measured. Where the span fits two lines, or the grain may run
// either way, the one that explains more is told, and nothing is decided unless
// all agree.
func Compare(p *Panel, m Measured, asCut *Measured) Comparison {
	if !within(m.BowMicrons, 0, 2e7) || m.SpanMicrons != 0 && !within(m.SpanMicrons, 1000, 3e7) {
		return Comparison{Cannot: OutOfRange, Outcome: CannotJudge}
	}
	c := Comparison{Cannot: p.cannot(whole)}
	span := m.SpanMicrons
	if span == 0 && m.Over != "" {
		span = p.span(m.Over)
	}
	c.decide(m.BowMicrons, span, p.span(OverDiagonal))
	if c.Cannot != "" || span == 0 {
		return c
	}
	most := math.Inf(-1)
	said := map[Explained]bool{}
	for _, over := range p.lines(m) {
		for _, g := range p.grains() {
			t, spare := p.compare(m, asCut, span, over, g)
			said[t.Explained] = true
			if spare > most+even {
				most = spare
				t.Outcome, t.Grade = c.Outcome, c.Grade
				c = t
			}
		}
	}
	if len(said) > 1 {
		c.Explained = NotCompared
	}
	return c
}

// decide grades the bow. Over a span nobody wrote down only a bow too strong
// even for the longest line can be told, or a flat panel.
func (c *Comparison) decide(bow, span, diagonal float64) {
	known := span > 0
	if !known {
		span = diagonal
	}
	if bow > 0 && span > 0 {
		c.Grade = GradeOf(bow, span)
	}
	switch {
	case c.Grade >= Matters:
		c.Outcome = FallsShort
	case known || bow == 0:
		c.Outcome = Holds
	default:
		c.Outcome = NotRecorded
	}
}

// lines are the lines that a bow may have been measured over.
func (p *Panel) lines(m Measured) []Over {
	if m.Over != "" {
		return []Over{m.Over}
	}
	var out []Over
	for _, o := range [3]Over{OverHeight, OverWidth, OverDiagonal} {
		if s := p.span(o); math.Abs(m.SpanMicrons-s) <= fits*s {
			out = append(out, o)
		}
	}
	return out
}

// compare reckons over one line, and says by how much, in µm, pull and moisture
// can do more than was measured.
func (p *Panel) compare(m Measured, asCut *Measured, span float64, over Over, g record.Grain) (c Comparison, spare float64) {
	c = Comparison{Over: over, Explained: Within}
	damp := MoistureOf(p, swing)
	least, most := p.reckon(whole, g, low), p.reckon(whole, g, high)
	share := span / p.span(over) // of the line that the straightedge covered
	var bend Range               // µm per 1 % RH of linear difference
	for _, side := range [2]Over{OverHeight, OverWidth} {
		if over != side && over != OverDiagonal {
			continue
		}
		pull := least.over(side).BowMicrons.with(most.over(side).BowMicrons).times(share * share)
		c.PullMicrons = c.PullMicrons.plus(pull)
		if damp.Cannot == "" {
			c.MoistureMicrons += p.bendOver(side, g, damp.Lead, swing).Range().Most() * share * share
		}
		perMetre, l := p.Board.BendPerMetre[runs(side, g)], p.span(side)*share
		bend = bend.plus(Range{sagitta(perMetre.Low, l), sagitta(perMetre.High, l)})
	}
	rest := c.rest(m, p.asCut(asCut, span, over))
	if rest > 0 && bend.Low > 0 {
		c.RestPercentRH = Range{rest / bend.High, rest / bend.Low}
	}
	switch spare = c.MoistureMicrons - rest; {
	case spare >= 0:
	case damp.Cannot != "":
		c.Cannot, c.Explained = damp.Cannot, NotCompared
	default:
		c.Explained = Beyond
	}
	return c, spare
}

// rest is what of the measured bow the pull cannot do, even where films have
// relaxed; negative where it could do more.
func (c *Comparison) rest(m Measured, cut Measured) float64 {
	c.CutMicrons = cut.BowMicrons
	pull := Range{min(0, c.PullMicrons.Low), max(0, c.PullMicrons.High)}
	now, then := m.sign(), cut.sign()
	if now == 0 {
		return m.BowMicrons - pull.Most() - cut.BowMicrons
	}
	grown, doubt := now*m.BowMicrons-then*cut.BowMicrons, 0.0
	if then == 0 {
		doubt = cut.BowMicrons
	}
	return max(grown-pull.High, pull.Low-grown) - doubt
}

func (m Measured) sign() float64 {
	switch m.Toward {
	case record.Toward(record.Front):
		return 1
	case record.Toward(record.Back):
		return -1
	}
	return 0
}

// asCut is the bow of the bare board as it would show over the same line; none
// where it was measured over another.
func (p *Panel) asCut(cut *Measured, span float64, over Over) Measured {
	if cut == nil || !within(cut.BowMicrons, 0, 2e7) || !slices.Contains(p.lines(*cut), over) {
		return Measured{}
	}
	was := cut.SpanMicrons
	if was == 0 {
		was = p.span(over)
	}
	m := *cut
	m.BowMicrons *= span / was * (span / was)
	return m
}
