package main

import "backleaf/record"

func panelBrace(a *app) {
	var b record.Braced
	act(a, "panel brace", &b, flags{"with": &b.Bracing, "fixing": &b.Fixing, "run": &b.Run, "note": &b.Note})
}
