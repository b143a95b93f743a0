package check

import (
	"slices"

	"backleaf/record"
	"backleaf/record/measure"
	"backleaf/record/trade"
)

var sandedAfterCure = Rule{
	Name:     "sanded-after-cure",
	Source:   "common practice (24 to 36 hours, longer in humid air)",
	Severity: Advice,
	judge:    judgeSandedCure,
}

func judgeSandedCure(s *subject) []verdict {
	var vs []verdict
	for _, sand := range each[record.Sanded](s) {
		for _, face := range sand.Body.Faces {
			for _, f := range s.on(face) {
				if earlier := before(f.Layer.At, sand.At); isCoat(f) && earlier != record.No {
					vs = append(vs, s.sandedOver(f, sand, earlier))
				}
			}
		}
	}
	return orNone(vs, "nothing-sanded-over")
}

// sandedOver judges whether a coat was cured when it was sanded.
func (s *subject) sandedOver(f film, sand record.Done[record.Sanded], earlier record.Answer) verdict {
	at := append(filmSeqs(f), sand.Seq)
	cure, why := s.cure(f)
	from, ok1 := sand.At.Earliest()
	to, ok2 := sand.At.Latest()
	switch {
	case why.Code != "":
		return say(NotRecorded, at, why.Code, why.Values...)
	case ok1 && !from.Before(cure.safe):
		return say(Holds, at, "sanded-cured", what(f))
	case !ok1 || !ok2 || earlier != record.Yes:
		return say(NotRecorded, at, "sanded-when-open", what(f))
	case to.Before(cure.from):
		return say(FallsShort, at, "sanded-early", what(f), record.With("time", lasting(cure.from.Sub(to))))
	}
	return say(NotRecorded, at, "sanded-in-window", what(f))
}

var sandingGrit = Rule{
	Name:     "sanding-grit",
	Source:   "common practice; particle sizes from a chart of CAMI, P and micron grades",
	Severity: Advice,
	judge:    judgeGrit,
}

func judgeGrit(s *subject) []verdict {
	var vs []verdict
	for _, sand := range each[record.Sanded](s) {
		cloth := record.Answer(record.No)
		for _, face := range sand.Body.Faces {
			cloth = some(cloth, s.clothUnder(face, sand.At))
		}
		if cloth == record.No {
			continue
		}
		b, fine := sand.Body, record.Answer(record.Unknown)
		coarse, err := measure.CoarserThan(measure.Abrasive{Scale: b.Scale, Grit: int(b.Grit)}, measure.Abrasive{Scale: measure.ScaleP, Grit: trade.CoarsestOnCloth})
		if err == nil && b.Grit > 0 {
			fine = is(!coarse)
		}
		o := outcome(cloth, fine)
		vs = append(vs, say(o, []int64{sand.Seq}, "grit-fine"+suffix[o], record.With("scale", b.Scale), record.With("grit", b.Grit)))
	}
	return orNone(vs, "no-cloth-sanded")
}

// clothUnder answers whether a cloth lies under what was sanded of a face,
// with no ground over it that the paper would meet first.
func (s *subject) clothUnder(face record.Face, at record.When) record.Answer {
	out := record.Answer(record.No)
	for _, c := range filter(s.on(face), isCloth) {
		covered := record.Answer(record.No)
		for _, f := range s.on(face) {
			covered = some(covered, all(isGround(f), laidBefore(c, f), before(f.Layer.At, at)))
		}
		out = some(out, all(before(c.Layer.At, at), not(covered)))
	}
	return out
}

var notSandedThrough = Rule{
	Name:     "not-sanded-through",
	Source:   "common practice",
	Severity: Advice,
	judge:    judgeSandedThrough,
}

func judgeSandedThrough(s *subject) []verdict {
	var vs []verdict
	for _, sand := range each[record.Sanded](s) {
		mended, by := record.Answer(record.Yes), []int64{sand.Seq}
		for _, face := range sand.Body.Faces {
			closed := record.Answer(record.No)
			for _, f := range s.on(face) {
				a := all(f.seals(), before(sand.At, f.Layer.At))
				if a != record.No && !slices.Contains(by, f.Layer.Seq) {
					by = append(by, f.Layer.Seq)
				}
				closed = some(closed, a)
			}
			mended = all(mended, closed)
		}
		o := outcome(record.Yes, some(not(sand.Body.Through), mended))
		code := "sanded-through" + map[Outcome]string{Holds: "-mended", NotRecorded: "-open"}[o]
		if sand.Body.Through == record.No {
			code = "sanded-through-not"
		}
		vs = append(vs, say(o, by, code))
	}
	return orNone(vs, "nothing-sanded")
}
