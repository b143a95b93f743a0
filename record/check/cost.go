package check

import (
	"fmt"

	"backleaf/record"
)

// Price is what a whole lot cost, in hundredths of a currency (ISO 4217).
type Price struct {
	Minor    int64
	Currency string
}

// CostLine is the share of one lot in one panel. Minor means nothing where
// Missing says why it is not known.
type CostLine struct {
	What     string
	Lot      record.Key
	Entry    int64
	Minor    float64 // hundredths of the currency, not rounded
	Currency string
	Missing  string
}

// Cost returns what a panel cost, line by line: its share of the sheet by area
// with the saw loss as recorded, the cloth with its oversize, every coat by
// the amount of it. Work is not counted. The workshop must hold all the panels
// that share its entries.
func Cost(w *record.Workshop, p *record.Panel, prices map[record.Key]Price) []CostLine {
	lines := []CostLine{boardCost(w, p, prices)}
	for _, e := range p.Events {
		if b, ok := e.Body.(record.ClothLaid); ok {
			lines = append(lines, clothCost(w, p, e.Seq, b, prices))
		}
		c, _ := coatingOf(p, e.Seq)
		if c == nil {
			continue
		}
		if len(c.Mix) == 0 {
			lines = append(lines, CostLine{What: string(e.Body.Kind()), Entry: e.Seq, Missing: "the material is not recorded"})
		}
		for _, part := range c.Mix {
			lines = append(lines, coatCost(w, p, e.Seq, c, part, prices))
		}
	}
	return lines
}

// priced begins a line with the price of a lot, or says that there is none.
func priced(w *record.Workshop, what string, seq int64, material, lot record.Key, prices map[record.Key]Price) (CostLine, record.Lot, float64) {
	l := CostLine{What: what, Lot: lot, Entry: seq}
	if m, ok := w.Material(material); ok {
		l.What = what + ": " + m.Name
	}
	if lot == "" || lot == record.Unknown {
		l.Missing = "the lot is not recorded"
		return l, record.Lot{}, 0
	}
	b, _ := w.Lot(lot)
	p, ok := prices[lot]
	if !ok {
		l.Missing = "the price of " + string(lot) + " is not recorded"
		return l, b, 0
	}
	l.Currency = p.Currency
	return l, b, float64(p.Minor)
}

func mm(l record.Length) float64 { um, _ := l.Micrometers(); return float64(um) / 1000 }

func boardCost(w *record.Workshop, p *record.Panel, prices map[record.Key]Price) CostLine {
	cut, _ := record.Latest[record.Cut](p)
	c := cut.Body
	l, lot, paid := priced(w, "board", cut.Seq, c.Board, c.Lot, prices)
	if l.Missing != "" {
		return l
	}
	sheet, ok := lot.Sheet.AreaSquareMillimeters()
	n, ok2 := lot.Quantity.Sheets()
	area, ok3 := c.Size.AreaSquareMillimeters()
	if !ok || !ok2 || n == 0 || !ok3 || area == 0 {
		l.Missing = "the size or number of sheets of " + string(lot.Key) + ", or the size of the panel, is not recorded"
		return l
	}
	loss := mm(c.SawLoss)
	l.Minor = paid * (mm(c.Size.Height) + loss) * (mm(c.Size.Width) + loss) / (float64(sheet) * float64(n))
	if c.SawLoss.IsZero() {
		l.What += " (saw loss not recorded)"
	}
	return l
}

func clothCost(w *record.Workshop, p *record.Panel, seq int64, b record.ClothLaid, prices map[record.Key]Price) CostLine {
	l, lot, paid := priced(w, "cloth", seq, b.Cloth, b.ClothLot, prices)
	if l.Missing != "" {
		return l
	}
	bought, ok := lot.Quantity.SquareMillimeters()
	if !ok {
		m, _ := w.Material(b.Cloth)
		long, ok1 := lot.Quantity.Micrometers()
		wide, ok2 := m.Cloth.Width.Micrometers()
		bought, ok = int64(float64(long)*float64(wide)/1e6), ok1 && ok2
	}
	if _, sized := p.Size().AreaSquareMillimeters(); !ok || bought == 0 || !sized {
		l.Missing = "how much of " + string(lot.Key) + " was bought (length and width, or area), or the size of the panel, is not recorded"
		return l
	}
	over := 2 * mm(b.Oversize)
	l.Minor = paid * (mm(p.Size().Height) + over) * (mm(p.Size().Width) + over) * float64(len(b.Faces)) / float64(bought)
	if b.Oversize.IsZero() {
		l.What += " (oversize not recorded)"
	}
	return l
}

func coatCost(w *record.Workshop, p *record.Panel, seq int64, c *record.Coating, part record.Part, prices map[record.Key]Price) CostLine {
	l, lot, paid := priced(w, fmt.Sprintf("coat E%d", seq), seq, part.Material, part.Lot, prices)
	if l.Missing != "" {
		return l
	}
	used, why := amountOn(w, p, seq)
	if why != "" {
		l.Missing = why
		return l
	}
	share, why := shareOf(w, c, part, used, lot)
	if why != "" {
		l.Missing = why
		return l
	}
	l.Minor = paid * share
	return l
}

// shareOf is the part of a lot that went into an amount. Parts of a mix are
// by volume; the thinner costs nothing.
func shareOf(w *record.Workshop, c *record.Coating, part record.Part, used amount, lot record.Lot) (float64, string) {
	b, why := blendOf(w, c)
	if why != "" {
		return 0, why
	}
	var parts int64
	for _, q := range c.Mix {
		parts += q.Parts
	}
	ul := used.microliters
	if ul == 0 {
		if b.density == 0 {
			return 0, "the density of " + b.names + " is not recorded"
		}
		ul = used.milligrams / b.laidDensity()
	}
	ul = ul / (1 + b.thinned) * float64(part.Parts) / float64(parts)
	if bought, ok := lot.Quantity.Microliters(); ok && bought > 0 {
		return ul / float64(bought), ""
	}
	m, _ := w.Material(part.Material)
	d, ok := m.Density.MilligramsPerMilliliter()
	if bought, has := lot.Quantity.Milligrams(); has && bought > 0 && ok {
		return ul * float64(d) / 1000 / float64(bought), ""
	}
	return 0, "the quantity of " + string(lot.Key) + " is not recorded"
}
