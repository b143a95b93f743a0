package trade

import "backleaf/record"

// Made is a layer together with what it was made of, as that was described
// then. All says that every part of the mix is described.
type Made struct {
	Layer     record.Layer
	Materials []*record.Material
	All       bool
}

// Of gathers what a layer was made of: the parts of its mix, of a cloth the
// bolt.
func Of(w *record.Workshop, l record.Layer) Made {
	m := Made{Layer: l, All: true}
	take := func(k record.Key, as []int64) {
		if x, ok := w.MaterialMeant(k, as); ok {
			m.Materials = append(m.Materials, x)
		} else {
			m.All = false
		}
	}
	if l.Cloth != nil {
		take(l.Cloth.Cloth, l.Cloth.ClothAs)
		return m
	}
	if l.Coating == nil || len(l.Coating.Mix) == 0 {
		m.All = false
		return m
	}
	for _, p := range l.Coating.Mix {
		take(p.Material, p.As)
	}
	return m
}

// Layers gathers the layers that still stand on a panel, at least in part or
// perhaps, in order of application.
func Layers(w *record.Workshop, p *record.Panel) []Made {
	var out []Made
	for _, l := range p.Layers() {
		if l.Stands() {
			out = append(out, Of(w, l))
		}
	}
	return out
}

// gone answers whether a layer was taken off again, all of it.
func (m Made) gone() record.Answer {
	out := no
	for _, x := range m.Layer.Losses {
		switch x.Extent {
		case "whole":
			return yes
		case "reduced", "in-part":
		default:
			out = maybe
		}
	}
	return out
}

// Pigments lists the colourants recorded for a layer and for its materials.
func (m Made) Pigments() []record.Pigment {
	var ps []record.Pigment
	if m.Layer.Paint != nil {
		ps = append(ps, m.Layer.Paint.Pigments...)
	}
	for _, x := range m.Materials {
		ps = append(ps, x.Pigments...)
	}
	return ps
}

// Told reports that the colourants of a layer are recorded so that nothing can
// hide among them: each by its Colour Index name, for a paint in its own list,
// for a coat in those of all its materials.
func (m Made) Told() bool {
	ps := m.Pigments()
	for _, p := range ps {
		if !Told(p) {
			return false
		}
	}
	if m.Layer.Paint != nil && len(m.Layer.Paint.Pigments) > 0 {
		return true
	}
	for _, x := range m.Materials {
		if len(x.Pigments) == 0 {
			return false
		}
	}
	return m.All && len(m.Materials) > 0
}
