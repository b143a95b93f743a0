package record

import "slices"

// purposes tell what a coat for a purpose does (common practice). A ground
// closes no face: it drinks, and is meant to. A barrier against damp is any
// material laid for it.
var purposes = map[Purpose]struct {
	use    Use // of the material meant for it; empty: none of its own
	closes bool
}{
	Sizing:     {"size", true},
	Sealer:     {"sealer", true},
	Adhesive:   {"adhesive", true},
	StainBlock: {"stain-block", true},
	Ground:     {"ground", false},
	Isolation:  {"isolation", true},
	Barrier:    {"", true},
}

// Closes answers whether a coat for a purpose closes the face it lies on.
func (p Purpose) Closes() Answer {
	row, ok := purposes[p]
	switch {
	case !ok:
		return Unknown
	case row.closes:
		return Yes
	}
	return No
}

// Serves answers whether a material is meant for a purpose; unknown where no
// use is recorded or the purpose has no material of its own.
func (m Material) Serves(p Purpose) Answer {
	row := purposes[p]
	switch {
	case row.use == "" || len(m.Uses) == 0:
		return Unknown
	case slices.Contains(m.Uses, row.use):
		return Yes
	}
	return No
}

// PurposeOf is what the main material of a mix is for, when it is for one
// thing only; else empty: nobody said.
func (w *Workshop) PurposeOf(mix []Part) Purpose {
	var most Part
	for _, p := range mix {
		if p.Parts > most.Parts {
			most = p
		}
	}
	m, _ := w.Material(most.Material, most.As)
	var found Purpose
	for _, u := range m.Uses {
		if slices.Contains(Words("Purpose"), string(u)) {
			if found != "" {
				return ""
			}
			found = Purpose(u)
		}
	}
	return found
}

// Seals answers whether a layer, by the materials it was made of, is a coat
// that closes the face it lies on; all says that those are all of them. A coat
// without a purpose closes it if they are for nothing else, and does not if
// they are for nothing of the kind. One that was taken off in part may no more.
func (l Layer) Seals(ms []*Material, all bool) Answer {
	if l.Coating == nil || l.Cloth != nil || l.Paint != nil || l.Varnish != nil {
		return No
	}
	a := l.Purpose.Closes()
	if l.Purpose == "" && all {
		a = closing(ms)
	}
	if a == Yes && len(l.Losses) > 0 {
		return Unknown
	}
	return a
}

// closing answers whether coats of some materials close a face.
func closing(ms []*Material) Answer {
	var closes, not bool
	for _, m := range ms {
		for _, u := range m.Uses {
			if a := Purpose(u).Closes(); a == Yes {
				closes = true
			} else {
				not = true
			}
		}
		if len(m.Uses) == 0 {
			return Unknown
		}
	}
	switch {
	case closes == not: // for both, or of nothing
		return Unknown
	case closes:
		return Yes
	}
	return No
}

// Seals answers for a layer what [Layer.Seals] does, by its materials as they
// were then.
func (w *Workshop) Seals(l Layer) Answer {
	if l.Coating == nil {
		return No
	}
	var ms []*Material
	for _, part := range l.Coating.Mix {
		m, ok := w.MaterialMeant(part.Material, part.As)
		if !ok {
			return l.Seals(nil, false)
		}
		ms = append(ms, m)
	}
	return l.Seals(ms, true)
}

// FaceState is what is known of a face today.
type FaceState string

// States of a face.
const (
	FaceSealed  FaceState = "sealed"       // a coat closes it
	FaceCoated  FaceState = "coated"       // recorded as made, and it carries nothing that closes it
	FaceBare    FaceState = "left-bare"    // the maker said so
	FaceNothing FaceState = "nothing-laid" // recorded as made, and nothing was laid
	FaceUnknown FaceState = "not-known"
)

// State returns what is known of a face. Absence says that nothing was laid
// only on a panel that was recorded as it was made.
func (w *Workshop) State(p *Panel, f Face) FaceState {
	carries, open := false, !p.AsMade()
	for _, l := range p.Layers() {
		if !l.Stands() || l.Face != f && l.Face != Unknown {
			continue
		}
		seals := w.Seals(l)
		switch {
		case l.Face == Unknown, seals == Unknown:
			open = true
		case seals == Yes:
			return FaceSealed
		default:
			carries = true
		}
	}
	switch {
	case p.leftBare(f) && !carries:
		return FaceBare
	case open:
		return FaceUnknown
	case carries:
		return FaceCoated
	}
	return FaceNothing
}
