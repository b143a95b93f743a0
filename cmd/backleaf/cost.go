package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/check"
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
			return a.read(c.Context(), func(b *book.Book) error {
				w, ps, err := a.chosen(c.Context(), b, args, except)
				if err != nil {
					return err
				}
				known, err := lotPrices(c.Context(), b, w)
				if err != nil {
					return err
				}
				return a.sayCosts(w, ps, known)
			})
		},
	}
	c.Flags().StringSliceVar(&except, "except", nil, "panels to leave out")
	return a.jsonFlag(c)
}

// lotPrices reads the private prices of the lots on the shelf.
func lotPrices(ctx context.Context, b *book.Book, w *record.Workshop) (map[record.Key]check.Price, error) {
	known := map[record.Key]check.Price{}
	for _, l := range w.Lots {
		part, _, err := privateOf(ctx, b, l.Seq)
		if err != nil {
			return nil, err
		}
		if part.Price.Currency != "" {
			known[l.Body.Key] = check.Price(part.Price)
		}
	}
	return known, nil
}

// costView is the cost of one panel for a program to read.
type costView struct {
	Panel    record.Number `json:"panel"`
	Lines    []costLine    `json:"lines"`
	Sums     []price       `json:"sums"`
	Complete bool          `json:"complete"`
}

type costLine struct {
	What    string     `json:"what"`
	Lot     record.Key `json:"lot,omitzero"`
	Entry   int64      `json:"entry"`
	Cost    price      `json:"cost,omitzero"`
	Missing string     `json:"not_recorded,omitzero"`
}

func costViewOf(s check.CostSheet) costView {
	v := costView{Panel: s.Panel, Lines: []costLine{}, Sums: prices(s.Sums), Complete: s.Complete}
	for _, l := range s.Lines {
		v.Lines = append(v.Lines, costLine{l.What, l.Lot, l.Entry, price(l.Price), l.Missing})
	}
	return v
}

func prices(ps []check.Price) []price {
	out := []price{}
	for _, p := range ps {
		out = append(out, price(p))
	}
	return out
}

func (a *app) sayCosts(w *record.Workshop, ps []*record.Panel, known map[record.Key]check.Price) error {
	views := []costView{}
	batches := map[record.Key][]check.CostSheet{}
	var order []record.Key
	for _, p := range ps {
		sheet := check.Cost(w, p, known)
		if batches[p.Batch] == nil {
			order = append(order, p.Batch)
		}
		batches[p.Batch] = append(batches[p.Batch], sheet)
		views = append(views, costViewOf(sheet))
	}
	if a.asJSON {
		return a.sayJSON(views)
	}
	for _, v := range views {
		a.say("%s", v.Panel)
		t := a.table()
		for _, l := range v.Lines {
			entry := fmt.Sprintf("E%d", l.Entry)
			if l.Missing != "" {
				t.row("  "+l.What, "not recorded", entry, l.Missing)
			} else {
				t.row("  "+l.What, l.Cost.String(), entry, after("lot ", string(l.Lot)))
			}
		}
		t.row("  together", sumText(v.Sums, v.Complete))
		if err := t.done(); err != nil {
			return err
		}
	}
	for _, k := range order {
		if sum, complete := check.CostTotal(batches[k]); len(ps) > 1 {
			a.say("batch %s: %s", k, sumText(prices(sum), complete))
		}
	}
	return nil
}

func sumText(ps []price, complete bool) string {
	var s []string
	for _, p := range ps {
		s = append(s, p.String())
	}
	text := orElse(strings.Join(s, " and "), "nothing known")
	if !complete {
		text += ", incomplete: not everything is recorded"
	}
	return text
}
