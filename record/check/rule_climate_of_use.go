package check

import "math"

var climateOfUse = Rule{
	Name:     "climate-of-use",
	Title:    "The air at work is near that of the room the panel is meant for.",
	Reason:   "A panel sealed in damp air shrinks in a dry room, and bows where its faces do not follow alike.",
	Source:   "Bizot 2023 (40 to 60 % stable, change of at most 10 %), used here for the step from workroom to wall",
	Severity: Advice,
	Judged:   "Humidity at each coat, or the nearest reading of the room within 12 hours, against the humidity the panel is meant for: at most 10 % RH apart.",
	Remedy:   "Let the panel settle for some weeks in air between the two before framing, and look at the bow.",
	Judge:    judgeClimate,
}

func judgeClimate(s *Subject) []Verdict {
	coats := filter(s.Films, isCoat)
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no coat is laid yet")
	}
	mp, ok := s.Panel.Description().MeantFor.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "the humidity of the room the panel is meant for")
	}
	meant := float64(mp) / 1000
	var vs []Verdict
	for _, f := range coats {
		at := []int64{f.Layer.Seq}
		rh, from, ok := s.humidity(f)
		if ok && from != f.Layer.Seq {
			at = append(at, from)
		}
		switch {
		case !ok:
			vs = append(vs, verdict(NotRecorded, at, "the humidity at the %s", name(f)))
		case math.Abs(rh-meant) > 10:
			vs = append(vs, verdict(FallsShort, at, "the %s was laid at %s %% RH, the panel is meant for %s %%%s", name(f), trimFloat(rh), trimFloat(meant), s.movement(rh, meant)))
		default:
			vs = append(vs, verdict(Holds, at, "laid at %s %% RH, meant for %s %%", trimFloat(rh), trimFloat(meant)))
		}
	}
	return vs
}

// movement tells how far the longer side moves for a change of humidity, where
// a figure for the board is known.
func (s *Subject) movement(from, to float64) string {
	long, _, ok := s.sides()
	m, err := s.moves()
	if !ok || err != nil {
		return ""
	}
	low, _, high, err := m.Microns(long, from, to)
	if err != nil {
		return ""
	}
	verb := "grows"
	if to < from {
		verb = "shrinks"
	}
	a, b := millimetres(math.Abs(low)), millimetres(math.Abs(high))
	if a != b {
		a += " to " + b
	}
	return ": the longer side " + verb + " by about " + a + " mm"
}
