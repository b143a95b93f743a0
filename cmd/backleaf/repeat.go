package main

import (
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

func newRepeat(a *app) {
	var w record.Coating
	var seq int64
	o := &moment{}
	o.terms = func(args []string) (panels []string, err error) {
		seq, panels, err = typed.AfterEntry(args)
		return panels, err
	}
	a.acts("repeat", o, func(d *doing) (studio.Written, error) {
		body, said, err := bench.Earlier(d.ctx, d.v, seq)
		var other []record.Said
		if err == nil {
			body, other, err = bench.With(body, w)
		}
		if err != nil {
			return studio.Written{}, err
		}
		done, err := d.perform(body)
		done.Warnings = slices.Concat(said, other, done.Warnings)
		return done, err
	}, o.flags(), o.coatFlags(), flags{"remark": &o.remarks}, coating(&w))
}
