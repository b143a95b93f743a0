package main

import (
	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newSand(a *app) {
	b := record.Sanded{Faces: []record.Face{record.Front}}
	grit := func(r *typed.Reader, t ...string) { b.Scale, b.Grit = r.Grit("grit", t[0]) }
	act(a, "sand", &b, flags{"on": &b.Faces, "grit": grit, "wet": &b.Wet, "through": &b.Through, "dusted": &b.Dusted, "note": &b.Note})
}
