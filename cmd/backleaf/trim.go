package main

import "backleaf/record"

func newTrim(a *app) {
	var b record.Trimmed
	act(a, "trim", &b, flags{"tool": &b.Tool, "eased": &b.Eased, "note": &b.Note})
}
