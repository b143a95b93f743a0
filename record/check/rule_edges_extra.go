package check

import "backleaf/record"

var edgesExtra = Rule{
	Name:     "edges-extra",
	Source:   "common practice",
	Severity: Information,
	judge:    judgeEdges,
}

func judgeEdges(s *subject) []verdict {
	coats := filter(s.all(), isCoat)
	if len(coats) == 0 {
		return one(NotApplicable, nil, "no-coat")
	}
	edges := filter(s.on(record.Edges), isCoat)
	for _, f := range edges {
		if f.Layer.Extra {
			return one(Holds, filmSeqs(f), "edges-extra")
		}
	}
	most := max(len(filter(s.on(record.Front), isCoat)), len(filter(s.on(record.Back), isCoat)))
	switch {
	case len(edges) > most:
		return one(Holds, filmSeqs(edges...), "edges-more-coats", record.With("edges", len(edges)), record.With("faces", most))
	case s.unless() != record.No:
		return one(NotRecorded, filmSeqs(coats...), "edges-extra-open")
	case len(edges) == 0:
		return []verdict{say(FallsShort, filmSeqs(coats...), "edges-bare").at(Advice)}
	}
	return one(FallsShort, filmSeqs(edges...), "edges-extra-not")
}
