package measure

import "fmt"

// Responsivity is how readily a thing fades, in the four classes of CIE 157,
// which rest on the ISO blue wools.
type Responsivity string

// The four classes.
const (
	HighResponsivity   Responsivity = "high"
	MediumResponsivity Responsivity = "medium"
	LowResponsivity    Responsivity = "low"
	NoResponsivity     Responsivity = "none"
)

// LightLimit is what a class may have. Unlimited is set for things that light
// does not change; the two figures are then zero.
type LightLimit struct {
	Lux             float64
	LuxHoursPerYear float64
	Unlimited       bool
	Source          Source
}

// LightLimitOf is the limit of a class, from memory of CIE 157:2004. Guides
// for oil paintings say 150 or 200 lux: quote the range. [ErrNoFigure] for any
// other class.
func LightLimitOf(class Responsivity) (LightLimit, error) {
	source := Source{Memory, "CIE 157:2004"}
	switch class {
	case HighResponsivity:
		return LightLimit{50, 15_000, false, source}, nil
	case MediumResponsivity:
		return LightLimit{50, 150_000, false, source}, nil
	case LowResponsivity:
		return LightLimit{200, 600_000, false, source}, nil
	case NoResponsivity:
		return LightLimit{0, 0, true, source}, nil
	}
	return LightLimit{}, fmt.Errorf("light limit of class %q: %w", string(class), ErrNoFigure)
}

// LuxHours is the exposure, the product that fading goes by: 50 lux for ten
// hours are 250 lux for two. 0 to 200000 lux, 0 to 1e7 hours. Source:
// reciprocity, as in articles on display and conservation.
func LuxHours(lux, hours float64) (float64, error) {
	if err := first(within("illuminance", lux, 0, 200_000, "lux"), within("time", hours, 0, 1e7, "h")); err != nil {
		return 0, err
	}
	return lux * hours, nil
}
