package amount

import (
	"cmp"
	"math"
	"slices"

	"backleaf/record"
)

// Price is what a whole lot cost, in hundredths (or whatever the smallest unit
// is) of a currency by its ISO 4217 code.
type Price struct {
	Minor    int64
	Currency string
}

// CostLine is the share of one lot in one panel. Missing says why there is no
// figure; the price is then zero and means nothing.
type CostLine struct {
	Entry   int64
	What    record.Value // board, cloth, or what the coat is
	Lot     record.Key   // empty where none is recorded
	Share   float64      // of the lot, 0 to 1
	Price   Price
	Missing record.Said
}

// CostSheet is what a panel cost in materials, line by line.
type CostSheet struct {
	Panel    record.Number
	Batch    record.Key
	Lines    []CostLine
	Sums     []Price // one for each currency, by code
	Complete bool    // false: a line is missing, and the sums are at least this much
}

// Cost reckons what a panel cost from its lots. Prices are private and stand
// outside the journal: the caller gives them by lot, each for the whole lot.
//
// Board: the panel's area, each side longer by the saw loss, of all sheets of
// the lot. Cloth: the area with the oversize on each side, of the bolt. Coats:
// what was laid on the panel, without its thinner, of what the lot held;
// masses and volumes are turned into each other by the density of the
// material. Each line is rounded half away from zero to the smallest unit.
func Cost(w *record.Workshop, p *record.Panel, prices map[record.Key]Price) CostSheet {
	c := CostSheet{Panel: p.Number, Batch: p.Batch, Complete: true}
	add := func(l CostLine, share float64, why record.Said) {
		price, ok := prices[l.Lot]
		switch {
		case l.Lot == "" || l.Lot == record.Unknown:
			l.Missing = record.Say("cost-lot-open")
		case why.Code != "":
			l.Missing = why
		case !ok:
			l.Missing = record.Say("cost-price-open")
		default:
			l.Share = share
			l.Price = Price{int64(math.Round(share * float64(price.Minor))), price.Currency}
		}
		c.Complete = c.Complete && l.Missing.Code == ""
		c.Lines = append(c.Lines, l)
	}
	cut, _ := record.Latest[record.Cut](p)
	share, why := boardShare(w, cut.Body)
	add(CostLine{Entry: cut.Seq, What: record.With("layer", record.Code("board")), Lot: cut.Body.Lot}, share, why)

	seen, amounts := map[int64]bool{}, newShares(w)
	for _, l := range p.Layers() {
		if l.Cloth != nil || seen[l.Seq] {
			continue
		}
		seen[l.Seq] = true
		coats, whys := coatShares(amounts, p, l)
		if len(l.Coating.Mix) == 0 {
			add(CostLine{Entry: l.Seq, What: What(l)}, 0, record.Said{})
		}
		for i, part := range l.Coating.Mix {
			add(CostLine{Entry: l.Seq, What: What(l), Lot: part.Lot}, coats[i], whys[i])
		}
	}
	for _, laid := range record.Each[record.ClothLaid](p) {
		share, why := clothShare(w, p, laid.Body)
		add(CostLine{Entry: laid.Seq, What: record.With("layer", record.Code("cloth")), Lot: laid.Body.ClothLot}, share, why)
	}
	slices.SortStableFunc(c.Lines, func(a, b CostLine) int { return cmp.Compare(a.Entry, b.Entry) })
	c.Sums = sums(c.Lines)
	return c
}

func sums(lines []CostLine) []Price {
	var out []Price
	for _, l := range lines {
		if l.Missing.Code == "" {
			out = plus(out, l.Price)
		}
	}
	return out
}

func plus(sums []Price, p Price) []Price {
	i, ok := slices.BinarySearchFunc(sums, p, func(a, b Price) int { return cmp.Compare(a.Currency, b.Currency) })
	if ok {
		sums[i].Minor += p.Minor
		return sums
	}
	return slices.Insert(sums, i, p)
}

// CostTotal adds up panels, and says whether every line of each has a figure.
func CostTotal(sheets []CostSheet) (total []Price, complete bool) {
	complete = true
	for _, c := range sheets {
		complete = complete && c.Complete
		for _, p := range c.Sums {
			total = plus(total, p)
		}
	}
	return total, complete
}

// share returns part of whole, which cannot be more than all of it.
func share(part, whole float64) (float64, record.Said) {
	if whole <= 0 {
		return 0, record.Say("cost-quantity-open")
	}
	if part > whole {
		return 0, record.Say("cost-more-than-lot")
	}
	return part / whole, record.Said{}
}

// unmeasured says why what a lot holds cannot be shared out as board, cloth or
// coat: it is not recorded, or of something else.
func unmeasured(l record.Lot, open string, what record.Value) record.Said {
	if l.Quantity.IsZero() || l.Quantity.IsUnknown() {
		return record.Say(open)
	}
	return record.Say("cost-quantity-other", record.With("quantity", l.Quantity), record.With("material", l.Material), what)
}

func boardShare(w *record.Workshop, c record.Cut) (float64, record.Said) {
	lot, _ := w.Lot(c.Lot)
	h, ok1 := c.Size.Height.Micrometers()
	b, ok2 := c.Size.Width.Micrometers()
	if !ok1 || !ok2 {
		return 0, record.Say("size-open")
	}
	loss, _ := c.SawLoss.Micrometers()
	area := float64(h+loss) * float64(b+loss) / 1e6
	if mm2, ok := lot.Quantity.SquareMillimeters(); ok {
		return share(area, float64(mm2))
	}
	n, ok := lot.Quantity.Sheets()
	if !ok {
		return 0, unmeasured(lot, "cost-sheets-open", record.With("layer", record.Code("board")))
	}
	sheet, ok := lot.Sheet.AreaSquareMillimeters()
	if !ok {
		return 0, record.Say("cost-sheet-open")
	}
	return share(area, float64(sheet)*float64(n))
}

func clothShare(w *record.Workshop, p *record.Panel, c record.ClothLaid) (float64, record.Said) {
	lot, _ := w.Lot(c.ClothLot)
	m, _ := w.Material(lot.Material, lot.As)
	h, ok1 := p.Size().Height.Micrometers()
	b, ok2 := p.Size().Width.Micrometers()
	if !ok1 || !ok2 {
		return 0, record.Say("size-open")
	}
	over, _ := c.Oversize.Micrometers()
	n := 0
	for _, f := range c.Faces {
		if f != record.Edges {
			n++
		}
	}
	area := float64(h+2*over) * float64(b+2*over) / 1e6 * float64(n)
	if mm2, ok := lot.Quantity.SquareMillimeters(); ok {
		return share(area, float64(mm2))
	}
	length, ok := lot.Quantity.Micrometers()
	if !ok {
		return 0, unmeasured(lot, "cost-quantity-open", record.With("layer", record.Code("cloth")))
	}
	width, ok := m.Cloth.Width.Micrometers()
	if !ok {
		return 0, record.Say("cost-bolt-open")
	}
	return share(area, float64(length)*float64(width)/1e6)
}

// coatShares returns, for each part of a mix, the share of its lot that is on
// the panel, and why where there is none.
func coatShares(s *shares, p *record.Panel, l record.Layer) ([]float64, []record.Said) {
	mix := l.Coating.Mix
	out, whys := make([]float64, len(mix)), make([]record.Said, len(mix))
	fail := func(why record.Said) ([]float64, []record.Said) {
		for i := range whys {
			whys[i] = why
		}
		return out, whys
	}
	laid, why := s.amount(p, l.Seq)
	if why.Code != "" {
		return fail(why)
	}
	b, why := blendOf(s.w, l.Coating)
	if why.Code != "" {
		return fail(why)
	}
	var parts float64
	for _, part := range mix {
		parts += float64(part.Parts)
	}
	// A single undiluted material needs no density while mass meets mass.
	plain := len(mix) == 1 && b.thinned == 0
	volume := laid.microliters
	if volume == 0 && b.density > 0 {
		volume = laid.milligrams / b.laidDensity()
	}
	volume /= 1 + b.thinned
	for i, part := range mix {
		lot, _ := s.w.Lot(part.Lot)
		m, _ := s.w.Material(part.Material, part.As)
		rho, dense := m.Density.MilligramsPerMilliliter()
		mg, byMass := lot.Quantity.Milligrams()
		ul, byVolume := lot.Quantity.Microliters()
		mine := volume * float64(part.Parts) / parts
		switch {
		case plain && laid.milligrams > 0 && byMass:
			out[i], whys[i] = share(laid.milligrams, float64(mg))
		case !byMass && !byVolume:
			whys[i] = unmeasured(lot, "cost-quantity-open", What(l))
		case mine == 0 || byMass && !dense:
			whys[i] = record.Say("cost-density-open")
		case byMass:
			out[i], whys[i] = share(mine*float64(rho)/1000, float64(mg))
		default:
			out[i], whys[i] = share(mine, float64(ul))
		}
	}
	return out, whys
}
