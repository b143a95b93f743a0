package measure_test

import (
	"fmt"
	"math"
	"testing"

	"backleaf/record/measure"
)

func TestCloth(t *testing.T) {
	const computed = "computed from the definitions"
	for oz, grams := range map[float64]float64{7: 237.3, 8: 271.2, 10: 339.1, 12: 406.9, 15: 508.6} {
		run(t, val(measure.GramsPerSquareMetre(oz)).is(fmt.Sprintf("%g oz/yd²", oz), grams, 0.05, computed))
	}
	yarn := measure.Yarns{PerCentimetre: 14, Tex: 60}
	run(t,
		val(measure.GramsPerSquareMetre(1)).is("1 oz/yd²", 33.90575, 5e-6, computed),
		val(measure.GramsPerSquareMetre(10)).is("10 oz/yd²", 339.06, 0.005, computed),
		val(measure.OuncesPerSquareYard(1)).is("1 g/m²", 0.0294935, 5e-8, computed),
		val(measure.ThreadsPerCentimetre(38)).is("38 per inch", 14.96, 0.005, computed),
		val(measure.ThreadsPerInch(14.96)).is("14.96 per cm", 38, 0.005, computed),
		val(measure.TexFromCottonCount(10)).is("Ne 10", 59.05, 0.005, "constant from memory of yarn numbering tables"),
		val(measure.TexFromLinenLea(14)).is("lea 14", 118.1, 0.05, "constant from memory of yarn numbering tables"),
		val(measure.TexFromDenier(9)).is("denier 9", 1, 0, "definition"),
		val(measure.WovenGramsPerSquareMetre(yarn, yarn, 0.05)).is("14 x 14, 60 tex, 5 %", 176.4, 1e-9, computed),
	)
}

func TestNumberedDuck(t *testing.T) {
	const source = "units reference page on duck canvas: 19 less the ounces of 36 x 22 in"
	for _, c := range []struct {
		number            int
		piece, yard, gram float64
	}{
		{1, 18, 29.45, 998.7}, {4, 15, 24.55, 832.2}, {6, 13, 21.27, 721.3},
		{8, 11, 18.00, 610.3}, {10, 9, 14.73, 499.3}, {12, 7, 11.45, 388.4},
	} {
		oz, err := measure.DuckOuncesPerSquareYard(c.number)
		name := fmt.Sprintf("No. %d", c.number)
		run(t,
			check{got: oz * 22 / 36, err: err}.is(name+" piece", c.piece, 1e-9, source),
			check{got: oz, err: err}.is(name, c.yard, 0.005, source),
			val(measure.GramsPerSquareMetre(oz)).is(name+" g/m²", c.gram, 0.05, "computed from "+source),
		)
	}
	// A secondary page on canvas weights; its 27 oz for No. 1 does not fit.
	run(t, val(measure.DuckOuncesPerSquareYard(12)).is("No. 12", 11.5, 0.06, "secondary page on canvas weights"))
	for _, n := range []int{-1, 0, 13} {
		if oz, err := measure.DuckOuncesPerSquareYard(n); err == nil || oz != 0 {
			t.Errorf("duck %d: %g, %v", n, oz, err)
		}
	}
}

func TestClothRefusals(t *testing.T) {
	refuse(t, "GramsPerSquareMetre", measure.GramsPerSquareMetre, 0, -1, 339)
	refuse(t, "OuncesPerSquareYard", measure.OuncesPerSquareYard, 0, -1, 5000)
	refuse(t, "ThreadsPerCentimetre", measure.ThreadsPerCentimetre, 0, -1, 501)
	refuse(t, "ThreadsPerInch", measure.ThreadsPerInch, 0, -1, 201)
	refuse(t, "TexFromCottonCount", measure.TexFromCottonCount, 0, -1)
	refuse(t, "TexFromLinenLea", measure.TexFromLinenLea, 0, -1)
	refuse(t, "TexFromDenier", measure.TexFromDenier, 0, -1)
	yarn := measure.Yarns{PerCentimetre: 14, Tex: 60}
	refuse(t, "WovenGramsPerSquareMetre", func(v float64) (float64, error) {
		return measure.WovenGramsPerSquareMetre(yarn, yarn, v)
	}, -0.1, 5)
	refuse(t, "WovenGramsPerSquareMetre weft", func(v float64) (float64, error) {
		return measure.WovenGramsPerSquareMetre(yarn, measure.Yarns{PerCentimetre: v, Tex: 60}, 0)
	}, 0, -1)
}

func TestClothProperties(t *testing.T) {
	r := fixed()
	for range 2000 {
		oz := logBetween(r, 0.01, 100)
		grams, err := measure.GramsPerSquareMetre(oz)
		finite(t, "GramsPerSquareMetre", grams, err)
		if back, err := measure.OuncesPerSquareYard(grams); err != nil || math.Abs(back/oz-1) > 1e-12 {
			t.Fatalf("%g oz/yd² came back as %g, %v", oz, back, err)
		}
		inch := logBetween(r, 1, 500)
		cm, err := measure.ThreadsPerCentimetre(inch)
		finite(t, "ThreadsPerCentimetre", cm, err)
		if back, err := measure.ThreadsPerInch(cm); err != nil || math.Abs(back/inch-1) > 1e-12 {
			t.Fatalf("%g per inch came back as %g, %v", inch, back, err)
		}
		woven, err := measure.WovenGramsPerSquareMetre(
			measure.Yarns{PerCentimetre: logBetween(r, 0.3, 200), Tex: logBetween(r, 0.1, 1e4)},
			measure.Yarns{PerCentimetre: logBetween(r, 0.3, 200), Tex: logBetween(r, 0.1, 1e4)}, between(r, 0, 1))
		finite(t, "WovenGramsPerSquareMetre", woven, err)
	}
}
