package measure_test

import (
	"math"
	"testing"

	"backleaf/record/measure"
)

// bow is the height in millimetres over a span in millimetres.
func bow(spanMM float64) func(float64, error) (float64, error) {
	return func(curvature float64, err error) (float64, error) {
		if err != nil {
			return 0, err
		}
		s, err := measure.BowMicrons(curvature, spanMM*1000)
		return s / 1000, err
	}
}

func TestTension(t *testing.T) {
	hardboard := measure.Sheet{ThicknessMicrons: 3200, ModulusMPa: 4500, Poisson: 0.3}
	thick := measure.Sheet{ThicknessMicrons: 6400, ModulusMPa: 4500, Poisson: 0.3}
	plywood := measure.Sheet{ThicknessMicrons: 9200, ModulusMPa: 8750, Poisson: 0.3}
	mdf := measure.Sheet{ThicknessMicrons: 6000, ModulusMPa: 2700, Poisson: 0.3}
	wafer := measure.Sheet{ThicknessMicrons: 500, ModulusMPa: 130e3, Poisson: 0.28}
	pull := measure.TensionCurvature

	const computed = "computed from Stoney 1909"
	const silicon = "silicon constants of a film-stress note, " + computed
	k, err := pull(wafer, 100*1, 0)
	run(t,
		check{got: k, err: err}.is("silicon wafer", 0.0132923, 5e-8, silicon),
		check{got: 1 / k, err: err}.is("silicon wafer, R", 75.231, 0.0005, silicon),
		val(bow(100)(k, err)).is("silicon wafer, bow", 0.016615, 5e-7, silicon),
		val(pull(hardboard, 1*60, 0)).is("coat on hardboard", 0.00546875, 1e-12, computed),
		val(bow(600)(pull(hardboard, 1*60, 0))).is("coat on hardboard, bow", 0.24609, 5e-6, computed),
		val(bow(600)(pull(thick, 1*60, 0))).is("twice as thick: a quarter", 0.24609375/4, 1e-12, computed),
		val(bow(600)(pull(thick, 1*60, 0))).is("twice as thick", 0.06152, 5e-6, computed),
		val(bow(1200)(pull(hardboard, 1*60, 0))).is("twice the span: four times", 4*0.24609375, 1e-9, computed),
		val(bow(600)(pull(hardboard, 1*100, 1*60))).is("two-sided", 0.16406, 5e-6, computed),
		val(pull(hardboard, 200, 0)).is("cloth on hardboard", 0.0182292, 5e-8, computed),
		val(bow(600)(pull(hardboard, 200, 0))).is("cloth on hardboard, bow", 0.8203, 5e-5, computed),
		val(bow(600)(pull(plywood, 200, 0))).is("cloth on plywood, bow", 0.0510, 5e-5, computed),
		val(bow(600)(pull(mdf, 200, 0))).is("cloth on MDF, bow", 0.3889, 5e-5, computed),
	)
	k, err = pull(hardboard, 60, 0)
	run(t, check{got: 1 / k, err: err}.is("coat on hardboard, R", 182.857, 0.0005, computed))
}

func TestArc(t *testing.T) {
	run(t, val(measure.BowMicrons(0.1, 6e5)).is("R 10 m", 4500.00, 1e-6, "computed from geometry"))
	refuse(t, "BowMicrons", func(v float64) (float64, error) { return measure.BowMicrons(0.1, v) }, 0, -1, 600)
	refuse(t, "TensionCurvature", func(v float64) (float64, error) {
		return measure.TensionCurvature(measure.Sheet{ThicknessMicrons: v, ModulusMPa: 4500}, 1, 0)
	}, 0, -1)
}

func TestBowProperties(t *testing.T) {
	r := fixed()
	for range 5000 {
		sheet := measure.Sheet{ThicknessMicrons: logBetween(r, 500, 1e5), ModulusMPa: logBetween(r, 500, 2e4), Poisson: between(r, 0, 0.49)}
		front, back := between(r, -1000, 1000), between(r, -1000, 1000)
		tk, err := measure.TensionCurvature(sheet, front, back)
		finite(t, "TensionCurvature", tk, err)
		swapped, err := measure.TensionCurvature(sheet, back, front)
		finite(t, "TensionCurvature swapped", swapped, err)
		if tk != -swapped {
			t.Fatalf("faces swapped: %g and %g", tk, swapped)
		}

		span := logBetween(r, 1000, 1e7)
		s1, err := measure.BowMicrons(tk/1e3, span)
		finite(t, "BowMicrons", s1, err)
		s2, err := measure.BowMicrons(tk/1e3, 2*span)
		finite(t, "BowMicrons doubled", s2, err)
		if math.Abs(s2-4*s1) > 1e-12*math.Abs(s2) {
			t.Fatalf("span doubled: %g and %g", s1, s2)
		}
	}
}
