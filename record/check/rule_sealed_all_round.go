package check

import "backleaf/record"

var sealedAllRound = Rule{
	Name:     "sealed-all-round",
	Title:    "The board is sealed on front, back and edges before cloth or ground.",
	Reason:   "A bare face takes up moisture faster than a sealed one. The difference between the faces bows a board far more than any coat does, and edges drink most.",
	Source:   "MITRA, answer on back coats (front and back should respond alike); edges: common practice",
	Severity: Warning,
	Judged:   "Each face needs a coat of size, sealer, adhesive, stain block, isolation or barrier before the first cloth or ground. A coat whose purpose is not recorded settles nothing. A face sealed later is only advice.",
	Remedy:   "Seal the bare faces now, edges twice, and let the panel lie flat while it cures.",
	Judge:    judgeSealed,
}

func judgeSealed(s *Subject) []Verdict {
	// A coat of unknown purpose may be a ground already: what comes after it
	// was not certainly in time.
	start, doubt := -1, -1
	for _, f := range s.Films {
		at := s.place(f.Layer.Seq)
		if isCloth(f) || isGround(f) {
			start = at
			break
		}
		if isCoat(f) && !purposeKnown(f) && doubt < 0 {
			doubt = at
		}
	}
	if start < 0 {
		return one(NotApplicable, nil, "no cloth or ground is laid yet")
	}
	var vs []Verdict
	any, all := false, true
	for _, face := range record.Faces {
		v := s.sealed(face, start, doubt)
		any = any || len(v.Entries) > 0
		all = all && v.Outcome == Holds
		vs = append(vs, v)
	}
	if !all && s.board().Kind == record.AluminiumComp {
		return one(NotApplicable, nil, "the board takes up no moisture")
	}
	if !any {
		return one(NotRecorded, nil, "no sealing coat is recorded on any face")
	}
	return vs
}

// sealed judges one face: cloth or ground came at start, a coat of unknown
// purpose at doubt (-1: none).
func (s *Subject) sealed(face record.Face, start, doubt int) Verdict {
	for _, f := range filter(s.on(face), isCoat) {
		at, entries := s.place(f.Layer.Seq), []int64{f.Layer.Seq}
		switch {
		case at < start && doubt >= 0 && at >= doubt:
			return verdict(NotRecorded, []int64{f.Layer.Seq, s.Panel.Events[doubt].Seq}, "what the first coats were for: whether the %s came before ground", coatOn(face))
		case f.Layer.Purpose == record.Ground || !purposeKnown(f):
		case at < start:
			return verdict(Holds, entries, "%s sealed first", faceIs(face))
		case at == start && f.Layer.Purpose == record.Adhesive:
			return verdict(FallsShort, entries, "%s sealed only by the adhesive of the cloth", faceIs(face)).at(Advice)
		default:
			return verdict(FallsShort, entries, "%s sealed only after cloth or ground was laid", faceIs(face)).at(Advice)
		}
	}
	return verdict(FallsShort, nil, "%s not sealed", faceIs(face))
}

func coatOn(f record.Face) string { return "coat on the " + string(f) }
