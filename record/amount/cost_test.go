package amount_test

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/invented"
	"backleaf/record/tell"
)

const shop = `
material - key=board name=hardboard uses=board board={"kind":"hardboard","thickness":"3~mm"}
material - key=linen name=linen uses=cloth cloth={"fibre":"linen","width":"150~cm"}
material - key=sealer name=sealer uses=sealer binder=acrylic-dispersion density=1.04_g/mL
material - key=primer name=primer uses=ground binder=acrylic-dispersion density=1.3_g/mL
material - key=light name=undescribed uses=sealer
lot - key=sheet material=board sheet=100_x_200_cm_x_3_mm quantity=2_sheets
lot - key=loose material=board quantity=2_sheets
lot - key=bolt material=linen quantity=5_m
lot - key=piece material=linen quantity=2_m2
lot - key=tin material=sealer quantity=2.5_kg
lot - key=can material=sealer quantity=1_L
lot - key=pot material=primer quantity=1_L
lot - key=jar material=light quantity=500_mL
lot - key=open material=sealer
`

var paid = map[record.Key]amount.Price{
	"sheet": {4000, "EUR"}, "loose": {1000, "EUR"}, "bolt": {15000, "EUR"}, "piece": {6000, "USD"}, "tin": {5000, "EUR"},
	"can": {2000, "EUR"}, "pot": {3000, "EUR"}, "jar": {900, "EUR"}, "open": {100, "EUR"},
}

// Costs worked out by hand beside each case, in hundredths.
func TestCost(t *testing.T) {
	for _, c := range []struct {
		name, story string
		want        []string // what, lot, hundredths or why not
		complete    bool
		sums        []amount.Price
	}{
		// 500 x 400 mm of two sheets of 2 m²: 1/20 of 40.00
		{"board by area", `cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet`,
			[]string{"board sheet 200"}, true, []amount.Price{{200, "EUR"}}},
		// 503 x 403 = 202709 mm² of 4 m²: 5.067725 %
		{"with the saw loss", `cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet saw_loss=3_mm`,
			[]string{"board sheet 203"}, true, []amount.Price{{203, "EUR"}}},
		{"a lot without the size of its sheets", `cut - batch=b size=500_x_400_x_3_mm board=board board_lot=loose`,
			[]string{"board loose size of the sheet not recorded"}, false, nil},
		{"no lot", `cut - batch=b size=500_x_400_x_3_mm board=board`, []string{"board - lot not recorded"}, false, nil},
		// 520 x 420 = 0.2184 m² of 7.5 m²: 2.912 % of 150.00
		{"cloth with its oversize", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			cloth - faces=front cloth=linen cloth_lot=bolt oversize=10_mm mix=sealer/tin wet_each=50_g`,
			[]string{"board sheet 200", "adhesive tin 100", "cloth bolt 437"}, true, []amount.Price{{737, "EUR"}}},
		// 0.2 m² on each face of 2 m²: a fifth of 60.00, in another currency
		{"cloth on both faces, from a piece sold by area", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			cloth - faces=front,back cloth=linen cloth_lot=piece mix=sealer/tin wet_each=50_g`,
			[]string{"board sheet 200", "adhesive tin 100", "cloth piece 1200"}, true, []amount.Price{{300, "EUR"}, {1200, "USD"}}},
		// 104 g are 100 mL of a litre
		{"mass laid, volume bought", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			coat - faces=front,back mix=sealer/can wet_each=104_g`,
			[]string{"board sheet 200", "coat can 200"}, true, []amount.Price{{400, "EUR"}}},
		// 120 mL thinned by 20 % hold 100 mL
		{"the thinner costs nothing", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			coat - faces=front mix=sealer/can thinned=20_% wet_each=120_mL`,
			[]string{"board sheet 200", "coat can 200"}, true, []amount.Price{{400, "EUR"}}},
		// 100 mL, one part each
		{"a mix by volume", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			coat - faces=front mix=sealer/can+primer/pot wet_each=100_mL`,
			[]string{"board sheet 200", "coat can 100", "coat pot 150"}, true, []amount.Price{{450, "EUR"}}},
		// a quarter of 416 g, the other panel being three times as large
		{"shared out by area", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			cut - batch=b size=1500_x_400_x_3_mm board=board board_lot=sheet panels=KB26-0141-W
			coat - faces=front mix=sealer/can wet_total=416_g panels=KB26-0140-D,KB26-0141-W`,
			[]string{"board sheet 200", "coat can 200"}, true, []amount.Price{{400, "EUR"}}},
		{"what is missing is said", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			coat - faces=front mix=sealer/open wet_each=100_g
			coat - faces=front mix=light/jar wet_each=100_g
			coat - faces=front mix=sealer/tin
			coat - faces=front mix=sealer wet_each=1_g
			coat - faces=front`,
			[]string{"board sheet 200", "coat open quantity of the lot not recorded", "coat jar density not recorded",
				"coat tin no amount is recorded", "coat - lot not recorded", "coat - lot not recorded"}, false, []amount.Price{{200, "EUR"}}},
		{"more than the lot held", `
			cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet
			coat - faces=front mix=sealer/tin wet_each=3_kg`,
			[]string{"board sheet 200", "coat tin more was used than the lot held"}, false, []amount.Price{{200, "EUR"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			w, p := fold(t, invented.Lines(strings.TrimSpace(shop)+"\n"+strings.TrimSpace(c.story)))
			got := amount.Cost(w, p, paid)
			var shown []string
			for _, l := range got.Lines {
				lot, figure := string(l.Lot), missing(l)
				if lot == "" {
					lot = "-"
				}
				if figure == "" {
					figure = strconv.FormatInt(l.Price.Minor, 10)
				} else if l.Price.Minor != 0 {
					t.Errorf("%s has a price and misses it", tell.English().Fill("{layer}", l.What))
				}
				shown = append(shown, tell.English().Fill("{layer}", l.What)+" "+lot+" "+figure)
			}
			if !slices.Equal(shown, c.want) || got.Complete != c.complete || !slices.Equal(got.Sums, c.sums) {
				t.Errorf("got %q, complete %v, %v; want %q, %v, %v", shown, got.Complete, got.Sums, c.want, c.complete, c.sums)
			}
		})
	}
}

// The panels of a sheet share it: what they pay together is never more than
// the sheet, and a batch is complete only where every panel is.
func TestCostTotal(t *testing.T) {
	w, p := fold(t, invented.Lines(strings.TrimSpace(shop)+`
cut - batch=b size=500_x_400_x_3_mm board=board board_lot=sheet panels=KB26-0140-D,KB26-0141-W
coat - faces=front mix=sealer/tin wet_total=100_g panels=KB26-0140-D,KB26-0141-W
coat - faces=back mix=sealer/tin panels=KB26-0141-W`))
	q := w.Panel("KB26-0141-W")
	sum, complete := amount.CostTotal([]amount.CostSheet{amount.Cost(w, p, paid), amount.Cost(w, q, paid)})
	if complete || !slices.Equal(sum, []amount.Price{{600, "EUR"}}) {
		t.Errorf("%v, complete %v", sum, complete)
	}
	if _, complete := amount.CostTotal([]amount.CostSheet{amount.Cost(w, p, paid)}); !complete {
		t.Error("the first panel misses nothing")
	}
	if none := amount.Cost(w, p, nil); none.Complete || len(none.Sums) != 0 || none.Lines[0].Missing.Code != "cost-price-open" {
		t.Errorf("without prices: %+v", none)
	}
}

func missing(l amount.CostLine) string {
	if l.Missing.Code == "" {
		return ""
	}
	return tell.Say(tell.English(), l.Missing)
}
