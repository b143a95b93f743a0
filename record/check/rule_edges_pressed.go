package check

import "backleaf/record"

var edgesPressed = Rule{
	Name:     "edges-pressed",
	Title:    "The cloth is pressed down at the edges.",
	Reason:   "Edges are where cloth lets go first.",
	Source:   "common practice",
	Severity: Advice,
	Judged:   "By what was recorded when each cloth was laid.",
	Remedy:   "Try the edges with a fingernail. Work sealer under a loose one and press it until it holds.",
	Judge: func(s *Subject) []Verdict {
		return s.cloths(func(c record.ClothLaid) (record.Answer, string) { return c.EdgesPressed, "pressed down at the edges" })
	},
}
