package main

import (
	"maps"
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/kept"
)

func studioChange(a *app) {
	var said record.Studio
	var mark string
	o := &moment{}
	a.acts("studio change", o, func(d *doing) (w studio.Written, err error) {
		n := d.v.StudioAt(d.at)
		into := studioFlags(&n)
		for _, name := range append([]string{"units"}, slices.Sorted(maps.Keys(into))...) { // what is not said stays
			if field := into[name]; d.form.Flags().Changed(name) {
				if was, ok := field.(*string); ok {
					*was = "" // said empty, it is taken away
				}
				d.r.Into(name, field, d.form.Flag(name).Value.String())
			}
			d.r.Units = n.Units
		}
		if n = tidy(n); mark != "" {
			n.Picture, err = kept.KeepMark(d.v.Book.Path(), mark)
		}
		if err == nil {
			err = d.r.Err()
		}
		if err != nil {
			return w, err
		}
		if n.LinkBase != d.v.Shop.Studio.LinkBase {
			d.after = func() error { a.sayLink(n); return nil }
		}
		return d.v.Change(d.ctx, d.at, n)
	}, studioFlags(&said), o.when(), flags{"mark-picture": &mark})
}
