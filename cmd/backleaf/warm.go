package main

import "backleaf/record"

func newWarm(a *app) {
	var b record.WarmAir
	act(a, "warm", &b, flags{"on": &b.Faces, "for": &b.For, "note": &b.Note})
}
