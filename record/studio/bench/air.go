package bench

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// Air is what a reading of temperature and humidity means for drying and for
// wood.
type Air struct {
	DewPointCelsius float64
	DeficitHPa      float64 // an index of drying, no hours
	WoodPercent     float64 // moisture at which solid wood settles
	WoodKnown       bool    // the formula covers this reading
}

// AirOf works out what a reading means; false where it is not whole, or
// outside the range of the formulas.
func AirOf(c record.Climate) (a Air, ok bool) {
	mc, known := c.Temperature.Millicelsius()
	mp, known2 := c.Humidity.Millipercent()
	if !known || !known2 {
		return a, false
	}
	celsius, rh := float64(mc)/1000, float64(mp)/1000
	var err error
	if a.DewPointCelsius, err = measure.DewPointCelsius(celsius, rh); err != nil {
		return a, false
	}
	if a.DeficitHPa, err = measure.DryingDeficitHPa(celsius, rh); err != nil {
		return a, false
	}
	a.WoodPercent, err = measure.EMC(celsius, rh)
	a.WoodKnown = err == nil
	return a, true
}
