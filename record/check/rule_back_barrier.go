package check

import (
	"backleaf/record"
	"backleaf/record/balance"
)

var backBarrier = Rule{
	Name:     "back-barrier",
	Source:   "MITRA, answer QID 431 on back coats; vapour resistances as for balanced-moisture",
	Severity: Advice,
	judge:    judgeBarrier,
}

// dampRoom is the humidity in % RH from which a place counts as damp.
const dampRoom = 60

// judgeBarrier asks whether a wall 10 % damper than the room would bow a panel
// that is meant for a damp place: a barrier on either face helps.
func judgeBarrier(s *subject) []verdict {
	meant := s.p.Description().MeantFor
	mp, ok := meant.Millipercent()
	if !ok {
		return one(NotRecorded, nil, "meant-for-open")
	}
	if mp <= dampRoom*1000 {
		return one(NotApplicable, nil, "meant-for-dry-air", record.With("meant", meant))
	}
	at := append(filmSeqs(s.all()...), s.cut.Seq)
	for _, face := range faces {
		if s.told(face) != record.Yes {
			return []verdict{s.faceOpen(face)}
		}
	}
	p := s.reckoned()[0]
	w, m := balance.WallOf(&p, swing), balance.MoistureOf(&p, swing)
	switch {
	case w.Cannot != "":
		return []verdict{s.cannot(w.Cannot, at)}
	case m.Lacks.Amounts:
		why, lacking := why(s.all(), at)
		return one(NotRecorded, lacking, "moisture-amounts-open", why...)
	}
	bow, span, over := worst(w.Height, w.Width, &p)
	values := []record.Value{record.With("meant", meant), record.With("bow", millimetres(bow.Typical)), record.With("over", record.Code(over)), record.With("span", millimetres(span))}
	if balance.GradeOf(bow.Typical, span) >= balance.Matters {
		return one(FallsShort, at, "barrier-not", values...)
	}
	return one(Holds, at, "barrier", values...)
}
