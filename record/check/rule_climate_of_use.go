package check

import (
	"math"
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
)

var climateOfUse = Rule{
	Name:     "climate-of-use",
	Source:   "Bizot 2023 (40 to 60 % stable, change of at most 10 %), used here for the step from workroom to wall",
	Severity: Information,
	judge:    judgeClimate,
}

// climateStep is the change of relative humidity in percent that does no harm.
const climateStep = 10

func judgeClimate(s *subject) []verdict {
	coats := filter(s.all(), isCoat)
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no-coat")
	}
	mp, ok := s.p.Description().MeantFor.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "meant-for-open")
	}
	meant := float64(mp) / 1000
	var vs []verdict
	for _, f := range coats {
		rh, ok := s.humidity(f)
		at := append(filmSeqs(f), rh.seqs...)
		good := record.Answer(record.Unknown)
		least, most := math.Abs(rh.low-meant), math.Abs(rh.high-meant)
		if least > most {
			least, most = most, least
		}
		if rh.low <= meant && meant <= rh.high {
			least = 0
		}
		switch {
		case !ok:
			vs = append(vs, say(NotRecorded, at, "humidity-open", what(f)))
			continue
		case most <= climateStep:
			good = record.Yes
		case least > climateStep:
			good = record.No
		}
		o := outcome(record.Yes, good)
		values := []record.Value{what(f), record.With("humidity", figure(rh.low, "%")), record.With("meant", figure(meant, "%"))}
		code := "climate-near" + suffix[o]
		if way, by := s.movement(rh.low, meant); way != "" && o == FallsShort {
			code, values = code+way, append(values, by)
		}
		vs = append(vs, say(o, at, code, values...))
	}
	return vs
}

// movement tells which way and how far the longer side moves for a change of
// humidity, where a figure for the board is known.
func (s *subject) movement(from, to float64) (way string, by record.Value) {
	long, _, ok := s.sides()
	m, err := measure.MovementOf(s.board().Kind)
	if !ok || err != nil {
		return "", by
	}
	low, _, high, err := m.Microns(long, from, to)
	if err != nil {
		return "", by
	}
	way = "-grows"
	if high <= 0 {
		low, high, way = -high, -low, "-shrinks"
	}
	return way, record.With("change", slices.Compact([]record.Figure{millimetres(low), millimetres(high)}))
}

// millimetres gives a reckoned length to two figures, and no finer than 0.01 mm.
func millimetres(microns float64) record.Figure {
	step := 0.01
	switch mm := math.Abs(microns) / 1000; {
	case mm >= 10:
		step = 1
	case mm >= 0.1:
		step = 0.1
	}
	return figure(math.Round(math.Round(microns/1000/step)*step*100)/100, "mm")
}
