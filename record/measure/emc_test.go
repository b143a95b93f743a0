package measure_test

import (
	"fmt"
	"testing"

	"backleaf/record/measure"
)

// handbook holds cells of Wood Handbook table 4-2 (from memory of GTR-190) and
// the equation computed at the exact temperature.
var handbook = []struct {
	fahrenheit, rh, table, si float64
}{
	{30, 50, 9.5, 9.515}, {30, 90, 21.0, 21.023},
	{40, 30, 6.3, 6.326}, {40, 65, 12.3, 12.349},
	{50, 40, 7.9, 7.874}, {50, 80, 16.4, 16.382},
	{60, 25, 5.4, 5.433}, {60, 50, 9.4, 9.373}, {60, 70, 13.3, 13.279},
	{70, 5, 1.3, 1.298}, {70, 20, 4.5, 4.492}, {70, 30, 6.2, 6.170},
	{70, 40, 7.7, 7.699}, {70, 45, 8.5, 8.459}, {70, 50, 9.2, 9.242},
	{70, 55, 10.1, 10.069}, {70, 60, 11.0, 10.965}, {70, 65, 12.0, 11.958},
	{70, 75, 14.4, 14.406}, {70, 80, 16.0, 15.989}, {70, 90, 20.5, 20.479},
	{70, 95, 23.9, 23.891}, {80, 35, 6.8, 6.822}, {80, 65, 11.7, 11.747},
	{90, 50, 8.9, 8.890}, {100, 60, 10.3, 10.300},
}

func TestEMCHandbook(t *testing.T) {
	for _, c := range handbook {
		name := fmt.Sprintf("%g °F, %g %% RH", c.fahrenheit, c.rh)
		si, errSI := measure.EMC((c.fahrenheit-32)/1.8, c.rh)
		run(t,
			check{got: si, err: errSI}.is(name, c.table, 0.07, "from memory of Wood Handbook table 4-2"),
			check{got: si, err: errSI}.is(name, c.si, 0.0006, "computed from Wood Handbook eq. 4-5"),
		)
	}
	run(t,
		val(measure.EMC(60, 55)).is("140 °F, 55 %", 8.4, 0.05, "encyclopedia article on equilibrium moisture content"),
	)
}

func TestEMCWholeDegrees(t *testing.T) {
	humidities := []float64{30, 40, 45, 50, 55, 60, 65, 70}
	for celsius, want := range map[float64][]float64{
		15: {6.259, 7.812, 8.586, 9.384, 10.227, 11.139, 12.149, 13.296},
		18: {6.219, 7.761, 8.529, 9.320, 10.155, 11.059, 12.061, 13.200},
		20: {6.188, 7.722, 8.485, 9.271, 10.101, 11.000, 11.996, 13.129},
		23: {6.136, 7.657, 8.412, 9.190, 10.012, 10.902, 11.890, 13.014},
		25: {6.096, 7.608, 8.359, 9.132, 9.948, 10.832, 11.814, 12.931},
	} {
		for i, rh := range humidities {
			run(t, val(measure.EMC(celsius, rh)).is(fmt.Sprintf("%g °C, %g %% RH", celsius, rh),
				want[i], 0.001, "computed from Wood Handbook eq. 4-5, SI form"))
		}
	}
}

func TestEMCRises(t *testing.T) {
	for celsius := -2.0; celsius <= 60; celsius++ {
		last := -1.0
		for rh := 0.0; rh <= 95; rh++ {
			m, err := measure.EMC(celsius, rh)
			if finite(t, "EMC", m, err); m <= last {
				t.Fatalf("%g °C, %g %%: %g after %g", celsius, rh, m, last)
			}
			last = m
		}
	}
}

// Fibreboards follow the equation in dry air and fall below it in damp air.
// Source: Facts about Particleboard and MDF, p. 37.
func TestFibreboardsBelowEquation(t *testing.T) {
	for _, c := range []struct {
		rh, low, high float64
		above         bool
	}{
		{30, 6, 8, false}, {45, 7, 9, false}, {65, 9, 11, true}, {75, 10, 12, true}, {90, 15, 16, true},
	} {
		m, err := measure.EMC(21.1, c.rh)
		finite(t, "EMC", m, err)
		if above := m > c.high; above != c.above || m < c.low {
			t.Errorf("%g %%: equation %.2f against %g to %g", c.rh, m, c.low, c.high)
		}
	}
}

func TestEMCRefusals(t *testing.T) {
	refuse(t, "EMC RH", func(v float64) (float64, error) { return measure.EMC(20, v) }, -1, 95.1, 100)
	refuse(t, "EMC °C", func(v float64) (float64, error) { return measure.EMC(v, 50) }, -3, 61)
}
