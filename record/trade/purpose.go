package trade

import (
	"slices"

	"backleaf/record"
)

// purposeRow is what a purpose of a coat means.
type purposeRow struct {
	use    record.Use // of the material that is meant for it; empty: none of its own
	closes bool       // a coat for it closes the face it lies on
}

// purposes: common practice. A ground is no sealer: it drinks and is meant to.
// A barrier against damp is any material laid for it.
var purposes = map[record.Purpose]purposeRow{
	record.Sizing:     {record.UseSize, true},
	record.Sealer:     {record.UseSealer, true},
	record.Adhesive:   {record.UseAdhesive, true},
	record.StainBlock: {record.UseStainBlock, true},
	record.Ground:     {record.UseGround, false},
	record.Isolation:  {record.UseIsolation, true},
	record.Barrier:    {"", true},
}

// Closes answers whether a coat for a purpose closes the face it lies on.
func Closes(p record.Purpose) record.Answer {
	if row, ok := purposes[p]; ok {
		return answer(row.closes)
	}
	return maybe
}

// PurposesOf lists the purposes of coats that a material is for, in the order
// in which its uses are recorded.
func PurposesOf(m record.Material) []record.Purpose {
	var out []record.Purpose
	for _, u := range m.Uses {
		for p, row := range purposes {
			if row.use == u {
				out = append(out, p)
			}
		}
	}
	return out
}

// Serves answers whether a material is meant for a purpose; unknown where no
// use is recorded or the purpose has no material of its own.
func Serves(m record.Material, p record.Purpose) record.Answer {
	row, ok := purposes[p]
	if !ok || row.use == "" || len(m.Uses) == 0 {
		return maybe
	}
	return answer(slices.Contains(m.Uses, row.use))
}

// Seals answers whether a layer is a coat that closes the face it lies on. A
// coat without a purpose does if its materials are for nothing else, and does
// not if they are for nothing of the kind.
func (m Made) Seals() record.Answer {
	l := m.Layer
	if l.Cloth != nil || l.Paint != nil || l.Varnish != nil || l.Coating == nil {
		return no
	}
	if a := Closes(l.Purpose); a != maybe || l.Purpose != "" && l.Purpose != record.Unknown {
		return a
	}
	if !m.All {
		return maybe
	}
	var as []record.Answer
	for _, x := range m.Materials {
		if len(x.Uses) == 0 {
			return maybe
		}
		for _, u := range x.Uses {
			as = append(as, closesUse(u))
		}
	}
	return agreed(as)
}

func closesUse(u record.Use) record.Answer {
	for _, row := range purposes {
		if row.use == u {
			return answer(row.closes)
		}
	}
	return no
}
