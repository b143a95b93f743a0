package check

import (
	"math"

	"backleaf/record"
	"backleaf/record/trade"
)

var filmForming = Rule{
	Name:     "film-forming-temperature",
	Source:   "ASTM D2354; Sewell, Pigment & Resin Technology 27(3), 1998; the figure of the material where it is stated",
	Severity: Warning,
	judge:    judgeFilmForming,
}

func judgeFilmForming(s *subject) []verdict {
	vs := make([]verdict, 0, len(s.films))
	for _, f := range s.all() {
		if isCloth(f) {
			continue
		}
		water := f.fuses()
		c, read := s.celsius(f)
		limit, stated := s.filmLimit(f)
		warm := record.Answer(record.Unknown)
		switch {
		case !read:
		case c.high < limit:
			warm = record.No
		case stated && c.low >= limit:
			warm = record.Yes
		}
		o := outcome(water, warm)
		at := append(filmSeqs(f), c.seqs...)
		switch {
		case o == NotApplicable:
		case water == record.Unknown:
			vs = append(vs, say(o, at, "waterborne-open", what(f)))
		case !read:
			vs = append(vs, say(o, at, "temperature-open", what(f)))
		case o == NotRecorded:
			vs = append(vs, say(o, at, "film-limit-open", what(f), record.With("temperature", figure(c.low, "°C"))))
		default:
			vs = append(vs, say(o, at, "film-forms"+suffix[o], what(f), record.With("temperature", figure(c.low, "°C")), record.With("limit", figure(limit, "°C"))))
		}
	}
	return orNone(vs, "no-waterborne-coat")
}

// filmLimit is the highest lowest film-forming temperature that parts of a
// layer state, and whether all state one that have one.
func (s *subject) filmLimit(f film) (limit float64, all bool) {
	ms, all := f.materials()
	limit = math.Inf(-1)
	for _, m := range ms {
		mc, ok := m.MinFilm.Millicelsius()
		if !ok {
			all = all && trade.Fuses(m.Binder) == record.No
			continue
		}
		limit = max(limit, float64(mc)/1000)
	}
	return limit, all && !math.IsInf(limit, -1)
}
