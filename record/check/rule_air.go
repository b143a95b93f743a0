package check

import (
	"math"

	"backleaf/record"
)

var filmForming = Rule{
	Name:     "film-forming-temperature",
	Title:    "No water-borne coat is laid too cold to form a film.",
	Reason:   "Below its lowest film-forming temperature a dispersion dries to powder instead of a film.",
	Source:   "MITRA, thread on glass transition of fluid acrylics (about 10 °C); the figure of the material where it is stated",
	Severity: Warning,
	Judged:   "Temperature recorded with the coat, or the nearest reading of the room within 12 hours, against 10 °C and the figure of the material. Without the material's own figure only the cold can be told.",
	Remedy:   "Rub the film with a damp cloth. If it chalks or comes off, take it off and coat again in a warm room.",
	Judge:    judgeFilmForming,
}

const coldest = 10.0

func judgeFilmForming(s *Subject) []Verdict {
	var vs []Verdict
	for _, f := range s.Films {
		if isCloth(f) {
			continue
		}
		water := s.waterborne(f)
		if water == record.No {
			continue
		}
		at := []int64{f.Layer.Seq}
		c, from, ok := s.celsius(f)
		if from != f.Layer.Seq && ok {
			at = append(at, from)
		}
		limit, known := s.filmLimit(f)
		switch {
		case water == record.Unknown:
			vs = append(vs, verdict(NotRecorded, at, "whether the %s is water-borne", name(f)))
		case !ok:
			vs = append(vs, verdict(NotRecorded, at, "at what temperature the %s was laid", name(f)))
		case c < max(coldest, limit):
			vs = append(vs, verdict(FallsShort, at, "the %s was laid at %s °C; it needs %s °C", name(f), trimFloat(c), trimFloat(max(coldest, limit))))
		case !known:
			vs = append(vs, verdict(NotRecorded, at, "the %s was laid at %s °C: the lowest temperature at which its material forms a film", name(f), trimFloat(c)))
		default:
			vs = append(vs, verdict(Holds, at, "the %s was laid at %s °C", name(f), trimFloat(c)))
		}
	}
	return orNone(vs, "there is no water-borne coat")
}

// waterborne answers for a layer whether its films form from water. Size of
// glue, gum or starch gels or dries without a lowest temperature and is left
// out.
func (s *Subject) waterborne(f Film) record.Answer {
	switch s.has(f, record.Acrylic, record.PVA) {
	case record.Yes:
		return record.Yes
	case record.No:
		return record.No
	}
	return record.Unknown
}

// filmLimit is the highest lowest film-forming temperature of the parts of a
// layer, and whether all state one.
func (s *Subject) filmLimit(f Film) (float64, bool) {
	ms, all := s.parts(f)
	limit := math.Inf(-1)
	for _, m := range ms {
		mc, ok := m.MinFilm.Millicelsius()
		if !ok {
			all = all && m.Binder != record.Acrylic && m.Binder != record.PVA
			continue
		}
		limit = max(limit, float64(mc)/1000)
	}
	return limit, all
}

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
	coats := filter(s.Films, func(f Film) bool { return !isCloth(f) })
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
