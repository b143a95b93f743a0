package main

import (
	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/shelf"
)

func materialStarter(a *app) {
	a.command("material starter", nil, func(r *run) error {
		if len(r.args) == 0 {
			t := a.table()
			for _, m := range shelf.Starter() {
				t.Row(string(m.Key), a.usesText(m.Uses), m.Name)
			}
			return t.Done()
		}
		var ms []record.Material
		for _, k := range r.args {
			if k == "all" {
				ms = append(ms, shelf.Starter()...)
				continue
			}
			m, err := shelf.Generic(k)
			if err != nil {
				return err
			}
			ms = append(ms, m)
		}
		return r.writing(atBench(&moment{terms: keysOf()}, func(d *doing) (studio.Written, error) { return shelf.Take(d.ctx, d.v, d.at, ms) }))
	})
}
