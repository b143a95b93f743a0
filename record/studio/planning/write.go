package planning

import (
	"context"
	"slices"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
)

// Write numbers the panels of a plan in the order in which they are sawn, one
// batch, in one go; the plan then names them. What they have in common, such
// as the batch, is given.
func (d *Day) Write(ctx context.Context, v *studio.View, at record.When, common record.Cut) (studio.Written, error) {
	m, lots, err := onShelf(v.Shop, "board", d.Wish.Board)
	if err != nil {
		return studio.Written{}, err
	}
	common.Board, common.SawLoss = m.Key, d.Wish.Kerf
	var cuts []record.Cut
	for i, sheet := range d.Job.Plan.Sheets {
		s := d.Job.Plan.Order.Sheets[sheet.Sheet]
		for _, part := range d.Job.Plan.Parts(i) {
			if part.Number == 0 {
				continue
			}
			c, p := common, d.Wish.Panels[part.Piece]
			if c.Size = p.Size; c.Size.Depth.IsZero() {
				c.Size.Depth = m.Board.Thickness
			}
			if s.Grain != plan.Free { // as it lies on the sheet
				c.Grain = "width"
				if part.Upright == (s.Grain == plan.First) {
					c.Grain = "height"
				}
			}
			if slices.ContainsFunc(lots, func(l record.Lot) bool { return string(l.Key) == s.Name }) {
				c.Lot = record.Key(s.Name)
			}
			cuts = append(cuts, c)
		}
	}
	w, err := bench.CutEach(ctx, v, at, cuts)
	if err != nil {
		return w, err
	}
	d.Job.Names = make([]string, len(cuts))
	var ns []record.Number
	for _, e := range w.Entries {
		ns = append(ns, e.Panels...)
	}
	slices.SortFunc(ns, func(a, b record.Number) int { return a.Serial() - b.Serial() })
	for i, n := range ns {
		d.Job.Names[i] = string(n)
	}
	d.Job.Title = string(w.Entries[0].Body.(record.Cut).Batch)
	return w, nil
}
