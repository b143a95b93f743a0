package trade

import "backleaf/record"

// IsWooden answers whether a board is of wood or of wood fibres, so that its
// dust is wood dust and damp moves it.
func IsWooden(k record.BoardKind) record.Answer {
	if w, ok := wooden[k]; ok {
		return Is(w)
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
