package trade

import "backleaf/record"

// solventRow is what is commonly known of a solvent (practice).
type solventRow struct {
	water    bool
	aromatic bool // swells acrylic paint and carries the hazards of aromatics
	oil      bool // rags with it catch fire by themselves
	burns    bool
}

var solvents = map[record.Solvent]solventRow{
	record.Water:         {water: true},
	record.WhiteSpirit:   {aromatic: true, burns: true},
	record.LowAromatic:   {burns: true},
	record.Turpentine:    {burns: true, oil: true},
	record.SpikeOil:      {burns: true, oil: true},
	record.CitrusTerpene: {burns: true, oil: true},
	record.Ethanol:       {burns: true},
	record.Isopropanol:   {burns: true},
	record.Acetone:       {burns: true},
	record.Xylene:        {aromatic: true, burns: true},
	record.Toluene:       {aromatic: true, burns: true},
	record.EthylAcetate:  {burns: true},
	record.GlycolEther:   {burns: true},
	record.LinseedOil:    {burns: true, oil: true},
}

// IsWater answers whether a thinner is water.
func IsWater(s record.Solvent) record.Answer {
	if row, ok := solvents[s]; ok {
		return answer(row.water)
	}
	return maybe
}

// IsFlammable answers whether a solvent burns.
func IsFlammable(s record.Solvent) record.Answer {
	if row, ok := solvents[s]; ok {
		return answer(row.burns)
	}
	return maybe
}

// SelfHeats answers whether rags with it may catch fire by themselves, as
// drying oils and, when old, terpenes do.
func SelfHeats(s record.Solvent) record.Answer {
	if row, ok := solvents[s]; ok {
		return answer(row.oil)
	}
	return maybe
}

// HasAromatics answers whether a solvent holds aromatics by what it is.
func HasAromatics(s record.Solvent) record.Answer {
	if row, ok := solvents[s]; ok {
		return answer(row.aromatic)
	}
	return maybe
}
