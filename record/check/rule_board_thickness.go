package check

import "backleaf/record"

var boardThickness = Rule{
	Name:     "board-thickness",
	Title:    "The board is thick enough for its size, or braced.",
	Reason:   "Stiffness goes with the cube of the thickness; a thin large board bows and flexes the layers on it.",
	Source:   "MITRA, thread on fibreboard for egg tempera (one panel maker's rough estimate) and Rigid Supports (bracing); a painter's letter on wood panels (thin plywood to about 16 × 20 in); from 9 mm: common practice",
	Severity: Advice,
	Judged:   "Unbraced: 6 mm and more up to 9 × 12 in, 9 mm and more up to 24 in. Thinner plywood up to 16 × 20 in is only noted, since one painter's limit allows it. Braced panels hold.",
	Remedy:   "Fix a brace or strainer so that the board can move, or frame the panel with a stiff backing board.",
	Judge:    judgeThickness,
}

func judgeThickness(s *Subject) []Verdict {
	at := []int64{s.Cut.Seq}
	if b := record.Each[record.Braced](s.Panel); len(b) > 0 {
		return one(Holds, append(at, seqs(b)...), "the panel is braced")
	}
	long, short, ok1 := s.sides()
	t, ok2 := s.thickness()
	kind := s.board().Kind
	const inch = 25400
	in := func(a, b float64) bool { return short <= a*inch && long <= b*inch }
	switch {
	case ok1 && ok2 && (t >= 9000 && long <= 24*inch || t >= 6000 && in(9, 12)):
		return one(Holds, at, "%s mm thick, %s", trimFloat(t/1000), s.Panel.Size())
	case kind == record.AluminiumComp || kind == record.Honeycomb:
		return one(NotApplicable, at, "the rule is for wood and fibreboards")
	case !ok1 || !ok2:
		return one(NotRecorded, at, "size or thickness of the board")
	case kind == "":
		return one(NotRecorded, at, "the kind of board")
	case kind == record.Plywood && t >= 2500 && in(16, 20):
		return []Verdict{verdict(FallsShort, at, "%s mm plywood, unbraced: thin by one estimate, within another's limit of 16 × 20 in", trimFloat(t/1000)).at(Information)}
	}
	return one(FallsShort, at, "%s mm is thin for %s unbraced", trimFloat(t/1000), s.Panel.Size())
}
