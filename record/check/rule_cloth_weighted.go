package check

import (
	"time"

	"backleaf/record"
)

var clothWeighted = Rule{
	Name:     "cloth-weighted",
	Title:    "The panel lies under weights for a day after the cloth is laid.",
	Reason:   "Weights hold board and cloth together and the panel flat while the film sets.",
	Source:   "a secondary page on conservation-quality canvas panels (24 hours or more)",
	Severity: Information,
	Judged:   "By the time under weights recorded with each cloth.",
	Remedy:   "Tap the cloth for hollow spots and check the panel for bow.",
	Judge:    judgeWeighted,
}

func judgeWeighted(s *Subject) []Verdict {
	var vs []Verdict
	for _, c := range record.Each[record.ClothLaid](s.Panel) {
		at := []int64{c.Seq}
		sec, ok := c.Body.Weighted.Seconds()
		switch t := time.Duration(sec) * time.Second; {
		case !ok:
			vs = append(vs, verdict(NotRecorded, at, "how long the cloth lay under weights"))
		case t < day:
			vs = append(vs, verdict(FallsShort, at, "the cloth lay under weights for %s", c.Body.Weighted))
		default:
			vs = append(vs, verdict(Holds, at, "the cloth lay under weights for %s", c.Body.Weighted))
		}
	}
	return orNone(vs, "no cloth is laid")
}
