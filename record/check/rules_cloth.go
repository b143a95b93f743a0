package check

import (
	"time"

	"backleaf/record"
)

// What was written down when the cloth was laid.

var wetThrough = Rule{
	Name:     "wet-through",
	Source:   "common practice; wetting through is one way among others to leave no place without glue; MITRA, glue in pre-primed cloth on aluminium composite",
	Severity: Information,
	judge:    judgeWet,
}

// judgeWet asks raw cloth whether it was wetted through. A primed one cannot
// be, and asks that the board lets the water of the glue out instead.
func judgeWet(s *subject) []verdict {
	var vs []verdict
	for _, c := range each[record.ClothLaid](s) {
		primed := record.Answer(record.Unknown)
		if m, ok := s.w.Material(c.Body.Cloth, c.Body.ClothAs); ok {
			primed = m.Cloth.Sized
		}
		at := []int64{c.Seq}
		if trapped := all(primed, s.isBoard(record.AluminiumComp)); trapped == record.Yes {
			vs = append(vs, say(FallsShort, at, "water-trapped"))
			continue
		}
		o := outcome(not(primed), c.Body.WetThrough)
		if o == NotApplicable && s.isBoard(record.AluminiumComp) != record.No {
			vs = append(vs, say(NotRecorded, at, "board-kind-open"))
			continue
		}
		vs = append(vs, say(o, at, "wet-through"+suffix[o]))
	}
	return orNone(vs, "no-cloth")
}

var edgesPressed = Rule{
	Name:     "edges-pressed",
	Source:   "common practice",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return s.cloths("edges-pressed", func(c record.ClothLaid) record.Answer { return c.EdgesPressed })
	},
}

var clothWeighted = Rule{
	Name:     "cloth-weighted",
	Source:   "a secondary page on conservation-quality canvas panels (24 hours or more)",
	Severity: Information,
	judge: func(s *subject) []verdict {
		return s.cloths("cloth-weighted", func(c record.ClothLaid) record.Answer {
			sec, ok := c.Weighted.Seconds()
			if !ok {
				return record.Unknown
			}
			return is(time.Duration(sec)*time.Second >= day)
		})
	},
}
