package main

import "backleaf/record"

func panelIntend(a *app) {
	var b record.Intended
	act(a, "panel intend", &b, flags{"cloth": needed{&b.Cloth}, "note": &b.Note})
}
