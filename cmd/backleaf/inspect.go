package main

import "backleaf/record"

func newInspect(a *app) {
	var b record.Inspection
	act(a, "inspect", &b, flags{"bow": &b.Bow, "span": &b.Span, "hollow-to": &b.Toward, "along": &b.Along, "edges": &b.Edges,
		"adhesion": &b.Adhesion, "by": &b.By, "remarks": &b.Remarks})
}
