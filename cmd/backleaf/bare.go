package main

import "backleaf/record"

func newBare(a *app) {
	var b record.LeftBare
	act(a, "bare", &b, flags{"on": &b.Faces, "because": &b.Because})
}
