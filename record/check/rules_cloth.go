package check

import (
	"time"

	"backleaf/record"
)

// What was written down when the cloth was laid.

var wetThrough = Rule{
	Name:     "wet-through",
	Source:   "common practice; wetting through is one way among others to leave no place without glue",
	Severity: Information,
	judge: func(s *subject) []verdict {
		return s.cloths("wet-through", func(c record.ClothLaid) record.Answer { return c.WetThrough },
			func(c record.ClothLaid) record.Answer {
				m, ok := s.w.Material(c.Cloth, c.ClothAs)
				if !ok {
					return record.Unknown
				}
				return not(m.Cloth.Sized) // a primed cloth cannot be wetted through
			})
	},
}

var edgesPressed = Rule{
	Name:     "edges-pressed",
	Source:   "common practice",
	Severity: Advice,
	judge: func(s *subject) []verdict {
		return s.cloths("edges-pressed", func(c record.ClothLaid) record.Answer { return c.EdgesPressed }, always)
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
		}, always)
	},
}

func always(record.ClothLaid) record.Answer { return record.Yes }
