package typed

import (
	"strconv"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
)

// Mix reads a typed mix against the shelf: each name is a lot, or a material
// of which there is at most one lot.
func (r *Reader) Mix(field, typed string) (out []record.Part) {
	if typed == "" || r.err != nil {
		return nil
	}
	parts, err := record.ParseMix(typed)
	if err != nil {
		r.Fail(refuse.Input(field, "not-read", "%w", err))
		return nil
	}
	for _, p := range parts {
		m, l, err := r.onShelf(p.Name)
		if err != nil {
			r.Fail(err)
			return nil
		}
		out = append(out, record.Part{Parts: p.Parts, Material: m, Lot: l})
	}
	return out
}

// OnShelf reads the name of a lot, or of a material and so its only lot;
// "unknown" names no lot. Nothing typed is nothing said.
func (r *Reader) OnShelf(typed string) (material, lot record.Key) {
	if typed == "" || typed == record.Unknown || r.err != nil {
		return record.Key(typed), ""
	}
	material, lot, err := r.onShelf(record.Key(typed))
	if err != nil {
		r.Fail(err)
	}
	return material, lot
}

func (r *Reader) onShelf(k record.Key) (material, lot record.Key, err error) {
	if l, ok := r.Shop.Lot(k); ok {
		return l.Material, k, nil
	}
	if _, ok := r.Shop.MaterialNow(k); !ok {
		return "", "", refuse.Cannot("not-on-shelf", "there is neither a lot nor a material %q on the shelf", k).With(record.With("near", record.Nearest(string(k), keysOf(r.Shop))))
	}
	var lots []record.Key
	for _, l := range r.Shop.Lots {
		if l.Body.Material == k {
			lots = append(lots, l.Body.Key)
		}
	}
	switch len(lots) {
	case 0:
		return k, "", nil
	case 1:
		return k, lots[0], nil
	}
	return "", "", refuse.Cannot("several-lots", "there are %d lots of %s", len(lots), k).With(record.With("lots", lots))
}

var gritText = pattern.Of(`^([A-Za-z]*)\s*([0-9]{2,4})$`)

// Grit reads "P180" or "CAMI 180": the scale belongs to the grit.
func (r *Reader) Grit(field, typed string) (scale record.GritScale, grit int64) {
	if typed == "" || r.err != nil {
		return "", 0
	}
	m := gritText().FindStringSubmatch(typed)
	switch {
	case m == nil:
		e := refuse.Input(field, "not-read", "expected a scale and a number, like P180 or \"CAMI 180\"")
		e.Typed = strconv.Quote(typed)
		r.Fail(e)
		return "", 0
	case m[1] == "":
		e := refuse.Input(field, "grit-without-scale", "which scale, P or CAMI?")
		e.Typed = typed
		r.Fail(e)
		return "", 0
	}
	Word(r, field, m[1], &scale)
	grit, _ = strconv.ParseInt(m[2], 10, 64)
	return scale, grit
}

// keysOf are the names of all that is on the shelf.
func keysOf(w *record.Workshop) (out []string) {
	for _, l := range w.Lots {
		out = append(out, string(l.Body.Key))
	}
	for _, m := range w.Materials {
		out = append(out, string(m.Body.Key))
	}
	return out
}
