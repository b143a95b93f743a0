package check

import "backleaf/record"

var boardThickness = Rule{
	Name: "board-thickness",
	Source: "MITRA, thread on fibreboard for egg tempera (one panel maker's rough estimate) and Rigid Supports (bracing); " +
		"a painter's letter on wood panels (thin plywood to about 16 × 20 in); from 9 mm: common practice",
	Severity: Advice,
	judge:    judgeThickness,
}

const inch = 25400 // µm

func judgeThickness(s *subject) []verdict {
	at := []int64{s.cut.Seq}
	if b := each[record.Braced](s); len(b) > 0 {
		return one(Holds, append(at, seqs(b)...), "braced")
	}
	long, short, sized := s.sides()
	t, thick := s.thickness()
	in := func(a, b float64) bool { return short <= a*inch && long <= b*inch }
	values := []record.Value{record.With("thickness", s.spelledThickness(t)), record.With("size", record.Size{Height: s.p.Size().Height, Width: s.p.Size().Width})}
	small := sized && thick && long <= 50*t // as slender as the smallest panel that the estimate speaks of
	enough := sized && thick && (t >= 9000 && long <= 24*inch || t >= 6000 && in(9, 12))
	wooden := not(s.isBoard(record.AluminiumComp, record.Honeycomb))
	switch {
	case enough:
		return one(Holds, at, "thick-enough", values...)
	case wooden == record.No:
		return one(NotApplicable, at, "board-not-of-wood")
	case !sized || !thick:
		return one(NotRecorded, at, "thickness-open")
	case small:
		return one(NotApplicable, at, "thickness-of-small", values...)
	case wooden != record.Yes:
		return one(NotRecorded, at, "board-kind-open")
	case s.unless() != record.No:
		return one(NotRecorded, at, "bracing-open", values...)
	case s.board().Kind == record.Plywood && t >= 2500 && in(16, 20):
		return []verdict{say(FallsShort, at, "thin-plywood", values...).at(Information)}
	}
	return one(FallsShort, at, "thin", values...)
}

// spelledThickness is the thickness of the board in the unit it was measured in.
func (s *subject) spelledThickness(microns float64) any {
	if d := s.p.Size().Depth; !d.IsZero() && !d.IsUnknown() {
		return d
	}
	return figure(microns/1000, "mm")
}
