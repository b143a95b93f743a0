package check

import (
	"slices"

	"backleaf/record"
)

var edgesExtra = Rule{
	Name:     "edges-extra",
	Title:    "The edges get extra sealer.",
	Reason:   "Edges are where the board drinks and where cloth lets go first.",
	Source:   "common practice",
	Severity: Advice,
	Judged:   "Some coat is recorded as extra on the edges, or the edges have more coats than either face.",
	Remedy:   "Brush another coat onto the edges, after trimming, and let it soak in.",
	Judge:    judgeEdges,
}

func judgeEdges(s *Subject) []Verdict {
	coats := filter(s.Films, isCoat)
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no coat is laid yet")
	}
	edges := filter(s.on(record.Edges), isCoat)
	if len(edges) == 0 {
		return one(FallsShort, filmSeqs(coats), "no coat reached the edges")
	}
	for _, f := range edges {
		if f.Layer.Extra {
			return one(Holds, []int64{f.Layer.Seq}, "the edges were given extra")
		}
	}
	most := max(len(filter(s.on(record.Front), isCoat)), len(filter(s.on(record.Back), isCoat)))
	if len(edges) > most {
		return one(Holds, filmSeqs(edges), "%s on the edges, %d on the faces", count(len(edges), "coat"), most)
	}
	return one(NotRecorded, filmSeqs(slices.Concat(edges, coats)), "whether the edges were given more than the faces")
}
