package main

import "backleaf/record"

func panelDiscard(a *app) {
	var b record.Discarded
	act(a, "panel discard", &b, flags{"because": needed{&b.Because}})
}
