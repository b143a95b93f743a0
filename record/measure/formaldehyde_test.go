package measure_test

import (
	"errors"
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/measure"
)

// The boundary of 8 mm: trade guide reproducing ANSI A208.2.
func TestEmissionLimits(t *testing.T) {
	for _, c := range []struct {
		class   measure.EmissionClass
		board   record.BoardKind
		microns float64
		value   float64
		unit    string
		basis   measure.Basis
		source  string
	}{
		{measure.TSCATitleVI, record.Plywood, 3000, 0.05, "ppm", measure.Published, "Public Law 111-199"},
		{measure.TSCATitleVI, record.Particleboard, 16000, 0.09, "ppm", measure.Published, "laboratory press release, 2017"},
		{measure.TSCATitleVI, record.MDF, 8001, 0.11, "ppm", measure.Published, "Public Law 111-199"},
		{measure.TSCATitleVI, record.MDF, 8000, 0.13, "ppm", measure.Published, "laboratory press release, 2017"},
		{measure.ULEF, record.Plywood, 3000, 0.05, "ppm", measure.Published, "Public Law 111-199"},
		{measure.ULEF, record.MDF, 8000, 0.06, "ppm", measure.Published, "Public Law 111-199"},
		{measure.E1, record.MDF, 8001, 0.124, "mg/m³", measure.Published, "EN 717-1 chamber, comparison table of classes"},
		{measure.E1, record.Plywood, 3000, 0.124, "mg/m³", measure.Published, "EN 717-1 chamber, comparison table of classes"},
		{measure.E2Perforator, record.MDF, 8001, 30, "mg/100 g", measure.Published, "board specifications"},
		{measure.REACH77, record.MDF, 8000, 0.062, "mg/m³", measure.Memory, "from memory of Regulation (EU) 2023/1464"},
		{measure.FourStar, record.MDF, 8000, 0.3, "mg/L", measure.Published, "F-star note"},
		{measure.ThreeStar, record.MDF, 8000, 0.5, "mg/L", measure.Published, "F-star note"},
		{measure.TwoStar, record.MDF, 8000, 1.5, "mg/L", measure.Published, "F-star note"},
		{measure.OneStar, record.MDF, 8000, 5, "mg/L", measure.Published, "F-star note"},
	} {
		got, err := measure.EmissionLimitOf(c.class, c.board, c.microns)
		if err != nil || got.Value != c.value || got.Unit != c.unit || got.Source.Basis != c.basis || got.Test == "" || got.Source.Text == "" {
			t.Errorf("%s, %s of %g µm: %+v, %v; want %g %s (source: %s)", c.class, c.board, c.microns, got, err, c.value, c.unit, c.source)
		}
	}
	for _, c := range []struct {
		class measure.EmissionClass
		board record.BoardKind
	}{{"E9", record.MDF}, {measure.TSCATitleVI, ""}, {measure.TSCATitleVI, record.Hardboard}, {"", ""}} {
		if got, err := measure.EmissionLimitOf(c.class, c.board, 3000); !errors.Is(err, measure.ErrNoFigure) {
			t.Errorf("%q, %q: %+v, %v", c.class, c.board, got, err)
		}
	}
	// Of a thickness nobody knows the lower limit is told.
	for _, microns := range []float64{0, math.NaN()} {
		if got, err := measure.EmissionLimitOf(measure.TSCATitleVI, record.MDF, microns); err != nil || got.Value != 0.11 {
			t.Errorf("MDF of %g µm: %+v, %v", microns, got, err)
		}
	}
}
