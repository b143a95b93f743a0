package measure_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"backleaf/record/measure"
)

func TestEmissionLimits(t *testing.T) {
	for _, c := range []struct {
		class   measure.EmissionClass
		product measure.Product
		value   float64
		unit    string
		basis   measure.Basis
		source  string
	}{
		{measure.TSCATitleVI, measure.HardwoodPlywood, 0.05, "ppm", measure.Published, "Public Law 111-199"},
		{measure.TSCATitleVI, measure.Particleboard, 0.09, "ppm", measure.Published, "laboratory press release, 2017"},
		{measure.TSCATitleVI, measure.MediumDensity, 0.11, "ppm", measure.Published, "Public Law 111-199"},
		{measure.TSCATitleVI, measure.ThinMDF, 0.13, "ppm", measure.Published, "laboratory press release, 2017"},
		{measure.ULEF, measure.HardwoodPlywood, 0.05, "ppm", measure.Published, "Public Law 111-199"},
		{measure.ULEF, measure.ThinMDF, 0.06, "ppm", measure.Published, "Public Law 111-199"},
		{measure.E1, measure.MediumDensity, 0.124, "mg/m³", measure.Published, "EN 717-1 chamber, comparison table of classes"},
		{measure.E1, measure.HardwoodPlywood, 0.124, "mg/m³", measure.Published, "EN 717-1 chamber, comparison table of classes"},
		{measure.E1Perforator, measure.MediumDensity, 8, "mg/100 g", measure.Published, "board specifications"},
		{measure.E2Perforator, measure.MediumDensity, 30, "mg/100 g", measure.Published, "board specifications"},
		{measure.REACH77, measure.ThinMDF, 0.062, "mg/m³", measure.Memory, "from memory of Regulation (EU) 2023/1464"},
		{measure.FourStar, measure.ThinMDF, 0.3, "mg/L", measure.Published, "F-star note"},
		{measure.ThreeStar, measure.ThinMDF, 0.5, "mg/L", measure.Published, "F-star note"},
		{measure.TwoStar, measure.ThinMDF, 1.5, "mg/L", measure.Published, "F-star note"},
		{measure.OneStar, measure.ThinMDF, 5, "mg/L", measure.Published, "F-star note"},
	} {
		got, err := measure.EmissionLimitOf(c.class, c.product)
		if err != nil || got.Value != c.value || got.Unit != c.unit || got.Source.Basis != c.basis || got.Test == "" || got.Source.Text == "" {
			t.Errorf("%s, %s: %+v, %v; want %g %s (source: %s)", c.class, c.product, got, err, c.value, c.unit, c.source)
		}
	}
	for _, c := range []struct {
		class   measure.EmissionClass
		product measure.Product
	}{{"E9", measure.MediumDensity}, {measure.TSCATitleVI, ""}, {measure.TSCATitleVI, "hardboard"}, {"", ""}} {
		if got, err := measure.EmissionLimitOf(c.class, c.product); !errors.Is(err, measure.ErrNoFigure) {
			t.Errorf("%q, %q: %+v, %v", c.class, c.product, got, err)
		}
	}
	// The copy is a copy.
	all := measure.EmissionLimits()
	all[0].Value = 99
	if again := measure.EmissionLimits(); again[0].Value == 99 {
		t.Error("the table can be changed from outside")
	}
}

func TestProductOf(t *testing.T) {
	// The boundary of 8 mm: trade guide reproducing ANSI A208.2.
	for _, c := range []struct {
		board   measure.Board
		microns float64
		want    measure.Product
	}{
		{measure.Plywood, 3000, measure.HardwoodPlywood}, {measure.MDF, 3000, measure.ThinMDF},
		{measure.MDF, 8000, measure.ThinMDF}, {measure.MDF, 8001, measure.MediumDensity},
	} {
		if got, err := measure.ProductOf(c.board, c.microns); err != nil || got != c.want {
			t.Errorf("ProductOf(%s, %g) = %q, %v", c.board, c.microns, got, err)
		}
	}
	if got, err := measure.ProductOf(measure.Hardboard, 3200); !errors.Is(err, measure.ErrNoFigure) {
		t.Errorf("hardboard: %q, %v", got, err)
	}
	if got, err := measure.ProductOf(measure.MDF, math.NaN()); err == nil {
		t.Errorf("no thickness: %q", got)
	}
}

func TestFormaldehydeInAir(t *testing.T) {
	const computed = "computed, 24.45 L/mol at 25 °C and 30.026 g/mol"
	for ppm, want := range map[float64]float64{0.05: 0.0614, 0.09: 0.1105, 0.11: 0.1351, 0.13: 0.1596} {
		run(t, val(measure.FormaldehydeMilligrams(ppm, 25)).is(fmt.Sprintf("%g ppm", ppm), want, 0.00006, computed))
	}
	run(t,
		val(measure.FormaldehydeMilligrams(1, 25)).is("1 ppm", 1.2281, 0.00006, computed),
		val(measure.FormaldehydePPM(0.124, 20)).is("E1 at 20 °C", 0.0993, 0.00006, computed),
		val(measure.FormaldehydePPM(0.124, 20)).is("E1", 0.1, 0.001, "comparison table of formaldehyde classes, about 0.1 ppm"),
	)
	r := fixed()
	for range 1000 {
		ppm, celsius := between(r, 0, 900), between(r, 0, 50)
		mg, err := measure.FormaldehydeMilligrams(ppm, celsius)
		finite(t, "FormaldehydeMilligrams", mg, err)
		back, err := measure.FormaldehydePPM(mg, celsius)
		finite(t, "FormaldehydePPM", back, err)
		if math.Abs(back-ppm) > 1e-9*(ppm+1) {
			t.Fatalf("%g ppm came back as %g", ppm, back)
		}
	}
	refuse(t, "FormaldehydeMilligrams", func(v float64) (float64, error) { return measure.FormaldehydeMilligrams(v, 25) }, -1, 1001)
	refuse(t, "FormaldehydePPM", func(v float64) (float64, error) { return measure.FormaldehydePPM(0.1, v) }, -1, 51)
}
