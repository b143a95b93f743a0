package check

import (
	"time"

	"backleaf/record"
)

var trimmedInTime = Rule{
	Name:     "trimmed-in-time",
	Source:   "common practice",
	Severity: Information,
	judge:    judgeTrimmed,
}

// When cloth is trimmed, counted from laying it (common practice).
const (
	trimFrom  = 10 * time.Minute
	trimUntil = 30 * time.Hour
)

func judgeTrimmed(s *subject) []verdict {
	var vs []verdict
	for _, c := range each[record.ClothLaid](s) {
		vs = append(vs, s.trimmed(c))
	}
	return orNone(vs, "no-cloth")
}

// trimmed judges a cloth by the first trimming after it.
func (s *subject) trimmed(c record.Done[record.ClothLaid]) verdict {
	doubt := []int64{c.Seq}
	for _, t := range each[record.Trimmed](s) {
		at := []int64{t.Seq, c.Seq}
		later := before(c.At, t.At)
		passed, ok := between(c.At, t.At)
		switch {
		case later == record.No:
			continue
		case later == record.Unknown || !ok:
			doubt = append(doubt, t.Seq)
			continue
		case len(doubt) > 1:
			return say(NotRecorded, append(at, doubt...), "trimmed-when-open")
		}
		switch soft, set := not(passed.atLeast(trimUntil+1)), passed.atLeast(trimFrom); all(soft, set) {
		case record.Yes:
			return say(Holds, at, "trimmed", record.With("time", lasting(passed.least)))
		case record.Unknown:
			return say(NotRecorded, at, "trimmed-when-open")
		default:
			if set == record.No {
				return say(FallsShort, at, "trimmed-early", record.With("time", lasting(passed.most)))
			}
			return say(FallsShort, at, "trimmed-late", record.With("time", lasting(passed.least)))
		}
	}
	if len(doubt) > 1 {
		return say(NotRecorded, doubt, "trimmed-when-open")
	}
	if laid, ok := c.At.Latest(); ok && s.moment().Before(laid.Add(trimUntil)) {
		return say(NotApplicable, doubt, "trimming-to-come")
	}
	return say(NotRecorded, doubt, "trimmed-open")
}
