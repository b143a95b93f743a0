package check

import (
	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/balance"
)

var balancedPull = Rule{
	Name: "balanced-pull",
	Source: "the formula of Stoney (Proc. R. Soc. A 82, 1909) for a film on a plate; stresses of films as measured and published, else from memory; " +
		"pull of cloth borrowed from canvas on a stretcher; limits: standards for doors and boards, MITRA (0.20 to 0.26 % called very minor)",
	Severity: Advice,
	judge:    judgePull,
}

// judgePull grades the bow that coats and cloth can make. A bow measured after
// the last of them decides; else only figures that leave no doubt do.
func judgePull(s *subject) []verdict {
	work := filter(s.between(), func(f film) bool { return !f.reckoned().Picture })
	if len(work) == 0 {
		return one(NotApplicable, nil, "nothing-on-faces")
	}
	v := s.pull(work)
	m, after := s.measured(work)
	switch {
	case m == nil:
		return []verdict{v}
	case after == record.Yes || m.verdict.outcome == v.outcome:
		return []verdict{m.verdict}
	}
	return one(NotRecorded, append(m.verdict.entries, v.entries...), "measured-when-open")
}

// pull judges by reckoning alone.
func (s *subject) pull(work []film) verdict {
	at := append(filmSeqs(work...), s.cut.Seq)
	for _, face := range faces {
		if s.told(face) != record.Yes {
			return s.faceOpen(face)
		}
	}
	var worst balance.Judgement
	for i, p := range s.reckoned() {
		j := balance.Judge(&p)
		switch {
		case i == 0:
			worst = j
		case j.Outcome != worst.Outcome:
			return say(NotRecorded, at, "order-open")
		case j.Work.Worst().MostPercent() > worst.Work.Worst().MostPercent():
			worst = j
		}
	}
	switch worst.Outcome {
	case balance.CannotJudge:
		return s.cannot(worst.Cannot, at)
	case balance.NotRecorded:
		would := record.Code("")
		if worst.Would[0] == worst.Would[1] && worst.Would[1] == worst.Would[2] {
			would = record.Code(worst.Would[0])
		}
		if worst.Lacks.Binders {
			return say(NotRecorded, at, "pull-binders-open", record.With("would", would))
		}
		why, lacking := why(work, at)
		return say(NotRecorded, lacking, "pull-amounts-open", append(why, record.With("would", would))...)
	}
	b := worst.Work.Worst()
	values := bowValues(b, worst.Lacks.Grain)
	switch worst.Outcome {
	case balance.Holds:
		return say(Holds, at, "pull-holds", values...)
	case balance.FallsShort:
		v := say(FallsShort, at, "pull-strong", values...)
		if b.LeastGrade == balance.Strong {
			v.severity = Warning
		}
		return v
	}
	return say(NotRecorded, at, "pull-open", values...)
}

// faceOpen says that it is not recorded whether more was laid on a face.
func (s *subject) faceOpen(face record.Face) verdict {
	return say(NotRecorded, append(filmSeqs(s.on(face)...), s.cut.Seq), "face-open", record.With("face", face))
}

// why says what is missing for the thickness of the first layer of unknown
// thickness, as a code with its values, and the entries of which the same
// is missing; all of them where no layer tells.
func why(films []film, all []int64) ([]record.Value, []int64) {
	films = filter(films, func(f film) bool { return f.Dry == amount.Unknown && !isCloth(f) })
	if len(films) == 0 {
		return []record.Value{record.With("why", record.Code("amount-open"))}, all
	}
	why := films[0].Why
	films = filter(films, func(f film) bool { return same(f.Why, why) })
	return append([]record.Value{record.With("why", record.Code(why.Code))}, why.Values...), filmSeqs(films...)
}

// cannot says why nothing can be reckoned.
func (s *subject) cannot(why balance.Cannot, at []int64) verdict {
	o := NotRecorded
	if why == balance.NoFigure {
		o = NotApplicable
	}
	return say(o, at, "cannot-"+string(why))
}

// bowValues are the figures of a reckoned bow: its range without sign, the
// side, its direction in the board, and the face that goes hollow. Where the
// grain is not recorded the direction is the run of the grain that bows most.
func bowValues(b *balance.Bow, grainOpen bool) []record.Value {
	direction := record.Code([...]string{"along-grain", "across-grain"}[b.Direction])
	if grainOpen {
		direction = map[bool]record.Code{true: "grain-along-height", false: "grain-along-width"}[(b.Over == "height") == (b.Direction == balance.Along)]
	}
	return []record.Value{
		record.With("bow", []record.Figure{millimetres(b.BowMicrons.Least()), millimetres(b.BowMicrons.Most())}),
		record.With("most", millimetres(b.BowMicrons.Most())),
		record.With("over", record.Code("over-"+string(b.Over))),
		record.With("span", millimetres(b.SpanMicrons)),
		record.With("direction", direction),
		record.With("toward", toward(b.BowMicrons)),
	}
}

func toward(bow balance.Range) record.Toward {
	switch {
	case bow.Low >= 0 && bow.High > 0:
		return "front"
	case bow.High <= 0 && bow.Low < 0:
		return "back"
	}
	return record.Unknown
}
