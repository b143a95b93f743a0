package planning

import (
	"context"
	"slices"
	"strconv"

	"backleaf/record"
	"backleaf/record/plan"
	"backleaf/record/studio"
	"backleaf/record/studio/bench"
)

// Write numbers the panels of a plan in the order in which they are sawn, one
// batch, in one go; the plan then names them. What they have in common, such
// as the batch, is given. Offcuts worth keeping are put on the shelf, if that
// is wished.
func (d *Day) Write(ctx context.Context, v *studio.View, at record.When, common record.Cut, offcuts bool) (studio.Written, error) {
	m, _, err := onShelf(v.Shop, "board", d.Wish.Board)
	if err != nil {
		return studio.Written{}, err
	}
	common.Board, common.SawLoss = m.Key, d.Wish.Kerf
	var cuts []record.Cut
	assumed := false
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
			assumed = assumed || d.Wish.SheetGrain == "" && s.Grain != plan.Free
			if d.Wish.SheetGrain != "" && s.Grain != plan.Free { // as it lies on the sheet; what is only assumed is not recorded
				c.Grain = "width"
				if part.Upright == (s.Grain == plan.First) {
					c.Grain = "height"
				}
			}
			if _, ok := d.w.Lot(record.Key(s.Name)); ok {
				c.Lot = record.Key(s.Name)
			}
			cuts = append(cuts, c)
		}
	}
	var more []record.Entry
	if offcuts {
		for _, l := range d.offcuts(m) {
			more = append(more, record.Entry{At: at, Body: l})
		}
	}
	w, err := bench.Cut(ctx, v, at, cuts, more...)
	if err != nil {
		return w, err
	}
	d.Job.Names = make([]string, len(cuts))
	var ns []record.Number
	var numbered []record.EntryRef
	for _, e := range w.Entries {
		if ns = append(ns, e.Panels...); e.Panels != nil {
			numbered = append(numbered, record.EntryRef(e.Seq))
		}
	}
	if assumed {
		w.Warn("grain-assumed", record.With("entries", numbered))
	}
	slices.SortFunc(ns, func(a, b record.Number) int { return a.Serial() - b.Serial() })
	for i, n := range ns {
		d.Job.Names[i] = string(n)
	}
	d.Job.Title = string(w.Entries[0].Body.(record.Cut).Batch)
	return w, nil
}

func millimeters(um int64) string { return strconv.FormatFloat(float64(um)/1000, 'f', -1, 64) }

// offcuts are the lots that what is worth keeping will be, the side along the
// grain first. Each bears the name of the lot it is cut from and the next free
// figure.
func (d *Day) offcuts(m record.Material) []record.Lot {
	var out []record.Lot
	taken := map[record.Key]bool{}
	for _, l := range d.w.Lots {
		taken[l.Body.Key] = true
	}
	for i, sheet := range d.Job.Plan.Sheets {
		s := d.Job.Plan.Order.Sheets[sheet.Sheet]
		if !taken[record.Key(s.Name)] {
			continue // the sheet is no lot
		}
		for _, part := range d.Job.Plan.Parts(i) {
			if part.Number > 0 || !part.Keep {
				continue
			}
			a, b := part.Length, part.Width
			if s.Grain == plan.Second {
				a, b = b, a
			}
			l := record.Lot{Material: m.Key, Offcut: record.Key(s.Name)}
			for n := 1; l.Key == "" || taken[l.Key]; n++ {
				l.Key = record.Key(s.Name + "-" + strconv.Itoa(n))
			}
			taken[l.Key] = true
			// What is written here can be read: figures and a unit.
			_ = l.Quantity.UnmarshalText([]byte("1 sheets"))
			_ = l.Sheet.UnmarshalText([]byte(millimeters(a) + " x " + millimeters(b) + " mm"))
			out = append(out, l)
		}
	}
	return out
}
