package plan

import (
	"math"
	"testing"
)

func near(a, b float64) bool { return math.Abs(a-b) <= 1e-6*math.Max(1, math.Abs(b)) }

// Reckoned by hand: 14 panels of 300 x 400 x 3 mm, front, back and edges, the
// edges twice, are 14 (2 x 0.12 + 2 x 2 x 0.7 x 0.003) = 3.4776 m².
func TestWetting(t *testing.T) {
	panels := []Panel{{um(300), um(400), um(3), 14}}
	products := []Product{{"sealer", 1040}, {"ground", 1350}, {"varnish", 0}}
	all := []Face{Front, Back, Edges}
	acts := []Act{
		{Do: Coating, Faces: all, Extra: []Face{Edges}, Mix: []Portion{{0, 1}}, PerSquare: Amount{Microliters: 80_000}}, // 278.208 mL
		{Do: LayingCloth, Faces: []Face{Front}, Mix: []Portion{{0, 1}}, PerSquare: Amount{Milligrams: 208_000}},         // 1.68 m²: 349.44 g, 336 mL
		{Do: Trimming}, // takes nothing
		{Do: Coating, Faces: []Face{Front}, Mix: []Portion{{1, 3}, {0, 1}}, Thinned: 10_000, PerSquare: Amount{Microliters: 110_000}},                     // 184.8 mL: 168 undiluted, 126 and 42
		{Do: Coating, Faces: []Face{Front}, Mix: []Portion{{2, 1}}, PerSquare: Amount{Milligrams: 50_000}},                                                // 84 g, no volume
		{Do: Coating, Faces: []Face{Front}, Mix: []Portion{{2, 1}, {0, 1}}, PerSquare: Amount{Milligrams: 50_000}},                                        // a mass of a mix without densities
		{Do: Coating, Faces: []Face{Front}, Mix: []Portion{{1, 1}}, Thinned: 10_000, NotWater: true, PerSquare: Amount{Microliters: 11_000}},              // 18.48 mL, 16.8 undiluted
		{Do: Coating, Faces: []Face{Front}, Mix: []Portion{{1, 1}}},                                                                                       // no amount
		{Do: Coating, Faces: []Face{Front}, PerSquare: Amount{Milligrams: 1}},                                                                             // no mix
		{Do: Coating, Faces: []Face{Back}, Mix: []Portion{{1, 1}}, Thinned: 10_000, PerSquare: Amount{Milligrams: 1_000 * (1.35 + 0.1*0.998) / 1.1 * 10}}, // 10 mL/m²: 16.8 mL laid
	}
	w := Wetting(panels, acts, products, nil, 0)
	for i, want := range []struct {
		area, ul, mg float64
		why          Missing
	}{
		{3_477_600, 278_208, 289_336.32, ""},
		{1_680_000, 336_000, 349_440, ""},
		{1_680_000, 184_800, 168_000*(3*1.35+1.04)/4 + 16_800*0.998, ""},
		{1_680_000, 0, 84_000, ""},
		{1_680_000, 0, 84_000, NoDensity},
		{1_680_000, 18_480, 0, ""},
		{1_680_000, 0, 0, NoAmount},
		{1_680_000, 0, 0, NoMix},
		{1_680_000, 16_800, 16_800 * (1.35 + 0.1*0.998) / 1.1, ""},
	} {
		c := w.Coats[i]
		if !near(c.Area, want.area) || !near(c.Laid.Microliters, want.ul) || !near(c.Laid.Milligrams, want.mg) || c.Why != want.why {
			t.Errorf("coat %d: %+v, want %+v", i, c, want)
		}
	}
	if a, ok := Spread([]Panel{{um(300), um(400), 0, 1}}, acts[0]); ok {
		t.Errorf("edges of a board of unknown thickness are %v", a)
	}

	// A tenth stays in the tray: 614.208 / 0.9 = 682.4533 mL of sealer.
	tins := []Tin{
		{"old", 0, Amount{Microliters: 900_000}, true},
		{"open", 0, Amount{Milligrams: 104_000}, false}, // 100 mL
		{"full", 0, Amount{Microliters: 500_000}, false},
		{"other", 1, Amount{Microliters: 500_000}, false},
	}
	w = Wetting(panels, acts[:3], products, tins, UsualLoss)
	n := w.Products[0]
	if len(w.Products) != 1 || !near(n.Taken.Microliters, 614_208/0.9) || len(n.From) != 2 || len(n.Expired) != 1 || n.Expired[0] != 0 {
		t.Fatalf("%+v", w.Products)
	}
	if a := n.From[0]; a.Tin != 1 || !near(a.Taken.Microliters, 100_000) || !near(a.Left.Milligrams, 0) {
		t.Errorf("from the open tin: %+v", a)
	}
	if b := n.From[1]; b.Tin != 2 || !near(b.Taken.Microliters, 500_000) || !near(n.Buy.Microliters, 614_208/0.9-600_000) {
		t.Errorf("from the full tin: %+v, to buy %+v", b, n.Buy)
	}
}

func TestCost(t *testing.T) {
	panels := []Panel{{um(300), um(400), um(3), 14}}
	// 14 x 302.5 x 402.5 mm of a sheet of 2440 x 1220: 57.26 %.
	board := BoardUse(panels, 2500)
	cloth := ClothUse(panels, Act{Faces: []Face{Front, Edges}, Oversize: um(30)})
	if !near(board, 14*302.5*402.5) || !near(cloth, 14*360*460) {
		t.Errorf("board %v, cloth %v", board, cloth)
	}
	lines, sums := Cost([]Use{{"board", "ply", board, 2440 * 1220}, {"cloth", "linen", cloth, 1500 * 5000}, {"coat", "tin", 1, 0}, {"coat", "none", 1, 2}},
		map[string]Price{"ply": {3600, "EUR"}, "linen": {11000, "EUR"}, "tin": {100, "USD"}})
	if lines[0].Price.Minor != 2061 || lines[1].Price.Minor != 3400 || lines[2].Priced || lines[3].Priced || len(sums) != 1 || sums[0] != (Price{5461, "EUR"}) {
		t.Errorf("%+v %+v", lines, sums)
	}
}
