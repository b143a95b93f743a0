package main

import (
	"backleaf/record"
	"backleaf/record/studio/typed"
)

func newCloth(a *app) {
	b, o := record.ClothLaid{Faces: []record.Face{record.Front}}, &moment{}
	cloth := func(r *typed.Reader, t ...string) { b.Cloth, b.ClothLot = r.OnShelf(t[0]) }
	actAt(a, "cloth", o, &b, coating(&b.Coating), flags{"on": &b.Faces, "again": &o.relaid, "cloth": cloth, "threads": &b.Run, "oversize": &b.Oversize,
		"wet-through": &b.WetThrough, "edges-pressed": &b.EdgesPressed, "weighted": &b.Weighted})
}
