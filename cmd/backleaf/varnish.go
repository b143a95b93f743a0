package main

import "backleaf/record"

func newVarnish(a *app) {
	var b record.Varnish
	act(a, "varnish", &b, coating(&b.Coating), flags{"on": &b.Faces, "resin": &b.Resin, "removable": &b.Removable, "removed-with": &b.RemovedWith, "gloss": &b.Gloss})
}
