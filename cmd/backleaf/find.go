package main

import (
	"cmp"

	"backleaf/record"
	"backleaf/record/studio/questions"
)

func newFind(a *app) {
	var o questions.Filter
	var by order
	a.command("find", merged([]flags{by.flags(), {"json": &a.asJSON, "csv": &a.asCSV, "material": &o.Materials, "lot": &o.Lots, "binder": &o.Binders,
		"board": &o.Boards, "cloth": &o.Cloths, "unsealed": &o.Unsealed, "out-of-balance": &o.OutOfBalance, "varnish": &o.Varnish, "removable": &o.Removable,
		"made-between": &o.Made, "size-from": &o.SizeFrom, "size-to": &o.SizeTo, "stage": &o.Stage, "where": &o.Where, "handed-to": &o.HandedTo,
		"own-reference": &o.Refs, "finding": &o.Findings, "batch": &o.Batches}}), func(r *run) error {
		o.Words = words(r.args)
		search, err := o.Read(a.now())
		if err := cmp.Or(by.known(), err); err != nil {
			return err
		}
		return r.reading(func(r *run) error {
			var warnings []record.Said
			err := r.sayPanelRows(by, func(f func(questions.Row) error) (err error) {
				warnings, err = search.Panels(r.ctx, r.Session, f)
				return err
			})
			if err == nil {
				a.warn(nil, warnings)
			}
			return err
		})
	})
}
