package main

import (
	"backleaf/record"
	"backleaf/record/studio/private"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newCost(a *app) {
	var except []string
	a.reads("cost", flags{"except": &except, "json": &a.asJSON}, func(r *run) error {
		each, batches, err := questions.Costs(r.ctx, a.catalogue(), r.Book, r.args, except)
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
			t.Row("  "+a.line("cost-together"), a.sumText(v.Sums, v.Complete))
			t.Done()
		}
		for _, b := range batches {
			if len(each) > 1 {
				a.told("cost-of-batch", record.With("batch", b.Batch), tell.Told("sum", a.sumText(b.Sums, b.Complete)))
			}
		}
		return nil
	})
}

func (a *app) sumText(ps []private.Price, complete bool) string {
	var s []string
	for _, p := range ps {
		s = append(s, p.String())
	}
	return a.line("cost-sum", tell.Told("sums", a.catalogue().List(s)), record.With("whole", yesNo(complete)))
}
