package amount

import "backleaf/record"

// BoardMicrons returns the thickness of a panel's board in µm: as cut, or else
// as stated for the material; false where neither is known.
func BoardMicrons(w *record.Workshop, p *record.Panel) (float64, bool) {
	if um, ok := p.Size().Depth.Micrometers(); ok {
		return float64(um), um > 0
	}
	m, _ := w.Material(p.Cut().Board, p.Cut().BoardAs)
	um, ok := m.Board.Thickness.Micrometers()
	return float64(um), ok && um > 0
}

// What is what is said of a layer: cloth, paint, varnish, or what its coat is
// for.
func What(l record.Layer) record.Value {
	switch {
	case l.Cloth != nil:
		return record.With("layer", record.Code("cloth"))
	case l.Paint != nil:
		return record.With("layer", record.Code("paint"))
	case l.Varnish != nil:
		return record.With("layer", record.Code("varnish"))
	case l.Purpose == "" || l.Purpose == record.Unknown || l.Purpose == "other":
		return record.With("layer", record.Code("coat"))
	}
	return record.With("layer", l.Purpose)
}
