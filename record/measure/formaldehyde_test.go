package measure_test

import (
	"errors"
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
