package plan

import (
	"math"
	"slices"
	"strings"
)

// Price is an amount of money in the smallest unit of a currency by its ISO
// 4217 code.
type Price struct {
	Minor    int64  `json:"minor"`
	Currency string `json:"currency"`
}

// Use is the part of a lot that a plan takes: in square millimetres, in
// milligrams or in microlitres, as the lot is counted.
type Use struct {
	What        string
	Lot         string
	Part, Whole float64
}

// CostLine is what a use costs. Priced is false where the price of the lot or
// what it held is not recorded.
type CostLine struct {
	Use
	Price  Price
	Priced bool
}

// Cost prices the uses by the prices of whole lots, each rounded half away from
// zero to the smallest unit. The sums stand by currency; they are at least so
// much where a line has no price.
func Cost(uses []Use, prices map[string]Price) (lines []CostLine, sums []Price) {
	for _, u := range uses {
		l := CostLine{Use: u}
		if p, ok := prices[u.Lot]; ok && u.Whole > 0 {
			l.Price, l.Priced = Price{int64(math.Round(u.Part / u.Whole * float64(p.Minor))), p.Currency}, true
			i, found := slices.BinarySearchFunc(sums, l.Price, func(a, b Price) int { return strings.Compare(a.Currency, b.Currency) })
			if !found {
				sums = slices.Insert(sums, i, Price{Currency: p.Currency})
			}
			sums[i].Minor += l.Price.Minor
		}
		lines = append(lines, l)
	}
	return lines, sums
}

// BoardUse is the share of board in panels: each side longer by the saw's cut.
func BoardUse(panels []Panel, kerf int64) (mm2 float64) {
	for _, p := range panels {
		mm2 += float64(p.Height+kerf) * float64(p.Width+kerf) / 1e6 * float64(p.Count)
	}
	return mm2
}

// ClothUse is the share of cloth in panels: the oversize on every side of each
// face that is covered.
func ClothUse(panels []Panel, a Act) (mm2 float64) {
	for _, p := range panels {
		for _, f := range a.Faces {
			if f != Edges {
				mm2 += float64(p.Height+2*a.Oversize) * float64(p.Width+2*a.Oversize) / 1e6 * float64(p.Count)
			}
		}
	}
	return mm2
}
