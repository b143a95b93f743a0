package main

import "backleaf/record"

func newTreat(a *app) {
	var b record.Treatment
	act(a, "treat", &b, flags{"by": needed{&b.By}, "text": &b.Text, "with": &b.With, "because": &b.Why, "on": &b.Faces})
}
