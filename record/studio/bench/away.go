package bench

import (
	"slices"

	"backleaf/record"
	"backleaf/record/studio"
	"backleaf/record/studio/refuse"
)

// atHand leaves the panels out that are not here from work that needs them
// here, and names them. One that was named by itself is not left out silently:
// it is refused, unless it is said that those away are meant too.
func atHand(v *studio.View, body record.Body) ([]record.Said, error) {
	if k := body.Kind(); v.AlsoAway || !k.Traits().Bench && k != "warm-air" && k != "left-bare" {
		return nil, nil
	}
	gone := v.Which(func(p *record.Panel) bool {
		_, away := p.Away()
		_, discarded := p.Discarded()
		return away || discarded
	})
	for _, n := range gone {
		if slices.Contains(v.Alone, n) {
			return nil, refuse.Cannot("panel-away", "%s is not here", n).With(record.With("panel", n))
		}
	}
	if len(gone) > 0 && len(gone) == len(v.Panels) {
		return nil, refuse.Cannot("panel-away", "none of these panels is here").With(record.With("panel", gone[0]))
	}
	v.Panels = slices.DeleteFunc(slices.Clone(v.Panels), func(n record.Number) bool { return slices.Contains(gone, n) })
	return about("left-out", gone), nil
}
