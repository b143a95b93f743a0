package check

import (
	"time"

	"backleaf/record"
	"backleaf/record/balance"
)

var balancedMoisture = Rule{
	Name: "balanced-moisture",
	Source: "vapour resistances: Danish SBi-anvisning 178, a paint maker's perm ratings, ISO 7783 tests; the step of 10 % RH: museum guides; " +
		"grades: common practice",
	Severity: Advice,
	judge:    judgeMoisture,
}

// swing is the change of the air in % RH by which moisture is judged: what
// museum guides allow in a day.
const swing = 10

// judgeMoisture falls short where one face opens so much sooner than the other
// that a usual change of the air bows the panel by more than a little.
func judgeMoisture(s *subject) []verdict {
	coats := filter(s.between(), func(f film) bool { return !isCloth(f) })
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no-film-on-faces")
	}
	at := append(filmSeqs(coats...), s.cut.Seq)
	for _, face := range faces {
		if s.told(face) != record.Yes {
			return []verdict{s.faceOpen(face)}
		}
	}
	p := s.reckoned()[0] // the order of the layers does not matter
	m := balance.MoistureOf(&p, swing)
	switch {
	case m.Cannot != "":
		return []verdict{s.cannot(m.Cannot, at)}
	}
	v := leading(&p, m, at)
	if m.Lacks.Amounts {
		why, lacking := why(s.all(), at)
		v = say(NotRecorded, lacking, "moisture-amounts-open", append(why, record.With("would", record.Code(v.outcome)))...)
	}
	return []verdict{v}
}

// leading judges how far one face leads at typical figures.
func leading(p *balance.Panel, m balance.Moisture, at []int64) verdict {
	bow, span, over := worst(m.Height, m.Width, p)
	values := moistureValues(m, bow, span, over)
	matters := balance.GradeOf(bow.Typical, span) >= balance.Matters
	switch {
	case m.Grade == balance.Even:
		return say(Holds, at, "moisture-even")
	case m.Grade == balance.FaceOpen && matters:
		return say(FallsShort, at, "moisture-uneven", values...).at(Warning)
	case m.Grade == balance.OneSided && matters:
		return say(FallsShort, at, "moisture-uneven", values...)
	case m.Grade == balance.Uneven && matters:
		return say(FallsShort, at, "moisture-uneven", values...).at(Information)
	}
	return say(Holds, at, "moisture-slight", values...)
}

func size(s balance.Spread) float64 { return max(s.Typical, -s.Typical) }

// worst is the side that bends more for its length.
func worst(height, width balance.Spread, p *balance.Panel) (bow balance.Spread, spanMicrons float64, over string) {
	if size(width)/p.WidthMicrons > size(height)/p.HeightMicrons {
		return width, p.WidthMicrons, "over-width"
	}
	return height, p.HeightMicrons, "over-height"
}

func moistureValues(m balance.Moisture, bow balance.Spread, spanMicrons float64, over string) []record.Value {
	return []record.Value{
		record.With("leads", m.Leads),
		record.With("bow", []record.Figure{millimetres(bow.Range().Least()), millimetres(bow.Range().Most())}),
		record.With("most", millimetres(bow.Range().Most())), record.With("over", record.Code(over)), record.With("span", millimetres(spanMicrons)),
		record.With("peak", []record.Figure{hours(m.PeakHours.Low), hours(m.PeakHours.High)}),
	}
}

// hours is a reckoned time as a figure.
func hours(x float64) record.Figure { return lasting(time.Duration(x * float64(time.Hour))) }
