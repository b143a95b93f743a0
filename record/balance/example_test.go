package balance_test

import (
	"fmt"

	"backleaf/record"
	"backleaf/record/balance"
)

// Linen in sealer on the front of 3 mm birch plywood, sealer on both faces.
func Example() {
	board := balance.BoardOf(balance.Sheet{Kind: record.Plywood, ThicknessMicrons: 3000, Plies: 3, Species: "birch"})
	seal := balance.Film(balance.KindOf(record.Acrylic, record.Sealer), false, balance.Exactly(50), balance.Estimated, balance.Room)
	glue := balance.Film(balance.KindOf(record.Acrylic, record.Adhesive), false, balance.Exactly(90), balance.Estimated, balance.Room)
	linen := balance.ClothLayer("along-grain", balance.UsualCloth, balance.UsualCloth, balance.Room)
	p := balance.Panel{HeightMicrons: 300e3, WidthMicrons: 400e3, Grain: "width", Board: board,
		Front: []balance.Layer{seal, glue, linen}, Back: []balance.Layer{seal}}

	j := balance.Judge(&p)
	w := j.Work.Worst()
	fmt.Printf("%s: over the %s %.1f to %.1f mm by pull\n", j.Outcome, w.Over, w.BowMicrons.Low/1000, w.BowMicrons.High/1000)
	m := balance.MoistureOf(&p, 10)
	fmt.Printf("10 %% RH, the %s first: %.2f to %.1f mm\n", m.Leads, m.Height.Low/1000, m.Height.High/1000)
	c := balance.Compare(&p, balance.Measured{BowMicrons: 1500, SpanMicrons: 300e3, Toward: "front"}, nil)
	fmt.Printf("measured 1.5 mm: %s, %s what these can do\n", c.Outcome, c.Explained)
	// Output:
	// open: over the height 0.1 to 5.3 mm by pull
	// 10 % RH, the back first: 0.04 to 3.8 mm
	// measured 1.5 mm: falls-short, within what these can do
}
