package trade

import "backleaf/record"

// hardwoods tells broad-leaved trees from conifers. The words say nothing of
// how hard the wood is.
var hardwoods = map[record.Species]bool{
	record.Birch: true, record.Beech: true, record.Oak: true, record.Maple: true, record.Walnut: true, record.Ash: true, record.Cherry: true,
	record.Poplar: true, record.Lime: true, record.Alder: true, record.Mahogany: true, record.Okoume: true, record.Lauan: true, record.Eucalyptus: true,
	record.Spruce: false, record.Pine: false, record.Fir: false, record.Larch: false, record.Cedar: false,
}

// IsHardwood answers whether a wood is of a broad-leaved tree, whose dust is
// listed as a carcinogen by itself (IARC, wood dust; from memory).
func IsHardwood(s record.Species) record.Answer {
	if h, ok := hardwoods[s]; ok {
		return answer(h)
	}
	return maybe
}

// IsWooden answers whether a board is of wood or of wood fibres, so that its
// dust is wood dust and damp moves it.
func IsWooden(k record.BoardKind) record.Answer {
	if w, ok := wooden[k]; ok {
		return answer(w)
	}
	return maybe
}

var wooden = map[record.BoardKind]bool{
	record.Plywood: true, record.MDF: true, record.Hardboard: true, record.TemperedHardboard: true, record.SolidWood: true, record.Particleboard: true,
	record.AluminiumComp: false,
}

// IsGlued answers whether a board is held by a resin that may give off
// formaldehyde.
func IsGlued(k record.BoardKind) record.Answer {
	if k == record.SolidWood || k == record.AluminiumComp {
		return no
	}
	return IsWooden(k)
}
