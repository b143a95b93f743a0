// Package stock reckons what is left of a tin, a bolt or a stack of sheets: what
// there was, less what the record says was taken.
package stock

import (
	"context"
	"math"
	"strconv"

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

// All adds up what was taken from each lot, each entry once.
func All(w *record.Workshop) map[record.Key]Taken {
	all := map[record.Key]Taken{}
	seen := map[int64]bool{}
	for _, panel := range w.Panels {
		for _, e := range panel.Events {
			if seen[e.Seq] {
				continue
			}
			seen[e.Seq] = true
			switch b := e.Body.(type) {
			case record.Cut:
				sheet(all, b.Lot, b.Size, len(e.Panels))
			case record.Coat:
				wet(w, all, b.Coating, len(e.Panels))
			case record.ClothLaid:
				wet(w, all, b.Coating, len(e.Panels))
				if b.AgainOf == 0 {
					cloth(w, all, b, e.Panels)
				}
			case record.PaintLayer:
				wet(w, all, b.Coating, len(e.Panels))
			case record.Varnish:
				wet(w, all, b.Coating, len(e.Panels))
			}
		}
	}
	return all
}

// Wet is how much was laid on so many panels.
func Wet(c record.Coating, panels int) plan.Amount {
	amount, n := c.WetTotal, 1.0
	if !c.WetEach.IsZero() {
		amount, n = c.WetEach, float64(panels)
	}
	mg, _ := amount.Milligrams()
	ul, _ := amount.Microliters()
	return plan.Amount{Milligrams: float64(mg) * n, Microliters: float64(ul) * n}
}

func wet(w *record.Workshop, all map[record.Key]Taken, c record.Coating, panels int) {
	if len(c.Mix) == 0 {
		return
	}
	a := plan.Act{NotWater: c.Thinner != ""}
	a.Thinned, _ = c.Thinned.Millipercent()
	var products []plan.Product
	for i, part := range c.Mix {
		products = append(products, Product(w, part.Material))
		a.Mix = append(a.Mix, plan.Portion{Product: i, Parts: part.Parts})
	}
	laid := Wet(c, panels)
	_, parts, why := a.Split(laid, products)
	for i, part := range c.Mix {
		t := all[part.Lot]
		if why != "" || laid == (plan.Amount{}) {
			t.Open, t.Unsure = t.Open+1, true
		} else {
			t.Wet.Milligrams += parts[i].Milligrams
			t.Wet.Microliters += parts[i].Microliters
		}
		all[part.Lot] = t
	}
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

func sheet(all map[record.Key]Taken, lot record.Key, s record.Size, panels int) {
	t := all[lot]
	mm2, ok := s.AreaSquareMillimeters()
	if t.Unsure = true; !ok {
		t.Open++
	}
	t.Area += float64(mm2) * float64(panels)
	all[lot] = t
}

func cloth(w *record.Workshop, all map[record.Key]Taken, c record.ClothLaid, panels []record.Number) {
	t := all[c.ClothLot]
	t.Unsure = true
	over, _ := c.Oversize.Micrometers()
	for _, n := range panels {
		p := w.Panel(n)
		if p == nil {
			continue // of another part of the journal
		}
		h, ok := p.Size().Height.Micrometers()
		wide, ok2 := p.Size().Width.Micrometers()
		if !ok || !ok2 {
			t.Open++
			continue
		}
		t.Area += float64(h+2*over) * float64(wide+2*over) / 1e6
	}
	all[c.ClothLot] = t
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
		w, err := b.WorkshopOfLot(ctx, k)
		if err != nil {
			return nil, nil, err
		}
		switch s, ok := Of(w, l, All(w)[k]); {
		case !ok:
		case s.Code == "more-than-there-was":
			warned = append(warned, s)
		default:
			said = append(said, s)
		}
	}
	return said, warned, nil
}

// Of says what is left of a lot of which so much was taken; false if it is not
// known how much there was.
func Of(w *record.Workshop, l record.Lot, t Taken) (record.Said, bool) {
	left, ok := left(w, l, t)
	switch {
	case !ok:
		return record.Said{}, false
	case left < 0:
		return record.Say("more-than-there-was", record.With("lot", l.Key), record.With("quantity", l.Quantity)), true
	case t.Unsure:
		open := record.Value{Name: "open", Type: "count"}
		if t.Open > 0 {
			open = record.With("open", t.Open)
		}
		return record.Say("lot-left-most", record.With("lot", l.Key), record.With("left", figure(left, l.Quantity.Unit())), open), true
	}
	return record.Say("lot-left", record.With("lot", l.Key), record.With("left", figure(left, l.Quantity.Unit()))), true
}

// left is what is left of a lot in the unit of its quantity.
func left(w *record.Workshop, l record.Lot, t Taken) (float64, bool) {
	var of, taken float64
	p := Product(w, l.Material)
	used := p.Both(t.Wet)
	if mg, ok := l.Quantity.Milligrams(); ok {
		of, taken = float64(mg), used.Milligrams
		if taken == 0 && used.Microliters > 0 {
			return 0, false // no density
		}
	} else if ul, ok := l.Quantity.Microliters(); ok {
		of, taken = float64(ul), used.Microliters
		if taken == 0 && used.Milligrams > 0 {
			return 0, false
		}
	} else if um, ok := l.Quantity.Micrometers(); ok {
		m, _ := w.MaterialNow(l.Material)
		wide, known := m.Cloth.Width.Micrometers()
		if !known || wide == 0 {
			return 0, false
		}
		of, taken = float64(um), t.Area*1e6/float64(wide)
	} else if mm2, ok := l.Quantity.SquareMillimeters(); ok {
		of, taken = float64(mm2), t.Area
	} else if n, ok := l.Quantity.Sheets(); ok {
		mm2, known := l.Sheet.AreaSquareMillimeters()
		if !known {
			return 0, false
		}
		of, taken = float64(n), t.Area/float64(mm2)
	}
	if of == 0 {
		return 0, false
	}
	number, err := strconv.ParseFloat(l.Quantity.Number(), 64)
	if err != nil {
		return 0, false // "1/2 gal"
	}
	return number * (1 - taken/of), true
}

// figure rounds to three figures at most.
func figure(n float64, unit string) record.Figure {
	places := max(0, min(2, 2-int(math.Floor(math.Log10(math.Max(n, 1e-3))))))
	scale := math.Pow(10, float64(places))
	return record.Figure(strconv.FormatFloat(math.Round(n*scale)/scale, 'f', -1, 64) + " " + unit)
}
