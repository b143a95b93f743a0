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
