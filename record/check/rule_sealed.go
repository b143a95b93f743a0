package check

import (
	"strings"

	"backleaf/record"
)

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
	if s.board().Kind == record.AluminiumComp {
		return one(NotApplicable, nil, "the board takes up no moisture")
	}
	start := -1
	for _, f := range s.Films {
		if isCloth(f) || isGround(f) {
			start = s.place(f.Layer.Seq)
			break
		}
	}
	if start < 0 {
		return one(NotApplicable, nil, "no cloth or ground is laid yet")
	}
	var vs []Verdict
	any := false
	for _, face := range record.Faces {
		v := s.sealed(face, start)
		any = any || len(v.Entries) > 0
		vs = append(vs, v)
	}
	if !any {
		return one(NotRecorded, nil, "no sealing coat is recorded on any face")
	}
	return vs
}

func (s *Subject) sealed(face record.Face, start int) Verdict {
	var doubtful []int64
	for _, f := range filter(s.on(face), isCoat) {
		before := s.place(f.Layer.Seq) < start
		switch {
		case !purposeKnown(f) && before:
			doubtful = append(doubtful, f.Layer.Seq)
		case f.Layer.Purpose == record.Ground || !purposeKnown(f):
		case before:
			return verdict(Holds, []int64{f.Layer.Seq}, "%s sealed first", faceIs(face))
		case len(doubtful) == 0:
			return verdict(FallsShort, []int64{f.Layer.Seq}, "%s sealed only after cloth or ground was laid", faceIs(face)).at(Advice)
		}
	}
	if len(doubtful) > 0 {
		return verdict(NotRecorded, doubtful, "what the first coat on the %s is for is not recorded", face)
	}
	return verdict(FallsShort, nil, "%s not sealed", faceIs(face))
}

func faceIs(f record.Face) string {
	if f == record.Edges {
		return "the edges are"
	}
	return "the " + string(f) + " is"
}

func list(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}
