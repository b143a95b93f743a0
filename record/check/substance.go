package check

import (
	"fmt"
	"slices"
	"strings"

	"backleaf/record"
)

// isPaint, isVarnish, isCloth and isCoat tell the layers of a face apart. The
// adhesive that a cloth is laid into is a coat.
func isPaint(f Film) bool   { return f.Layer.Paint != nil }
func isVarnish(f Film) bool { return f.Layer.Varnish != nil }
func isCloth(f Film) bool   { return f.Layer.Cloth != nil }
func isCoat(f Film) bool    { return !isPaint(f) && !isVarnish(f) && !isCloth(f) }

func isGround(f Film) bool { return isCoat(f) && f.Layer.Purpose == record.Ground }

// purposeKnown reports that a coat says what it was for.
func purposeKnown(f Film) bool {
	return f.Layer.Purpose != "" && f.Layer.Purpose != record.Unknown && f.Layer.Purpose != "other"
}

func filter(films []Film, keep func(Film) bool) []Film {
	var out []Film
	for _, f := range films {
		if keep(f) {
			out = append(out, f)
		}
	}
	return out
}

// binder is what holds a layer together; empty where it cannot be told. A
// paint is known by its medium where its materials are not.
func (s *Subject) binder(f Film) record.Binder { return binderOf(s.Workshop, f.Layer) }

// mixed is the binder of a mix of several.
const mixed record.Binder = "mixed"

func binderOf(w *record.Workshop, l record.Layer) record.Binder {
	if l.Cloth != nil {
		return ""
	}
	if l.Paint != nil {
		if b := mediumBinder[l.Paint.Medium]; b != "" {
			return b
		}
	}
	var binder record.Binder
	for _, part := range l.Coating.Mix {
		m, _ := w.Material(part.Material)
		switch {
		case m.Binder == "" || m.Binder == record.Unknown:
			return ""
		case binder == "":
			binder = m.Binder
		case binder != m.Binder:
			binder = mixed
		}
	}
	return binder
}

var mediumBinder = map[record.PaintMedium]record.Binder{
	record.Oil: record.DryingOil, record.WaterMixableOil: record.DryingOil, record.AlkydPaint: record.Alkyd,
	record.AcrylicPaint: record.Acrylic, record.VinylPaint: record.PVA, record.EggTempera: record.Egg,
	record.CaseinPaint: record.Casein, record.Gouache: record.Gum, record.Watercolour: record.Gum, record.Encaustic: record.Wax,
}

// binders lists the binders of a layer's parts, and whether all are known.
func (s *Subject) binders(f Film) (bs []record.Binder, all bool) {
	if isPaint(f) {
		if b := mediumBinder[f.Layer.Paint.Medium]; b != "" {
			return []record.Binder{b}, true
		}
	}
	if isCloth(f) || len(f.Layer.Coating.Mix) == 0 {
		return nil, false
	}
	all = true
	for _, part := range f.Layer.Coating.Mix {
		m, _ := s.Workshop.Material(part.Material)
		if m.Binder == "" || m.Binder == record.Unknown {
			all = false
			continue
		}
		bs = append(bs, m.Binder)
	}
	return bs, all
}

// has answers whether a layer contains one of some binders.
func (s *Subject) has(f Film, want ...record.Binder) record.Answer {
	bs, all := s.binders(f)
	switch {
	case slices.ContainsFunc(bs, func(b record.Binder) bool { return slices.Contains(want, b) }):
		return record.Yes
	case all:
		return record.No
	}
	return record.Unknown
}

func (s *Subject) isOil(f Film) record.Answer { return s.has(f, record.DryingOil, record.Alkyd) }

func (s *Subject) isAcrylic(f Film) record.Answer { return s.has(f, record.Acrylic) }

// parts returns the materials of a layer that the shelf describes, and whether
// those are all.
func (s *Subject) parts(f Film) (ms []record.Material, all bool) {
	if isCloth(f) {
		return nil, false
	}
	all = len(f.Layer.Coating.Mix) > 0
	for _, part := range f.Layer.Coating.Mix {
		m, ok := s.Workshop.Material(part.Material)
		if !ok {
			all = false
			continue
		}
		ms = append(ms, m)
	}
	return ms, all
}

// pigments lists the colourants of a layer as recorded for it and for its
// materials.
func (s *Subject) pigments(f Film) []record.Pigment {
	var ps []record.Pigment
	if isPaint(f) {
		ps = append(ps, f.Layer.Paint.Pigments...)
	}
	ms, _ := s.parts(f)
	for _, m := range ms {
		ps = append(ps, m.Pigments...)
	}
	return ps
}

// told reports that a pigment can be recognised without doubt: by its Colour
// Index name. A name in words ("mixing white") may hide several.
func told(p record.Pigment) bool { return p.Index != "" && p.Index != record.Unknown }

// isOneOf reports that a pigment has one of the Colour Index names, or a name
// that contains one of the words.
func isOneOf(p record.Pigment, indexes, words []string) bool {
	index := strings.ToUpper(strings.ReplaceAll(p.Index, " ", ""))
	index, _, _ = strings.Cut(index, ":")
	name := strings.ToLower(p.Name)
	return slices.Contains(indexes, index) || slices.ContainsFunc(words, func(w string) bool { return strings.Contains(name, w) })
}

// name is what a finding calls a layer.
func name(f Film) string { return fmt.Sprintf("%s of entry %d", f.Layer.Name(), f.Layer.Seq) }

// gloss is the sheen of a layer: as recorded for it, or the glossiest of its
// materials; empty where one is not known.
func (s *Subject) gloss(f Film) record.Gloss {
	if isPaint(f) && f.Layer.Paint.Gloss != "" {
		return f.Layer.Paint.Gloss
	}
	ms, all := s.parts(f)
	if !all {
		return ""
	}
	order := []record.Gloss{"matt", "satin", "gloss"}
	most := record.Gloss("matt")
	for _, m := range ms {
		if m.Gloss == "" || m.Gloss == record.Unknown {
			return ""
		}
		if slices.Index(order, m.Gloss) > slices.Index(order, most) {
			most = m.Gloss
		}
	}
	return most
}

// waterborne answers for a layer whether its films form from water. Size of
// glue, gum or starch gels or dries without a lowest temperature and is left
// out.
func (s *Subject) waterborne(f Film) record.Answer {
	switch s.has(f, record.Acrylic, record.PVA) {
	case record.Yes:
		return record.Yes
	case record.No:
		return record.No
	}
	return record.Unknown
}

// allTold reports that the colourants of a layer are recorded so that nothing
// can hide among them: for a paint its own list, for a coat those of all its
// materials.
func (s *Subject) allTold(f Film) bool {
	ps := s.pigments(f)
	if len(ps) == 0 || slices.ContainsFunc(ps, func(p record.Pigment) bool { return !told(p) }) {
		return false
	}
	if isPaint(f) && len(f.Layer.Paint.Pigments) > 0 {
		return true
	}
	ms, all := s.parts(f)
	return all && !slices.ContainsFunc(ms, func(m record.Material) bool { return len(m.Pigments) == 0 })
}

// mixRemovable answers for a mix: one part that stays makes it stay.
func mixRemovable(ms []record.Material, all bool) record.Answer {
	answer := record.Yes
	for _, m := range ms {
		switch m.Removable {
		case record.No:
			return record.No
		case record.Yes:
		default:
			all = false
		}
	}
	if !all {
		return record.Unknown
	}
	return answer
}
