package bench

import (
	"fmt"

	"backleaf/record"
	"backleaf/record/measure"
)

// reading is what a reading of temperature and humidity means for drying and for
// wood.
type reading struct {
	DewPointCelsius float64
	DeficitHPa      float64 // an index of drying, no hours
	WoodPercent     float64 // moisture at which solid wood settles
	WoodKnown       bool    // the formula covers this reading
}

// readingOf works out what a reading means; false where it is not whole, or
// outside the range of the formulas.
func readingOf(c record.Climate) (a reading, ok bool) {
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

// airOf says what a reading means; nothing of one that is not whole.
func airOf(c record.Climate) []record.Said {
	a, ok := readingOf(c)
	if !ok {
		return nil
	}
	wood := record.Figure("")
	if a.WoodKnown {
		wood = record.Figure(fmt.Sprintf("%.1f %%", a.WoodPercent))
	}
	dew, unit := a.DewPointCelsius, "°C"
	if c.Temperature.Unit() == "°F" { // as it was typed
		dew, unit = dew*9/5+32, "°F"
	}
	return []record.Said{record.Say("air", record.With("dew", record.Figure(fmt.Sprintf("%.1f %s", dew, unit))),
		record.With("deficit", record.Figure(fmt.Sprintf("%.1f hPa", a.DeficitHPa))), record.With("wood", wood))}
}
