package tell

import (
	"math"

	"backleaf/record"
	"backleaf/record/amount"
	"backleaf/record/section"
)

// Thickness returns the dry thickness of a layer in micrometres and how it is
// known: measured, or computed from what was used of it, which is an estimate
// and never printed as anything else. See [amount.Films].
func (t *Teller) Thickness(l record.Layer) (microns int64, c section.Certainty) {
	if t.films == nil {
		t.films = amount.Films(t.w, t.p)
	}
	for _, f := range t.films {
		if f.Layer.Seq != l.Seq || f.Layer.Face != l.Face || (f.Layer.Cloth == nil) != (l.Cloth == nil) {
			continue
		}
		um := int64(math.Round(f.DryMicrons))
		switch {
		case um <= 0:
			return 0, section.Unknown
		case f.Dry == amount.Measured:
			return um, section.Measured
		case f.Dry == amount.Estimated:
			return um, section.Estimated
		}
	}
	return 0, section.Unknown
}
