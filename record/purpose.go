package record

import "slices"

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

// sealing lists what a coat must be for to close a face. A ground is no
// sealer.
var sealing = []Purpose{Sizing, Sealer, Adhesive, StainBlock, Isolation, Barrier}

// Seals reports that a layer is a coat that closes the face it lies on. A coat
// without a purpose does if its materials are for nothing else.
func (w *Workshop) Seals(l Layer) bool {
	if l.Coating == nil || l.Cloth != nil || l.Paint != nil || l.Varnish != nil {
		return false
	}
	if l.Purpose != "" {
		return slices.Contains(sealing, l.Purpose)
	}
	for _, part := range l.Coating.Mix {
		m, _ := w.Material(part.Material, part.As)
		if len(m.Uses) == 0 || slices.ContainsFunc(m.Uses, func(u Use) bool { return !slices.Contains(sealing, Purpose(u)) }) {
			return false
		}
	}
	return len(l.Coating.Mix) > 0
}

// FaceState is what is known of a face today.
type FaceState string

// States of a face.
const (
	FaceSealed  FaceState = "sealed"       // a coat closes it
	FaceCoated  FaceState = "coated"       // it carries something that closes nothing
	FaceBare    FaceState = "left-bare"    // the maker said so
	FaceNothing FaceState = "nothing-laid" // recorded as made, and nothing was laid
	FaceUnknown FaceState = "not-known"
)

// State returns what is known of a face. Absence says that nothing was laid
// only on a panel that was recorded as it was made.
func (w *Workshop) State(p *Panel, f Face) FaceState {
	state := FaceState("")
	for _, l := range p.Layers() {
		switch {
		case !l.Stands() || l.Face != f && l.Face != Unknown:
		case l.Face == Unknown:
			if state == "" {
				state = FaceUnknown
			}
		case w.Seals(l):
			return FaceSealed
		default:
			state = FaceCoated
		}
	}
	switch {
	case state != "":
		return state
	case p.leftBare(f):
		return FaceBare
	case p.AsMade():
		return FaceNothing
	}
	return FaceUnknown
}
