package main

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"
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
				prices, err := lotPrices(c.Context(), b, w)
				if err != nil {
					return err
				}
				return a.sayCosts(w, ps, prices)
			})
		},
	}
	c.Flags().StringSliceVar(&except, "except", nil, "panels to leave out")
	return a.jsonFlag(c)
}

// lotPrices reads the private prices of the lots on the shelf.
func lotPrices(ctx context.Context, b *book.Book, w *record.Workshop) (map[record.Key]check.Price, error) {
	prices := map[record.Key]check.Price{}
	for _, l := range w.Lots {
		p, ok, err := b.Private(ctx, l.Seq)
		if err != nil {
			return nil, err
		}
		var part privatePart
		if !ok {
			continue
		}
		if err := json.Unmarshal(p.Data, &part); err != nil {
			return nil, fmt.Errorf("the private part of E%d cannot be read: %w", l.Seq, err)
		}
		if part.Price.Currency != "" {
			prices[l.Body.Key] = check.Price(part.Price)
		}
	}
	return prices, nil
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

// sums adds lines by currency; false when something is missing.
func sums(lines []check.CostLine) ([]price, bool) {
	exact, complete := map[string]float64{}, true
	for _, l := range lines {
		if l.Missing != "" {
			complete = false
		} else {
			exact[l.Currency] += l.Minor
		}
	}
	var out []price
	for c, m := range exact {
		out = append(out, price{int64(math.Round(m)), c})
	}
	slices.SortFunc(out, func(a, b price) int { return strings.Compare(a.Currency, b.Currency) })
	return out, complete
}

func (a *app) sayCosts(w *record.Workshop, ps []*record.Panel, prices map[record.Key]check.Price) error {
	views := []costView{}
	batches := map[record.Key][]check.CostLine{}
	var order []record.Key
	for _, p := range ps {
		lines := check.Cost(w, p, prices)
		if batches[p.Batch] == nil {
			order = append(order, p.Batch)
		}
		batches[p.Batch] = append(batches[p.Batch], lines...)
		v := costView{Panel: p.Number}
		for _, l := range lines {
			c := costLine{What: l.What, Lot: l.Lot, Entry: l.Entry, Missing: l.Missing}
			if l.Missing == "" {
				c.Cost = price{int64(math.Round(l.Minor)), l.Currency}
			}
			v.Lines = append(v.Lines, c)
		}
		v.Sums, v.Complete = sums(lines)
		views = append(views, v)
	}
	if a.asJSON {
		return a.sayJSON(views)
	}
	for _, v := range views {
		a.say("%s", v.Panel)
		t := a.table()
		for _, l := range v.Lines {
			if l.Missing != "" {
				t.row("  "+l.What, "not recorded", l.Missing)
			} else {
				t.row("  "+l.What, l.Cost.String(), after("lot ", string(l.Lot)))
			}
		}
		t.row("  together", sumText(v.Sums, v.Complete))
		if err := t.done(); err != nil {
			return err
		}
	}
	for _, k := range order {
		if s, complete := sums(batches[k]); len(ps) > 1 {
			a.say("batch %s: %s", k, sumText(s, complete))
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
