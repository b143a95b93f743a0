package main

import (
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/kept"
)

func panelPhoto(a *app) {
	p := record.Photograph{Role: "front"}
	var file string
	var keepPlace bool
	o := &moment{terms: lastOr(&file)}
	a.acts("panel photo", o, func(d *doing) (w studio.Written, err error) {
		data, said, err := kept.Load(file, &p, keepPlace)
		if err != nil {
			return w, err
		}
		a.warn(d.v, said)
		return bench.Photograph(d.ctx, d.v, d.at, p, data)
	}, o.when(), flags{"role": &p.Role, "credit": &p.Credit, "taken": &p.Taken, "keep-place": &keepPlace, "caption": &p.Caption})
}
