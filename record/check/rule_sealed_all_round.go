package check

import (
	"slices"

	"backleaf/record"
)

var sealedAllRound = Rule{
	Name:     "sealed-all-round",
	Source:   "MITRA, answer on back coats (front and back should respond alike); edges, and how much it matters: common practice",
	Severity: Warning,
	judge:    judgeSealed,
}

func judgeSealed(s *subject) []verdict {
	begun := record.Answer(record.No)
	for _, f := range s.all() {
		begun = some(begun, is(!isCoat(f)), isGround(f))
	}
	switch begun {
	case record.No:
		return one(NotApplicable, nil, "sealing-to-come")
	case record.Unknown:
		return one(NotRecorded, filmSeqs(filter(s.all(), isCoat)...), "purpose-open")
	}
	var vs []verdict
	open, short := false, false
	for _, face := range record.Faces {
		v := s.sealed(face)
		open, short = open || v.outcome == NotRecorded, short || v.outcome == FallsShort
		vs = append(vs, v)
	}
	switch drinks := not(s.isBoard(record.AluminiumComp)); {
	case drinks == record.No && short && !open:
		return one(NotApplicable, nil, "board-takes-no-moisture")
	case drinks == record.No && short:
		return one(NotRecorded, nil, "purpose-open")
	case drinks == record.Unknown && short:
		return one(NotRecorded, nil, "board-kind-open")
	}
	return vs
}

// sealed judges one face.
func (s *subject) sealed(face record.Face) verdict {
	on := record.With("face", face)
	sealed := record.Answer(record.No)
	coats := filter(s.on(face), isCoat)
	for _, f := range coats {
		if a := f.seals(); a == record.Yes {
			return say(Holds, filmSeqs(f), "sealed", on)
		} else {
			sealed = some(sealed, a)
		}
	}
	bare := s.bare(face)
	astray := slices.ContainsFunc(s.all(), func(f film) bool { return f.Layer.Face == record.Unknown && f.seals() != record.No })
	switch {
	case sealed == record.Unknown:
		return say(NotRecorded, filmSeqs(coats...), "sealed-by-open", on)
	case bare == nil && (astray || len(coats) == 0 && s.unless() != record.No):
		return say(NotRecorded, nil, "sealed-open", on)
	}
	v := say(FallsShort, append(filmSeqs(coats...), bare...), "sealed-not", on)
	switch {
	case len(coats) > 0:
		v.said.Code = "sealed-by-ground-only"
	case bare != nil:
		v.said.Code = "left-bare"
	}
	// A small or a thick panel forgives a bare face (common practice).
	long, _, sized := s.sides()
	if t, thick := s.thickness(); sized && thick && (long <= 300_000 || t >= 12_000) || len(coats) > 0 {
		v.severity = Advice
	}
	return v
}
