package dossier

import (
	"slices"
	"strings"

	"backleaf/record"
)

// A sensitivity says what agents do to an aged film of one class of binder, by
// the words of tell.DossierProducts.Effects. All of it is from memory of the
// publication named; the dossier says so and adds that a test comes first.
type sensitivity struct {
	water, alcohol, hydrocarbon, heat, alkali string
	source                                    string
}

const (
	modernPaints = "Learner, Analysis of Modern Paints (Getty, 2004)"
	acrylics     = "Ormsby and Learner, The effects of wet surface cleaning treatments on acrylic emulsion artists’ paints (2009)"
	materials    = "Mills and White, The Organic Chemistry of Museum Objects (1994)"
	adhesives    = "Horie, Materials for Conservation (2010)"
)

// Publications are those from memory of which the table was made.
var Publications = []string{modernPaints, acrylics, materials, adhesives}

var sensitivities = map[record.Binder]sensitivity{
	record.Acrylic:       {"swells", "swells", "aromatic-swells", "softens", "swells", acrylics},
	record.PVA:           {"swells", "dissolves", "aromatic-swells", "softens", "attacked", modernPaints},
	record.AnimalGlue:    {"dissolves-warm", "none", "none", "with-damp", "attacked", materials},
	record.Cellulose:     {"dissolves", "swells", "none", "little", "little", adhesives},
	record.Starch:        {"swells", "none", "none", "little", "attacked", adhesives},
	record.Casein:        {"swells", "none", "none", "little", "alkali-soluble", materials},
	record.Egg:           {"little", "little", "little", "little", "attacked", materials},
	record.Gum:           {"dissolves", "none", "none", "little", "dissolves", materials},
	record.DryingOil:     {"little", "leached", "leached", "softens", "attacked", materials},
	record.Alkyd:         {"little", "swells", "aromatic-swells", "softens", "attacked", modernPaints},
	record.Shellac:       {"blanches", "dissolves", "none", "softens", "dissolves", materials},
	record.Wax:           {"none", "little", "dissolves", "melts", "attacked", materials},
	record.NaturalResin:  {"blanches", "dissolves", "aromatic", "softens", "attacked", materials},
	record.AcrylicResin:  {"none", "swells", "aromatic", "softens", "little", adhesives},
	record.HydrocarbonRs: {"none", "none", "dissolves", "softens", "none", adhesives},
	record.KetoneResin:   {"little", "dissolves", "aromatic", "softens", "little", adhesives},
	record.Polyurethane:  {"none", "little", "little", "little", "little", adhesives},
	record.Epoxy:         {"none", "little", "little", "little", "none", adhesives},
}

// sensitivity tells what the binders of the panel are sensitive to.
func (b *builder) sensitivity() []Item {
	c, w := b.d.Columns, b.d.Products
	t := Table{Columns: []Column{{string(c.Binder), 1.5}, {string(c.Water), 1.3}, {string(c.Alcohol), 1.3}, {string(c.Hydrocarbon), 1.5}, {string(c.Heat), 1.1}, {string(c.Alkali), 1.2}}}
	var sources, unlisted []string
	for _, binder := range b.binders() {
		name := b.Word(binder)
		s, ok := sensitivities[binder]
		if !ok {
			unlisted = append(unlisted, name)
			continue
		}
		row := []string{name}
		for _, effect := range []string{s.water, s.alcohol, s.hydrocarbon, s.heat, s.alkali} {
			row = append(row, string(w.Effects[effect]))
		}
		t.Rows = append(t.Rows, row)
		sources = append(sources, w.EffectSource.With("binder", upper(name), "source", w.Memory.With("source", s.source)))
	}
	if t.Rows == nil && unlisted == nil {
		return []Item{Text{Text: string(w.NoBinder)}}
	}
	var out []Item
	if t.Rows != nil {
		out = append(out, t)
	}
	out = append(out, Text{Text: string(w.TestFirst), Strong: true})
	if unlisted != nil {
		out = append(out, Text{Text: w.Unlisted.With("binders", b.List(unlisted))})
	}
	if sources != nil {
		out = append(out, Text{Text: strings.Join(sources, " "), Small: true})
	}
	return out
}

// binders lists the binders of all layers, paint among them, in order of use.
func (b *builder) binders() []record.Binder {
	var out []record.Binder
	take := func(x record.Binder) {
		if known(string(x)) && !slices.Contains(out, x) {
			out = append(out, x)
		}
	}
	for _, l := range b.p.Layers() {
		if l.Coating == nil {
			continue
		}
		for _, p := range l.Coating.Mix {
			m, _ := b.w.Material(p.Material)
			take(m.Binder)
		}
		if l.Paint != nil && len(l.Coating.Mix) == 0 {
			take(paintBinders[l.Paint.Medium])
		}
	}
	return out
}

// paintBinders gives the class of binder of a paint medium.
var paintBinders = map[record.PaintMedium]record.Binder{
	record.Oil: record.DryingOil, record.WaterMixableOil: record.DryingOil, record.AlkydPaint: record.Alkyd, record.AcrylicPaint: record.Acrylic, record.EggTempera: record.Egg,
	record.CaseinPaint: record.Casein, record.Gouache: record.Gum, record.Watercolour: record.Gum, record.Encaustic: record.Wax, record.VinylPaint: record.PVA,
}
