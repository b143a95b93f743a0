package planning

import (
	"cmp"
	"context"
	"slices"
	"time"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/plan"
	"backleaf/record/studio/private"
	"backleaf/record/studio/refuse"
	"backleaf/record/studio/stock"
)

// onShelf returns the material of a key that names a lot or a material, and the
// lots meant: that one, or all of the material.
func onShelf(w *record.Workshop, field string, k record.Key) (m record.Material, lots []record.Lot, err error) {
	if l, ok := w.Lot(k); ok {
		m, _ := w.MaterialNow(l.Material)
		return m, []record.Lot{l}, nil
	}
	m, ok := w.MaterialNow(k)
	if !ok {
		e := refuse.Cannot("not-on-shelf", "there is neither a lot nor a material %q on the shelf", k)
		e.Field = field
		return m, nil, e
	}
	for _, l := range w.Lots {
		if l.Body.Material == k {
			lots = append(lots, l.Body)
		}
	}
	return m, lots, nil
}

// sheets are the kinds of sheets of a board: those of its lots, or of the size
// that was wished, and the offcuts of it that nothing was cut from yet.
func sheets(ctx context.Context, b *book.Book, w *record.Workshop, wish Wish, prices map[record.Key]private.Price) ([]plan.Sheet, record.Material, error) {
	m, lots, err := onShelf(w, "board", wish.Board)
	if err != nil {
		return nil, m, err
	}
	// The face grain of plywood runs along the side named first (common practice).
	along := wish.SheetGrain
	if k := m.Board.Kind; along == "" && (k == record.Plywood || k == record.SolidWood) {
		along = "height"
	}
	var out []plan.Sheet
	for _, l := range w.Lots { // offcuts come first, whichever lot is meant
		if b := l.Body; b.Offcut != "" && b.Material == m.Key && !slices.ContainsFunc(lots, func(o record.Lot) bool { return o.Key == b.Key }) {
			lots = append(lots, b)
		}
	}
	add := func(name string, size record.Size, price int64, offcut bool) {
		s := plan.Sheet{Offcut: offcut, Name: name, Length: micrometers(size.Height), Width: micrometers(size.Width), Trim: wish.or(wish.Trim, usualTrim), Grain: grain(along), Price: price, Count: plan.Unlimited}
		if s.Length < s.Width { // the longer side is the length
			s.Length, s.Width = s.Width, s.Length
			if s.Grain != plan.Free {
				s.Grain = plan.First + plan.Second - s.Grain
			}
		}
		if offcut {
			s.Count, s.Trim = 1, 0 // its edges are sawn
		} else if slices.ContainsFunc(out, func(o plan.Sheet) bool { return !o.Offcut && o.Length == s.Length && o.Width == s.Width }) {
			return
		}
		if s.Length > 0 {
			out = append(out, s)
		}
	}
	if !wish.Sheet.IsZero() {
		add(string(m.Key), wish.Sheet, 0, false)
	}
	for _, l := range slices.Backward(lots) { // the newest lot of a size names it
		if l.Offcut != "" {
			if cut, err := b.Taken(ctx, l.Key); err != nil {
				return nil, m, err
			} else if cut == nil { // an offcut is there once
				add(string(l.Key), l.Sheet, 0, true)
			}
			continue
		}
		if !wish.Sheet.IsZero() {
			continue
		}
		var price int64
		if n, ok := l.Quantity.Sheets(); ok && n > 0 {
			price = prices[l.Key].Minor / n
		}
		add(string(l.Key), l.Sheet, price, false)
	}
	if !slices.ContainsFunc(out, func(s plan.Sheet) bool { return !s.Offcut }) {
		return nil, m, refuse.Cannot("no-sheet-size", "no size of a sheet of %s is recorded", m.Key)
	}
	return out, m, nil
}

// wholeSheets are how many whole sheets of each kind should be left at most: of
// the lots meant, what panels were cut from taken off. It is not known where a
// size was wished, or a lot does not say how many there were.
func wholeSheets(ctx context.Context, b *book.Book, w *record.Workshop, wish Wish, kinds []plan.Sheet) ([]int, error) {
	_, lots, err := onShelf(w, "board", wish.Board)
	if err != nil {
		return nil, err
	}
	left := make([]int, len(kinds))
	for i, s := range kinds {
		if s.Offcut || !wish.Sheet.IsZero() {
			left[i] = -1
			continue
		}
		for _, l := range lots {
			a, c := micrometers(l.Sheet.Height), micrometers(l.Sheet.Width)
			if l.Offcut != "" || max(a, c) != s.Length || min(a, c) != s.Width {
				continue
			}
			n, ok := l.Quantity.Sheets()
			if !ok {
				left[i] = -1
				break
			}
			taken, err := stock.TakenOf(ctx, b, w, l.Key)
			if err != nil {
				return nil, err
			}
			left[i] += int(max(0, float64(n)-taken.Area*1e6/float64(a)/float64(c)))
		}
	}
	return left, nil
}

// tins are the lots of the products, in the order in which they are to be used:
// opened first, then what expires first.
func (p *products) tins(ctx context.Context, b *book.Book, at time.Time) (tins []plan.Tin, err error) {
	var lots []record.Lot
	for _, l := range p.w.Lots {
		if i := slices.Index(p.keys, l.Body.Material); i >= 0 {
			lots = append(lots, l.Body)
		}
	}
	slices.SortStableFunc(lots, func(a, b record.Lot) int {
		return cmp.Or(order(!a.Opened.Known(), !b.Opened.Known()), expires(a).Compare(expires(b)), cmp.Compare(a.Key, b.Key))
	})
	for _, l := range lots {
		mg, _ := l.Quantity.Milligrams()
		ul, _ := l.Quantity.Microliters()
		i := slices.Index(p.keys, l.Material)
		t := plan.Tin{Name: string(l.Key), Product: i, Expired: expires(l).Before(at)}
		used, err := stock.TakenOf(ctx, b, p.w, l.Key)
		if err != nil {
			return nil, err
		}
		have, gone := p.list[i].Both(plan.Amount{Milligrams: float64(mg), Microliters: float64(ul)}), used.Wet
		t.Left = plan.Amount{Milligrams: max(0, have.Milligrams-gone.Milligrams), Microliters: max(0, have.Microliters-gone.Microliters)}
		tins = append(tins, t)
	}
	return tins, nil
}

func order(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// expires is when a lot is surely past its date; far ahead where none is known.
func expires(l record.Lot) time.Time {
	if t, ok := l.Expires.Latest(); ok {
		return t
	}
	return time.Date(9999, 1, 1, 0, 0, 0, 0, time.UTC)
}
