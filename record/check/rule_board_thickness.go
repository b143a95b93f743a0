package check

import "backleaf/record"

var boardThickness = Rule{
	Name:     "board-thickness",
	Title:    "The board is thick enough for its size, or braced.",
	Reason:   "Stiffness goes with the cube of the thickness; a thin large board bows and flexes the layers on it.",
	Source:   "MITRA, thread on fibreboard for egg tempera (one panel maker's rough estimate) and Rigid Supports (bracing); a painter's letter on wood panels (thin plywood to about 16 × 20 in); from 9 mm: common practice",
	Severity: Advice,
	Judged:   "Unbraced: 6 mm and more up to 9 × 12 in, 9 mm and more up to 24 in. Thinner plywood up to 16 × 20 in is only noted, since one painter's limit allows it. Braced panels hold. The estimate names no panels smaller than 9 × 12 in: one no longer than 50 times its thickness, as slender as those, is not judged.",
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
		return one(Holds, at, "%s thick, %s", s.spelledThickness(t), s.Panel.Size())
	case ok1 && ok2 && long <= 50*t:
		return one(NotApplicable, at, "no estimate speaks of panels as small as %s", s.Panel.Size())
	case kind == record.AluminiumComp || kind == record.Honeycomb:
		return one(NotApplicable, at, "the rule is for wood and fibreboards")
	case !ok1 || !ok2:
		return one(NotRecorded, at, "size or thickness of the board")
	case kind == "":
		return one(NotRecorded, at, "the kind of board")
	case kind == record.Plywood && t >= 2500 && in(16, 20):
		return []Verdict{verdict(FallsShort, at, "%s plywood, unbraced: thin by one estimate, within another's limit of 16 × 20 in", s.spelledThickness(t)).at(Information)}
	}
	return one(FallsShort, at, "%s is thin for %s, unbraced", s.spelledThickness(t), s.Panel.Size())
}

// spelledThickness is the thickness of the board in the unit it was measured in.
func (s *Subject) spelledThickness(microns float64) string {
	if d := s.Panel.Size().Depth; !d.IsZero() && !d.IsUnknown() {
		return d.String()
	}
	return trimFloat(microns/1000) + " mm"
}
