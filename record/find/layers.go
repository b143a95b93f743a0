package find

import (
	"slices"
	"strings"

	"backleaf/record"
)

// Words that a test takes instead of a name.
const (
	None    = "none"         // nothing of the kind is recorded
	Unknown = record.Unknown // it is there, but what it is nobody recorded
)

// Binder fits panels with a coat in whose mix is a binder; [Unknown]: with a
// coat of which a binder is not known. A paint layer that names no material
// says its medium instead and is left out.
func Binder(b record.Binder) Test {
	return func(w *record.Workshop, p *record.Panel) bool {
		for _, l := range p.Layers() {
			if l.Coating == nil {
				continue
			}
			if len(l.Coating.Mix) == 0 && l.Paint == nil && b == Unknown {
				return true
			}
			for _, part := range l.Coating.Mix {
				m, _ := w.Material(part.Material, part.As)
				if m.Binder == b || b == Unknown && m.Binder == "" {
					return true
				}
			}
		}
		return false
	}
}

// Board fits panels by their board: a kind ("plywood"), a material or a lot;
// [Unknown]: the kind is not known.
func Board(name string) Test {
	return func(w *record.Workshop, p *record.Panel) bool {
		c := p.Cut()
		m, _ := w.Material(c.Board, c.BoardAs)
		kind := string(m.Board.Kind)
		if name == Unknown {
			return kind == "" || kind == Unknown
		}
		return name == kind || name == string(c.Board) || name == string(c.Lot)
	}
}

// Cloth fits panels by their cloth: a fibre ("linen"), a material or a lot;
// [None]: no cloth was laid; [Unknown]: what it is spun from is not known.
func Cloth(name string) Test {
	return func(w *record.Workshop, p *record.Panel) bool {
		laid := record.Each[record.ClothLaid](p)
		if name == None {
			return len(laid) == 0
		}
		return slices.ContainsFunc(laid, func(l record.Done[record.ClothLaid]) bool {
			m, _ := w.Material(l.Body.Cloth, l.Body.ClothAs)
			fibre := string(m.Cloth.Fibre)
			if name == Unknown {
				return fibre == "" || fibre == Unknown
			}
			return name == fibre || name == string(l.Body.Cloth) || name == string(l.Body.ClothLot)
		})
	}
}

// Unsealed fits panels of which no sealing coat on a face is recorded.
func Unsealed(f record.Face) Test {
	return func(w *record.Workshop, p *record.Panel) bool { return w.State(p, f) != record.FaceSealed }
}

// Varnish fits panels by a varnish: words of its resin class or its name, its
// binder, a material or a lot; [None]: no varnish is recorded; [Unknown]: what it is
// made of is not known.
func Varnish(what string) Test {
	what = strings.ToLower(what)
	return func(w *record.Workshop, p *record.Panel) bool {
		all := record.Each[record.Varnish](p)
		if what == None {
			return len(all) == 0
		}
		return slices.ContainsFunc(all, func(v record.Done[record.Varnish]) bool {
			resin, names := resinOf(w, v.Body)
			if what == Unknown {
				return resin == "" || resin == Unknown
			}
			return slices.Contains(names, what) || strings.Contains(strings.ToLower(resin), what) ||
				slices.ContainsFunc(names, func(n string) bool { return strings.Contains(n, " ") && strings.Contains(n, what) })
		})
	}
}

// resinOf returns the resin class of a varnish and all names it goes by.
func resinOf(w *record.Workshop, v record.Varnish) (resin string, names []string) {
	resin = v.Resin
	for _, part := range v.Mix {
		m, _ := w.Material(part.Material, part.As)
		names = append(names, string(part.Material), string(part.Lot), string(m.Binder), strings.ToLower(m.Name))
		for _, r := range []string{m.Resin, string(m.Binder)} {
			if resin == "" && r != Unknown {
				resin = r
			}
		}
	}
	return resin, names
}

// Removable fits panels with a varnish that can be taken off, cannot, or of
// which that is not known.
func Removable(a record.Answer) Test {
	return func(w *record.Workshop, p *record.Panel) bool {
		return slices.ContainsFunc(record.Each[record.Varnish](p), func(v record.Done[record.Varnish]) bool {
			said := v.Body.Removable
			for _, part := range v.Body.Mix {
				if m, _ := w.Material(part.Material, part.As); said == "" {
					said = m.Removable
				}
			}
			return said == a || a == Unknown && said == ""
		})
	}
}
