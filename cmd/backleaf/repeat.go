package main

import (
	"slices"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
	"backleaf/record/studio/typed"
)

var entryName = pattern.Of(`^[Ee][0-9]+$`)

func newRepeat(a *app) {
	var w record.Coating
	var seq int64
	o := &moment{}
	o.terms = func(args []string) (_ []string, err error) {
		if entryName().MatchString(args[0]) {
			seq, err = typed.Entry(args[0])
			args = args[1:]
		}
		if err == nil && len(args) == 0 {
			err = usage("name them after the entry, like E12 0015-0018", "on which panels was it done?")
		}
		return args, err
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
