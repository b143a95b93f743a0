// Package stock reckons what is left of a tin, a bolt or a stack of sheets: what
// there was, less what the record says was taken.
package stock

import (
	"context"
	"math"
	"math/big"
	"strconv"
	"strings"

	"backleaf/record"
	"backleaf/record/book"
	"backleaf/record/plan"
)

// Taken is what the record says was taken from one lot.
type Taken struct {
	Wet    plan.Amount
	Area   float64 // of cloth or board in mm², without any waste
	Open   int     // acts that do not say how much
	Unsure bool    // waste is not in it, or an act does not say how much
}

// TakenOf adds up what was taken from one lot, each entry once.
func TakenOf(ctx context.Context, b *book.Book, w *record.Workshop, lot record.Key) (t Taken, err error) {
	acts, err := b.Taken(ctx, lot)
	for _, a := range acts {
		switch {
		case len(a.Mix.Mix) > 0:
			t.wet(w, lot, a)
		case a.Cloth:
			t.cloth(a)
		default:
			if t.Unsure = true; a.SquareMillimeters == 0 {
				t.Open += a.Acts
			}
			t.Area += a.SquareMillimeters
		}
	}
	return t, err
}

func (t *Taken) wet(w *record.Workshop, lot record.Key, acts book.Taken) {
	a := plan.Act{NotWater: acts.Mix.Thinner != ""}
	a.Thinned, _ = acts.Mix.Thinned.Millipercent()
	var products []plan.Product
	for i, part := range acts.Mix.Mix {
		products = append(products, Product(w, part.Material))
		a.Mix = append(a.Mix, plan.Portion{Product: i, Parts: part.Parts})
	}
	laid := plan.Amount{Milligrams: acts.Milligrams, Microliters: acts.Microliters}
	_, parts, why := a.Split(laid, products)
	for i, part := range acts.Mix.Mix {
		switch {
		case part.Lot != lot:
		case why != "" || laid == (plan.Amount{}):
			t.Open, t.Unsure = t.Open+acts.Acts, true
		default:
			t.Wet.Milligrams += parts[i].Milligrams
			t.Wet.Microliters += parts[i].Microliters
		}
	}
}

func (t *Taken) cloth(a book.Taken) {
	t.Unsure = true
	h, ok := a.Panel.Height.Micrometers()
	wide, ok2 := a.Panel.Width.Micrometers()
	if !ok || !ok2 {
		t.Open += a.Acts
		return
	}
	t.Area += float64(a.Acts) * float64(h+2*a.BeyondMicrometers) * float64(wide+2*a.BeyondMicrometers) / 1e6
}

// Product is a material as plans reckon with it.
func Product(w *record.Workshop, k record.Key) plan.Product {
	m, _ := w.MaterialNow(k)
	rho, _ := m.Density.MilligramsPerMilliliter()
	name := m.Name
	if name == "" {
		name = string(k)
	}
	return plan.Product{Name: name, Density: rho}
}

// Left says what is left of the lots that a body names and of which it is
// known how much there was.
func Left(ctx context.Context, b *book.Book, shop *record.Workshop, body record.Body) (said, warned []record.Said, err error) {
	_, lots := record.Shelf(body)
	for _, k := range lots {
		l, ok := shop.Lot(k)
		if !ok || l.Quantity.IsZero() || l.Quantity.IsUnknown() {
			continue
		}
		switch s, err := Of(ctx, b, shop, l); {
		case err != nil:
			return nil, nil, err
		case s.Code == "lot-left-open":
		case s.Code == "more-than-there-was":
			warned = append(warned, s)
		default:
			said = append(said, s)
		}
	}
	return said, warned, nil
}

// Of says what is left of a lot, or why that is not known.
func Of(ctx context.Context, b *book.Book, w *record.Workshop, l record.Lot) (record.Said, error) {
	t, err := TakenOf(ctx, b, w, l.Key)
	left, open := left(w, l, t)
	switch {
	case err != nil:
		return record.Said{}, err
	case open != "":
		return record.Say("lot-left-open", record.With("lot", l.Key), record.With("why", open)), nil
	case left < 0:
		most, err := b.TookMost(ctx, l.Key)
		return record.Say("more-than-there-was", record.With("lot", l.Key), record.With("quantity", l.Quantity), record.With("most", record.EntryRef(most))), err
	case t.Unsure:
		open := record.Value{Name: "open", Type: "count"}
		if t.Open > 0 {
			open = record.With("open", t.Open)
		}
		return record.Say("lot-left-most", record.With("lot", l.Key), record.With("left", figure(left, l.Quantity.Unit())), open), nil
	}
	return record.Say("lot-left", record.With("lot", l.Key), record.With("left", figure(left, l.Quantity.Unit()))), nil
}

// left is what is left of a lot in the unit of its quantity, or what is missing
// to know it.
func left(w *record.Workshop, l record.Lot, t Taken) (float64, record.Code) {
	var of, taken float64
	p := Product(w, l.Material)
	used := p.Both(t.Wet)
	if mg, ok := l.Quantity.Milligrams(); ok {
		of, taken = float64(mg), used.Milligrams
		if taken == 0 && used.Microliters > 0 {
			return 0, "cost-density-open"
		}
	} else if ul, ok := l.Quantity.Microliters(); ok {
		of, taken = float64(ul), used.Microliters
		if taken == 0 && used.Milligrams > 0 {
			return 0, "cost-density-open"
		}
	} else if um, ok := l.Quantity.Micrometers(); ok {
		m, _ := w.MaterialNow(l.Material)
		wide, known := m.Cloth.Width.Micrometers()
		if (!known || wide == 0) && t.Area > 0 {
			return 0, "cost-bolt-open"
		}
		of, taken = float64(um), t.Area*1e6/max(1, float64(wide))
	} else if mm2, ok := l.Quantity.SquareMillimeters(); ok {
		of, taken = float64(mm2), t.Area
	} else if n, ok := l.Quantity.Sheets(); ok {
		mm2, known := l.Sheet.AreaSquareMillimeters()
		if !known && t.Area > 0 {
			return 0, "cost-sheet-open"
		}
		of, taken = float64(n), t.Area/max(1, float64(mm2))
	}
	if of == 0 {
		return 0, "cost-quantity-open"
	}
	var number float64
	for part := range strings.FieldsSeq(l.Quantity.Number()) { // "1 1/2"
		r, _ := new(big.Rat).SetString(part)
		n, _ := r.Float64()
		number += n
	}
	return number * (1 - taken/of), ""
}

// figure rounds to three figures at most.
func figure(n float64, unit string) record.Figure {
	places := max(0, min(2, 2-int(math.Floor(math.Log10(math.Max(n, 1e-3))))))
	scale := math.Pow(10, float64(places))
	return record.Figure(strconv.FormatFloat(math.Round(n*scale)/scale, 'f', -1, 64) + " " + unit)
}
