package measure_test

import (
	"math"
	"testing"

	"backleaf/record/measure"
)

func TestFilm(t *testing.T) {
	const (
		spreading  = "coating maker's spreading rate note, worked example"
		conversion = "coating maker's calculation and conversion bulletin, worked example"
		coverage   = "R. Joseph, article on paint coverage, 2003, worked example"
		computed   = "computed from the formula"
	)
	dry8, err := measure.DryMicrons(8*measure.MicronsPerMil, 0.35, 0)
	mils := func(microns float64, err error) (float64, error) { return microns / measure.MicronsPerMil, err }
	sqft, err2 := measure.SquareFeetPerGallon(1, 1)
	transfer, err3 := measure.SquareFeetPerGallon(0.52, 1.5)
	run(t,
		check{got: sqft, err: err2}.is("1 US gal at 1 mil", 1604.1667, 0.0001, "231 in³/144/0.001 in, computed"),
		check{got: sqft, err: err2}.is("1 US gal at 1 mil", 1604, 0.5, spreading),
		val(measure.SquareMetresPerLitre(1, 1)).is("1 L at 1 µm", 1000, 1e-9, spreading),
		val(measure.SquareFeetPerGallon(0.65, 5)).is("VS 65 %, 5 mil", 208.52, 0.03, spreading),
		val(measure.SquareMetresPerLitre(0.65, 125)).is("VS 65 %, 125 µm", 5.2, 1e-9, spreading),
		val(measure.SquareMetresPerLitre(0.40, 40)).is("VS 40 %, 40 µm", 10, 1e-9, computed),
		val(measure.SquareFeetPerGallon(0.35, 2)).is("VS 35 %, 2 mil", 281, 0.5, conversion),
		check{got: transfer * 0.30, err: err3}.is("VS 52 %, 1.5 mil, 30 % transferred", 167, 0.5, coverage),
		check{got: dry8 / measure.MicronsPerMil, err: err}.is("8 mil wet, VS 35 %", 2.8, 1e-9, conversion),
		val(mils(measure.DryMicrons(8*measure.MicronsPerMil, 0.35, 0.10))).is("8 mil wet, thinned 10 %", 2.545, 0.001, computed),
		val(mils(measure.DryMicrons(8*measure.MicronsPerMil, 0.35, 0.10))).is("8 mil wet, thinned 10 %, source rounds to 2.5-2.6", 2.55, 0.06, conversion),
		val(mils(measure.WetMicronsFor(2.8*measure.MicronsPerMil, 0.35, 0.10))).is("2.8 mil dry wanted", 8.8, 1e-9, computed),
		check{got: sqft / 400, err: err2}.is("400 ft²/gal in mils wet", 4.010, 0.001, computed),
		check{got: sqft / 400, err: err2}.is("400 ft²/gal in mils wet", 4, 0.5, "question and answer on paint thickness: 0.004 in"),
		val(measure.DryMicrons(100, 0.40, 0.20)).is("100 µm wet, VS 40 %, 20 % water", 33.33, 0.005, computed),
		val(measure.WetMicrons(100, 1.30, 0.5)).is("100 g, 1.30 g/mL, 0.5 m²", 153.85, 0.005, computed),
		val(measure.VolumeSolids(0.50, 1.05)).is("WS 0.50, 1.05 g/mL", 0.4739, 0.0001, computed),
		val(measure.VolumeSolids(0.55, 1.35)).is("WS 0.55, 1.35 g/mL", 0.3913, 0.0001, computed),
		val(measure.WaterGramsPerSquareMetre(150, 0.60)).is("150 µm wet, 60 % water", 89.8, 0.05, computed),
	)

	// One ft²/gal is 0.0245424 m²/L: the two spreading rates must differ by it.
	metric, err := measure.SquareMetresPerLitre(0.37, 3*measure.MicronsPerMil)
	us, err2 := measure.SquareFeetPerGallon(0.37, 3)
	if err != nil || err2 != nil || math.Abs(metric/us-0.0245424) > 5e-8 {
		t.Errorf("m²/L per ft²/gal: got %.7f, %v, %v; want 0.0245424 (computed)", metric/us, err, err2)
	}
}

func TestFilmRefusals(t *testing.T) {
	refuse(t, "WetMicrons mass", func(v float64) (float64, error) { return measure.WetMicrons(v, 1, 1) }, 0, -1, 1e6)
	refuse(t, "WetMicrons density", func(v float64) (float64, error) { return measure.WetMicrons(1, v, 1) }, 0, -1, 1050)
	refuse(t, "WetMicrons area", func(v float64) (float64, error) { return measure.WetMicrons(1, 1, v) }, 0, -1, 2400)
	refuse(t, "DryMicrons wet", func(v float64) (float64, error) { return measure.DryMicrons(v, 0.4, 0) }, 0, -1)
	refuse(t, "DryMicrons solids", func(v float64) (float64, error) { return measure.DryMicrons(100, v, 0) }, 0, -0.4, 40)
	refuse(t, "DryMicrons thinner", func(v float64) (float64, error) { return measure.DryMicrons(100, 0.4, v) }, -0.1, 50)
	refuse(t, "WetMicronsFor dry", func(v float64) (float64, error) { return measure.WetMicronsFor(v, 0.4, 0) }, 0, -1)
	refuse(t, "WetMicronsFor solids", func(v float64) (float64, error) { return measure.WetMicronsFor(10, v, 0) }, 0, 1.01)
	refuse(t, "VolumeSolids mass solids", func(v float64) (float64, error) { return measure.VolumeSolids(v, 1.05) }, 0, 50)
	// 10 % solids at 1.35 g/mL would be more water than there is room for.
	refuse(t, "VolumeSolids density", func(v float64) (float64, error) { return measure.VolumeSolids(0.1, v) }, 1.35, 0)
	refuse(t, "SquareMetresPerLitre", func(v float64) (float64, error) { return measure.SquareMetresPerLitre(0.4, v) }, 0, -5)
	refuse(t, "SquareFeetPerGallon", func(v float64) (float64, error) { return measure.SquareFeetPerGallon(0.4, v) }, 0, -5)
	refuse(t, "WaterGramsPerSquareMetre", func(v float64) (float64, error) { return measure.WaterGramsPerSquareMetre(100, v) }, -0.1, 60)
}

func TestFilmFinite(t *testing.T) {
	r := fixed()
	for range 5000 {
		vs, thin := logBetween(r, 0.001, 1), between(r, 0, 20)
		wet, err := measure.WetMicrons(logBetween(r, 0.001, 1e5), between(r, 0.5, 5), logBetween(r, 1e-4, 1000))
		finite(t, "WetMicrons", wet, err)
		in := logBetween(r, 100, 20000)
		dry, err := measure.DryMicrons(in, vs, thin)
		finite(t, "DryMicrons", dry, err)
		if dry < 0.01 {
			continue
		}
		back, err := measure.WetMicronsFor(dry, vs, thin)
		finite(t, "WetMicronsFor", back, err)
		if math.Abs(back/in-1) > 1e-9 {
			t.Fatalf("WetMicronsFor(DryMicrons(%g)) = %g", in, back)
		}
	}
}
