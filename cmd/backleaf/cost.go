package main

import (
	"backleaf/record"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newCost(a *app) {
	var except []string
	a.reads("cost", flags{"except": &except, "json": &a.asJSON}, func(r *run) error {
		c := a.catalogue()
		each, batches, next, err := questions.Costs(r.ctx, c, r.Book, r.args, except)
		if err != nil {
			return err
		}
		if a.asJSON {
			return a.sayJSON(each)
		}
		for _, v := range each {
			a.say("%s", v.Panel)
			t := a.table()
			for _, l := range v.Lines {
				if l.Missing != "" {
					t.Row("  "+l.What, a.line("cost-missing"), a.entry(l.Entry), l.Missing)
				} else {
					t.Row("  "+l.What, l.Cost.String(), a.entry(l.Entry), a.line("of-lot", record.With("lot", l.Lot)))
				}
			}
			t.Row("  "+a.line("cost-together"), questions.Sum(c, v.Sums, v.Complete))
			t.Done()
		}
		for _, b := range batches {
			if len(each) > 1 {
				a.told("cost-of-batch", record.With("batch", b.Batch), tell.Told("sum", questions.Sum(c, b.Sums, b.Complete)))
			}
		}
		a.warn(nil, next)
		return nil
	})
}
