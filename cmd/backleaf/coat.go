package main

import "backleaf/record"

func newCoat(a *app) {
	var b record.Coat
	act(a, "coat", &b, coating(&b.Coating), flags{"on": &b.Faces, "extra": &b.Extra, "as": &b.Purpose})
}
