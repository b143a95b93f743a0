package main

import (
	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/private"
	"backleaf/record/studio/questions"
	"backleaf/record/tell"
)

func newCost(a *app) *cobra.Command {
	var except []string
	c := &cobra.Command{
		Use: "cost " + panelWords, Short: "what the materials of panels cost, line by line",
		Long: `What the materials of panels cost: the share of the sheet by area with the saw loss,
the cloth with its oversize, every coat by its amount. Work is not counted. Where a
price or an amount was not recorded the sum says that it is incomplete.`,
		Example: `  backleaf cost 0142
  backleaf cost batch:may --json`,
		Args: wanted(1, -1, "the panels"),
		RunE: func(c *cobra.Command, args []string) error {
			return a.read(c.Context(), func(s *studio.Session) error {
				w, ps, err := questions.Chosen(c.Context(), s.Book, args, except)
				if err != nil {
					return err
				}
				each, batches, err := questions.Costs(c.Context(), a.catalogue(), s.Book, w, ps)
				if err != nil {
					return err
				}
				return a.sayCosts(each, batches)
			})
		},
	}
	c.Flags().StringSliceVar(&except, "except", nil, "panels to leave out")
	return a.jsonFlag(c)
}

func (a *app) sayCosts(views []questions.Cost, batches []questions.BatchCost) error {
	if a.asJSON {
		return a.sayJSON(views)
	}
	for _, v := range views {
		a.say("%s", v.Panel)
		t := a.table()
		for _, l := range v.Lines {
			if l.Missing != "" {
				t.row("  "+l.What, a.line("cost-missing"), a.entry(l.Entry), l.Missing)
			} else {
				t.row("  "+l.What, l.Cost.String(), a.entry(l.Entry), a.line("of-lot", record.With("lot", l.Lot)))
			}
		}
		t.row("  "+a.line("cost-together"), a.sumText(v.Sums, v.Complete))
		if err := t.done(); err != nil {
			return err
		}
	}
	for _, b := range batches {
		if len(views) > 1 {
			a.told("cost-of-batch", record.With("batch", b.Batch), tell.Told("sum", a.sumText(b.Sums, b.Complete)))
		}
	}
	return nil
}

func (a *app) sumText(ps []private.Price, complete bool) string {
	var s []string
	for _, p := range ps {
		s = append(s, p.String())
	}
	whole := record.Yes
	if !complete {
		whole = record.No
	}
	return a.line("cost-sum", tell.Told("sums", a.catalogue().List(s)), record.With("whole", whole))
}
