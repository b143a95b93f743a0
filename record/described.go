package record

import (
	"reflect"
	"slices"
)

// Material returns a material as an act meant it: as the entries named by
// [Part.As] or its like describe it. Where they are several, only what all of
// them share is told. Without any, all that is known of the key is meant.
func (w *Workshop) Material(k Key, as []int64) (Material, bool) {
	if as == nil {
		as = w.versions["material"][k]
	}
	return shared[Material](w, as)
}

// MaterialMeant is [Workshop.Material] for who reads it and changes nothing.
func (w *Workshop) MaterialMeant(k Key, as []int64) (*Material, bool) {
	if len(as) != 1 {
		m, ok := w.Material(k, as)
		return &m, ok
	}
	m, ok := w.Once(meant(as[0]), func() any {
		if m, ok := w.Material(k, as); ok {
			return &m
		}
		return nil
	}).(*Material)
	return m, ok
}

// meant is the one entry that describes a material.
type meant int64

// Versions returns the entries that describe a thing, one after the other, as
// their corrections leave them.
func (w *Workshop) Versions(kind Kind, k Key) (out []Event) {
	for _, seq := range w.versions[kind][k] {
		out = append(out, w.described[seq])
	}
	return out
}

// MaterialNow returns a material as it is described now, for the shelf.
func (w *Workshop) MaterialNow(k Key) (Material, bool) { return now[Material](w, "material", k) }

// Lot returns a lot by its key.
func (w *Workshop) Lot(k Key) (Lot, bool) { return now[Lot](w, "lot", k) }

// Recipe returns a recipe as it is described now.
func (w *Workshop) Recipe(k Key) (Recipe, bool) { return now[Recipe](w, "recipe", k) }

func now[B Body](w *Workshop, kind Kind, k Key) (B, bool) {
	vs := w.versions[kind][k]
	return shared[B](w, vs[max(0, len(vs)-1):])
}

// StudioThen returns the studio as it was when an event happened.
func (w *Workshop) StudioThen(e Event) Studio {
	s, _ := shared[Studio](w, e.StudioAs)
	return s
}

// Hands returns who did what an event tells, as they were then: the makers it
// names, or else the maker whom the studio's entry names.
func (w *Workshop) Hands(e Event) []Maker {
	var out []Maker
	for _, h := range e.Makers {
		if m, ok := shared[Maker](w, h.As); ok {
			out = append(out, m)
		} else {
			out = append(out, Maker{Key: h.Maker})
		}
	}
	if s := w.StudioThen(e); out == nil {
		out = append(out, Maker{Name: s.Maker, Voice: s.Voice, Place: s.Place})
	}
	return out
}

// MadeBy returns who made a panel, each once, in the order in which they came
// to it.
func (w *Workshop) MadeBy(p *Panel) []Maker {
	return w.doneBy(p, func(k Kind) bool { return k.Traits().Bench && k != "paint" && k != "varnish" })
}

// PaintedBy returns who painted on a panel; none if no paint was recorded.
func (w *Workshop) PaintedBy(p *Panel) []Maker {
	return w.doneBy(p.sinceUsedAgain(), func(k Kind) bool { return k == "paint" })
}

func (w *Workshop) doneBy(p *Panel, fits func(Kind) bool) []Maker {
	var out []Maker
	for _, e := range p.Events {
		if !fits(e.Body.Kind()) {
			continue
		}
		for _, m := range w.Hands(e) {
			if !slices.ContainsFunc(out, func(o Maker) bool { return o.Name == m.Name && o.Key == m.Key }) {
				out = append(out, m)
			}
		}
	}
	return out
}

// shared returns what several descriptions of one thing have in common.
func shared[B Body](w *Workshop, seqs []int64) (B, bool) {
	if len(seqs) == 1 {
		b, ok := w.described[seqs[0]].Body.(B)
		return b, ok
	}
	return several[B](w, seqs)
}

func several[B Body](w *Workshop, seqs []int64) (B, bool) {
	var out B
	found := false
	for _, seq := range seqs {
		b, ok := w.described[seq].Body.(B)
		switch {
		case !ok:
		case !found:
			out, found = b, true
		default:
			common(reflect.ValueOf(&out).Elem(), reflect.ValueOf(b))
		}
	}
	return out, found
}

// common clears what differs. An amount or a date is one thing; an object is
// looked into.
func common(into, other reflect.Value) {
	for i := range into.NumField() {
		a, b := into.Field(i), other.Field(i)
		switch {
		case reflect.DeepEqual(a.Interface(), b.Interface()):
		case a.Kind() == reflect.Struct && !a.Type().Implements(textMarshaler):
			common(a, b)
		default:
			a.SetZero()
		}
	}
}

// Panel returns a panel by its number, or nil.
func (w *Workshop) Panel(n Number) *Panel { return w.panels[n] }

// Batch returns the panels of a batch, in order.
func (w *Workshop) Batch(k Key) []*Panel {
	var ps []*Panel
	for _, p := range w.Panels {
		if p.Batch == k {
			ps = append(ps, p)
		}
	}
	return ps
}

// Standing returns an entry that describes the studio, a maker or a thing on
// the shelf, as its corrections leave it.
func (w *Workshop) Standing(seq int64) (Event, bool) { e, ok := w.described[seq]; return e, ok }

// Used is a material as it was used on a panel.
type Used struct {
	Material Key
	As       []int64 // see [Part.As]
	Lots     []Key   // that are known
}

// Used lists the materials that were used on a panel, each version once, in
// the order of use. What is not known is left out.
func (p *Panel) Used() []Used {
	var out []Used
	for _, e := range p.Events {
		for _, m := range Mentions(e.Body) {
			if m.Material == "" || m.Material == Unknown {
				continue
			}
			i := slices.IndexFunc(out, func(u Used) bool { return u.Material == m.Material && slices.Equal(u.As, m.As) })
			if i < 0 {
				i, out = len(out), append(out, Used{Material: m.Material, As: m.As})
			}
			if l := m.Lot; l != "" && l != Unknown && !slices.Contains(out[i].Lots, l) {
				out[i].Lots = append(out[i].Lots, l)
			}
		}
	}
	return out
}
