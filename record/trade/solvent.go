package trade

import "backleaf/record"

// IsWater answers whether a thinner is water.
func IsWater(s record.Solvent) record.Answer {
	switch s {
	case "", "other", record.Unknown:
		return maybe
	}
	return Is(s == "water")
}
