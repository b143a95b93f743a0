package main

import "backleaf/record"

func panelReuse(a *app) {
	var b record.UsedAgain
	act(a, "panel reuse", &b, flags{"over-earlier-paint": &b.Over, "earlier": &b.Earlier, "note": &b.Note})
}
