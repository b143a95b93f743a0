package measure_test

import (
	"errors"
	"testing"

	"backleaf/record/measure"
)

func TestLight(t *testing.T) {
	const source = "from memory of CIE 157:2004"
	for class, want := range map[measure.Responsivity][2]float64{
		measure.HighResponsivity: {50, 15_000}, measure.MediumResponsivity: {50, 150_000}, measure.LowResponsivity: {200, 600_000},
	} {
		got, err := measure.LightLimitOf(class)
		if err != nil || got.Lux != want[0] || got.LuxHoursPerYear != want[1] || got.Unlimited || got.Source.Basis != measure.Memory {
			t.Errorf("%s: %+v, %v; want %v (source: %s)", class, got, err, want, source)
		}
	}
	if got, err := measure.LightLimitOf(measure.NoResponsivity); err != nil || !got.Unlimited {
		t.Errorf("none: %+v, %v (source: %s)", got, err, source)
	}
	if _, err := measure.LightLimitOf("some"); !errors.Is(err, measure.ErrNoFigure) {
		t.Errorf("unknown class: %v", err)
	}

	// A year of 3000 hours at the permitted level uses up the permitted year.
	for class, lux := range map[measure.Responsivity]float64{measure.LowResponsivity: 200, measure.MediumResponsivity: 50} {
		limit, err := measure.LightLimitOf(class)
		if err != nil {
			t.Fatal(err)
		}
		run(t, val(measure.LuxHours(lux, 3000)).is(string(class)+", 3000 h", limit.LuxHoursPerYear, 0, "computed"))
	}
	a, err1 := measure.LuxHours(50, 10)
	run(t,
		val(measure.LuxHours(250, 2)).is("250 lx for 2 h is 50 lx for 10 h", a, 0, "lighting firm's note on exposure"),
		check{got: a, err: err1}.is("50 lx for 10 h", 500, 0, "lighting firm's note on exposure"),
	)
	refuse(t, "LuxHours", func(v float64) (float64, error) { return measure.LuxHours(v, 1) }, -1, 1e6)
	refuse(t, "LuxHours hours", func(v float64) (float64, error) { return measure.LuxHours(1, v) }, -1, 1e8)
}
