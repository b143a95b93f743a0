package measure_test

import (
	"fmt"
	"math"
	"testing"

	"backleaf/record/measure"
)

func TestAir(t *testing.T) {
	const magnus = "computed from Alduchov and Eskridge 1996"
	for celsius, hPa := range map[float64]float64{
		0: 6.1094, 5: 8.7156, 10: 12.2602, 15: 17.0198,
		20: 23.3344, 25: 31.6174, 30: 42.3665, 40: 73.7472,
	} {
		name := fmt.Sprintf("%g °C ", celsius)
		run(t,
			val(measure.SaturationHPa(celsius)).is(name+"saturation", hPa, 0.002, magnus),
			val(measure.DewPointCelsius(celsius, 100)).is(name+"dew point", celsius, 1e-9, "definition"),
			val(measure.DryingDeficitHPa(celsius, 100)).is(name+"deficit", 0, 0, "definition"),
		)
	}
	for _, c := range []struct{ celsius, rh, dew, deficit float64 }{
		{20, 50, 9.261, 11.667}, {20, 60, 12.000, 9.334}, {25, 50, 13.858, 15.809},
		{25, 60, 16.698, 12.647}, {18, 40, 4.195, 12.358}, {30, 80, 26.171, 8.473},
		{22, 35, 5.834, 17.151},
	} {
		name := fmt.Sprintf("%g °C, %g %% ", c.celsius, c.rh)
		run(t,
			val(measure.DewPointCelsius(c.celsius, c.rh)).is(name+"dew point", c.dew, 0.002, magnus),
			val(measure.DryingDeficitHPa(c.celsius, c.rh)).is(name+"deficit", c.deficit, 0.002, magnus),
		)
	}

	// 31.652 hPa at 25 °C by Goff and Gratch (page of vapour formulas): the
	// Magnus form is 0.11 % lower.
	e, err := measure.SaturationHPa(25)
	run(t, check{got: (e/31.652 - 1) * 100, err: err}.is("against Goff-Gratch, %", -0.11, 0.005, "Goff-Gratch figure on a page of water vapour formulas"))
}

func TestAirProperties(t *testing.T) {
	r := fixed()
	for range 3000 {
		celsius, rh := between(r, -40, 50), between(r, 1, 100)
		dew, err := measure.DewPointCelsius(celsius, rh)
		finite(t, "DewPointCelsius", dew, err)
		deficit, err := measure.DryingDeficitHPa(celsius, rh)
		finite(t, "DryingDeficitHPa", deficit, err)
		// Air cooled to its dew point holds what it held: the deficit is gone.
		full, err := measure.SaturationHPa(celsius)
		finite(t, "SaturationHPa", full, err)
		if dew >= -40 {
			atDew, err := measure.SaturationHPa(dew)
			finite(t, "SaturationHPa at the dew point", atDew, err)
			if math.Abs(full-deficit-atDew) > 1e-9*full {
				t.Fatalf("%g °C, %g %%: vapour %g, at the dew point %g", celsius, rh, full-deficit, atDew)
			}
		}
	}
	refuse(t, "SaturationHPa", measure.SaturationHPa, -41, 51, 243)
	refuse(t, "DewPointCelsius", func(v float64) (float64, error) { return measure.DewPointCelsius(20, v) }, 0, -1, 101)
	refuse(t, "DryingDeficitHPa", func(v float64) (float64, error) { return measure.DryingDeficitHPa(v, 50) }, -41, 51)
}
