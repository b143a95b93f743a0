package measure_test

import (
	"testing"

	"backleaf/record/measure"
)

func TestFilm(t *testing.T) {
	const (
		mil        = 25.4 // µm, exact
		conversion = "coating maker's calculation and conversion bulletin, worked example"
		computed   = "computed from the formula"
	)
	mils := func(microns float64, err error) (float64, error) { return microns / mil, err }
	run(t,
		val(mils(measure.DryMicrons(8*mil, 0.35, 0))).is("8 mil wet, VS 35 %", 2.8, 1e-9, conversion),
		val(mils(measure.DryMicrons(8*mil, 0.35, 0.10))).is("8 mil wet, thinned 10 %", 2.545, 0.001, computed),
		val(mils(measure.DryMicrons(8*mil, 0.35, 0.10))).is("8 mil wet, thinned 10 %, source rounds to 2.5-2.6", 2.55, 0.06, conversion),
		val(measure.DryMicrons(100, 0.40, 0.20)).is("100 µm wet, VS 40 %, 20 % water", 33.33, 0.005, computed),
		val(measure.WetMicrons(100e3/1.30, 0.5e6)).is("100 g, 1.30 g/mL, 0.5 m²", 153.85, 0.005, computed),
		val(measure.WetMicrons(3.785411784e6, 400*92903.04)).is("a US gallon over 400 ft²", 101.9, 0.05, "question and answer on paint thickness: 0.004 in; 4.01 mil computed"),
		val(measure.VolumeSolids(0.50, 1.05)).is("WS 0.50, 1.05 g/mL", 0.4739, 0.0001, computed),
		val(measure.VolumeSolids(0.55, 1.35)).is("WS 0.55, 1.35 g/mL", 0.3913, 0.0001, computed),
	)
}

func TestFilmRefusals(t *testing.T) {
	refuse(t, "WetMicrons volume", func(v float64) (float64, error) { return measure.WetMicrons(v, 1000) }, 0, -1, 1e9)
	refuse(t, "WetMicrons area", func(v float64) (float64, error) { return measure.WetMicrons(1, v) }, 0, -1)
	refuse(t, "DryMicrons wet", func(v float64) (float64, error) { return measure.DryMicrons(v, 0.4, 0) }, 0, -1)
	refuse(t, "DryMicrons solids", func(v float64) (float64, error) { return measure.DryMicrons(100, v, 0) }, 0, -0.4, 40)
	refuse(t, "DryMicrons thinner", func(v float64) (float64, error) { return measure.DryMicrons(100, 0.4, v) }, -0.1, 50)
	refuse(t, "VolumeSolids mass solids", func(v float64) (float64, error) { return measure.VolumeSolids(v, 1.05) }, 0, 50)
	// 10 % solids at 1.35 g/mL would be more water than there is room for.
	refuse(t, "VolumeSolids density", func(v float64) (float64, error) { return measure.VolumeSolids(0.1, v) }, 1.35, 0)
}

func TestFilmFinite(t *testing.T) {
	r := fixed()
	for range 5000 {
		wet := logBetween(r, 100, 20000)
		dry, err := measure.DryMicrons(wet, logBetween(r, 0.001, 1), between(r, 0, 20))
		finite(t, "DryMicrons", dry, err)
		if dry <= 0 || dry > wet {
			t.Fatalf("%g µm dried to %g", wet, dry)
		}
	}
}
