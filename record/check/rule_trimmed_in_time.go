package check

import (
	"time"

	"backleaf/record"
)

var trimmedInTime = Rule{
	Name:     "trimmed-in-time",
	Title:    "The cloth is trimmed while the film is still soft.",
	Reason:   "From about 10 minutes after laying the cloth no longer shifts; after 30 hours at the latest the film is hard, and a blade tears threads or lifts the edge.",
	Source:   "common practice",
	Severity: Information,
	Judged:   "From the time the cloth was laid to the time it was trimmed: 10 minutes to 30 hours.",
	Remedy:   "Nothing is lost: trim with a fresh blade or ease with sandpaper, then seal the edges again.",
	Judge:    judgeTrimmed,
}

// When cloth is trimmed, counted from laying it (common practice).
const (
	trimFrom  = 10 * time.Minute
	trimUntil = 30 * time.Hour
)

func judgeTrimmed(s *Subject) []Verdict {
	trims := record.Each[record.Trimmed](s.Panel)
	var vs []Verdict
	for _, c := range record.Each[record.ClothLaid](s.Panel) {
		vs = append(vs, s.trimmed(c, trims))
	}
	return orNone(vs, "no cloth is laid")
}

func (s *Subject) trimmed(c record.Done[record.ClothLaid], trims []record.Done[record.Trimmed]) Verdict {
	for _, t := range trims {
		if s.place(t.Seq) < s.place(c.Seq) {
			continue
		}
		at := []int64{t.Seq, c.Seq}
		least, most, ok := elapsed(c.At, t.At)
		switch {
		case !ok:
			return verdict(NotRecorded, at, "when the cloth was laid or trimmed")
		case least >= trimFrom && most <= trimUntil:
			return verdict(Holds, at, "trimmed %s after laying", days(least))
		case most < trimFrom:
			return verdict(FallsShort, at, "trimmed %s after laying, while the cloth could still shift", days(most))
		case least > trimUntil:
			return verdict(FallsShort, at, "trimmed %s after laying, when the film was hard", days(least))
		}
		return verdict(NotRecorded, at, "the times of laying and trimming are not exact enough")
	}
	if laid, ok := c.At.Latest(); ok && s.Now.Before(laid.Add(trimUntil)) {
		return verdict(NotApplicable, []int64{c.Seq}, "the cloth is still to be trimmed")
	}
	return verdict(NotRecorded, []int64{c.Seq}, "whether the cloth was trimmed")
}
