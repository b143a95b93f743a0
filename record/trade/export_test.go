package trade

import (
	"slices"

	"backleaf/record"
)

// Holds answers whether a pigment holds a hazard.
func Holds(p record.Pigment, h Hazard) record.Answer {
	return read(p).ask(func(r *pigmentRow) record.Answer { return r.holding(h) })
}

// Has reports that a layer may be of a stratum.
func (ss Strata) Has(s Stratum) bool { return slices.Contains(ss, s) }
