package questions

import (
	"context"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/book"
	"backleaf/record/studio/private"
	"backleaf/record/studio/shelf"
	"backleaf/record/tell"
)

// Cost is what the materials of one panel cost.
type Cost struct {
	Panel    record.Number   `json:"panel"`
	Lines    []CostLine      `json:"items"`
	Sums     []private.Price `json:"sums"` // one a currency
	Complete bool            `json:"complete"`
}

// CostLine is one material of a panel.
type CostLine struct {
	What    string        `json:"what"`
	Lot     record.Key    `json:"lot,omitzero"`
	Entry   int64         `json:"entry"`
	Cost    private.Price `json:"cost,omitzero"`
	Missing string        `json:"not_recorded,omitzero"`
}

// BatchCost is what the panels of a batch cost together.
type BatchCost struct {
	Batch    record.Key
	Sums     []private.Price
	Complete bool
}

// Costs works out what panels, named as typed, cost, one by one and by batch. It
// says how what is missing is put right, and looks into the private prices of lots.
func Costs(ctx context.Context, c *tell.Catalogue, b *book.Book, terms, except []string) (each []Cost, batches []BatchCost, next []record.Said, err error) {
	ns, err := numbers(ctx, b, terms, except, discarded)
	if err != nil {
		return nil, nil, nil, err
	}
	w, err := b.Shelf(ctx)
	if err != nil {
		return nil, nil, nil, err
	}
	paid, err := shelf.Prices(ctx, b, w)
	if err != nil {
		return nil, nil, nil, err
	}
	known := map[record.Key]amount.Price{}
	for k, p := range paid {
		known[k] = amount.Price(p)
	}
	each = []Cost{}
	sheets := map[record.Key][]amount.CostSheet{}
	var order []record.Key
	var all []amount.CostLine
	type one struct {
		batch record.Key
		amount.CostSheet
	}
	err = book.Each(ctx, b, ns, func(w *record.Workshop, p *record.Panel) (one, error) {
		return one{p.Batch, amount.Cost(w, p, known)}, nil
	}, func(sheet one) error {
		if sheets[sheet.batch] == nil {
			order = append(order, sheet.batch)
		}
		sheets[sheet.batch], all = append(sheets[sheet.batch], sheet.CostSheet), append(all, sheet.Lines...)
		cost := Cost{Panel: sheet.Panel, Lines: []CostLine{}, Sums: prices(sheet.Sums), Complete: sheet.Complete}
		for _, l := range sheet.Lines {
			cost.Lines = append(cost.Lines, CostLine{c.Fill("{layer}", l.What), l.Lot, l.Entry, private.Price(l.Price), missing(c, l.Missing)})
		}
		each = append(each, cost)
		return nil
	})
	for _, k := range order {
		sum, complete := amount.CostTotal(sheets[k])
		batches = append(batches, BatchCost{k, prices(sum), complete})
	}
	return each, batches, tellers(c, w, all), err
}

// missing says why a line has no figure; nothing where it has one.
func missing(c *tell.Catalogue, why record.Said) string {
	if why.Code == "" {
		return ""
	}
	return tell.Say(c, why)
}

func prices(ps []amount.Price) []private.Price {
	out := []private.Price{}
	for _, p := range ps {
		out = append(out, private.Price(p))
	}
	return out
}

// Sum tells what something cost together, and whether that is all of it.
func Sum(c *tell.Catalogue, ps []private.Price, complete bool) string {
	var s []string
	for _, p := range ps {
		s = append(s, p.String())
	}
	whole := record.Yes
	if !complete {
		whole = record.No
	}
	return tell.Say(c, record.Say("cost-sum", tell.Told("sums", c.List(s)), record.With("whole", whole)))
}
