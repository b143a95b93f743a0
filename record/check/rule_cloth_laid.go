package check

import (
	"time"

	"backleaf/record"
)

var wetThrough = Rule{
	Name:     "wet-through",
	Title:    "The cloth is wetted through from above.",
	Reason:   "Only a saturated cloth lies without air under it, and only a saturated weave is locked by the cured film, so that light sanding does not cut it.",
	Source:   "common practice",
	Severity: Warning,
	Judged:   "By what was recorded when each cloth was laid.",
	Remedy:   "Tap the cloth for hollow spots. Another thin coat of the sealer, worked in until it soaks through, can still lock the weave; a hollow has to be relaid.",
	Judge: func(s *Subject) []Verdict {
		return s.cloths(func(c record.ClothLaid) (record.Answer, string) { return c.WetThrough, "wetted through" })
	},
}

var edgesPressed = Rule{
	Name:     "edges-pressed",
	Title:    "The cloth is pressed down at the edges.",
	Reason:   "Edges are where cloth lets go first.",
	Source:   "common practice",
	Severity: Advice,
	Judged:   "By what was recorded when each cloth was laid.",
	Remedy:   "Try the edges with a fingernail. Work sealer under a loose one and press it until it holds.",
	Judge: func(s *Subject) []Verdict {
		return s.cloths(func(c record.ClothLaid) (record.Answer, string) { return c.EdgesPressed, "pressed down at the edges" })
	},
}

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

// cloths asks one question of every cloth laid.
func (s *Subject) cloths(ask func(record.ClothLaid) (record.Answer, string)) []Verdict {
	var vs []Verdict
	for _, c := range record.Each[record.ClothLaid](s.Panel) {
		answer, what := ask(c.Body)
		at := []int64{c.Seq}
		switch answer {
		case record.Yes:
			vs = append(vs, verdict(Holds, at, "the cloth was %s", what))
		case record.No:
			vs = append(vs, verdict(FallsShort, at, "the cloth was not %s", what))
		default:
			vs = append(vs, verdict(NotRecorded, at, "whether the cloth was %s", what))
		}
	}
	return orNone(vs, "no cloth is laid")
}

// orNone says why nothing was judged where nothing was.
func orNone(vs []Verdict, why string) []Verdict {
	if len(vs) == 0 {
		return one(NotApplicable, nil, "%s", why)
	}
	return vs
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
