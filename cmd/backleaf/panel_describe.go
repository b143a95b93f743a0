package main

import "backleaf/record"

func panelDescribe(a *app) {
	var b record.Described
	act(a, "panel describe", &b, flags{"title": &b.Title, "romanised": &b.Romanised, "made": &b.Made, "subject": &b.Subject,
		"inscription": &b.Inscription, "signed": &b.Signed, "features": &b.Features, "type": &b.Type, "medium-line": &b.Medium,
		"meant-for-rh": &b.MeantFor, "own-reference": &b.Owner, "framed": &b.Framed, "edition": &b.Edition, "summary": &b.Summary, "note": &b.Note})
}
