package main

import (
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newRemove(a *app) {
	t := record.Removed{Extent: "whole"}
	var layers []string
	var notOnRecord bool
	var o moment
	a.acts("remove", &o, func(d *doing) (studio.Written, error) {
		for _, l := range layers {
			seq, err := typed.Entry(l)
			if err != nil {
				return studio.Written{}, err
			}
			t.Layers = append(t.Layers, seq)
		}
		return bench.Remove(d.ctx, d.v, d.at, t, notOnRecord)
	}, o.flags(), flags{"what": &t.What, "extent": &t.Extent, "on": &t.Faces, "layer": &layers, "not-on-record": &notOnRecord, "where": &t.Where,
		"means": &t.Means, "with": &t.With, "done-by": &t.By, "because": &t.Because, "note": &t.Note})
}
