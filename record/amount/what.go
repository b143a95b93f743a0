package amount

import "backleaf/record"

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
