package trade

import (
	"slices"

	"backleaf/record"
)

// binderRow is what is typical of a binder.
type binderRow struct {
	water record.Answer // its product is thinned with water; unknown: both kinds are sold
	fuses record.Answer // its film fuses from particles, and so needs a least temperature
	oil   bool          // dries by taking up oxygen: oily rags catch fire
	fails Effects       // what agents do to an aged film
	from  string        // works for fails
}

// Effects are what agents do to an aged film, in the words of the tables:
// "none", "little", "swells", "dissolves", "dissolves-warm", "blanches",
// "softens", "melts", "with-damp", "leached", "aromatic", "aromatic-swells",
// "attacked", "alkali-soluble". A test comes first.
type Effects struct{ Water, Alcohol, Hydrocarbon, Heat, Alkali string }

const (
	yes   = record.Yes
	no    = record.No
	maybe = record.Answer(record.Unknown)
)

// binders: water, fusing and oil are common practice; effects are from
// memory of the work named.
var binders = map[record.Binder]binderRow{
	record.Acrylic:      {yes, yes, false, Effects{"swells", "swells", "aromatic-swells", "softens", "swells"}, "Ormsby-2009"},
	record.PVA:          {yes, yes, false, Effects{"swells", "dissolves", "aromatic-swells", "softens", "attacked"}, "Learner-2004"},
	record.AnimalGlue:   {yes, no, false, Effects{"dissolves-warm", "none", "none", "with-damp", "attacked"}, "Mills-1994"},
	"cellulose-ether":   {yes, no, false, Effects{"dissolves", "swells", "none", "little", "little"}, "Horie-2010"},
	"starch":            {yes, no, false, Effects{"swells", "none", "none", "little", "attacked"}, "Horie-2010"},
	record.Casein:       {yes, no, false, Effects{"swells", "none", "none", "little", "alkali-soluble"}, "Mills-1994"},
	record.Egg:          {yes, no, false, Effects{"little", "little", "little", "little", "attacked"}, "Mills-1994"},
	"gum":               {yes, no, false, Effects{"dissolves", "none", "none", "little", "dissolves"}, "Mills-1994"},
	record.DryingOil:    {no, no, true, Effects{"little", "leached", "leached", "softens", "attacked"}, "Mills-1994"},
	record.Alkyd:        {maybe, no, true, Effects{"little", "swells", "aromatic-swells", "softens", "attacked"}, "Learner-2004"},
	record.Shellac:      {no, no, false, Effects{"blanches", "dissolves", "none", "softens", "dissolves"}, "Mills-1994"},
	record.Wax:          {no, no, false, Effects{"none", "little", "dissolves", "melts", "attacked"}, "Mills-1994"},
	"natural-resin":     {no, no, false, Effects{"blanches", "dissolves", "aromatic", "softens", "attacked"}, "Mills-1994"},
	"acrylic-resin":     {no, no, false, Effects{"none", "swells", "aromatic", "softens", "little"}, "Horie-2010"},
	"hydrocarbon-resin": {no, no, false, Effects{"none", "none", "dissolves", "softens", "none"}, "Horie-2010"},
	"ketone-resin":      {no, no, false, Effects{"little", "dissolves", "aromatic", "softens", "little"}, "Horie-2010"},
	"polyurethane":      {maybe, maybe, false, Effects{"none", "little", "little", "little", "little"}, "Horie-2010"},
	"epoxy":             {maybe, no, false, Effects{"none", "little", "little", "little", "none"}, "Horie-2010"},
}

// mediumBinders are the binders of paint media as painters say them. Water-
// mixable oil is oil.
var mediumBinders = map[record.PaintMedium]record.Binder{
	"oil": record.DryingOil, "water-mixable-oil": record.DryingOil, "alkyd": record.Alkyd,
	"acrylic": record.Acrylic, "vinyl": record.PVA, "egg-tempera": record.Egg,
	"casein": record.Casein, "gouache": "gum", "watercolour": "gum", "encaustic": record.Wax,
}

// resinBinders are the binders of the resin classes of varnish. Urea-aldehyde
// resins are judged as ketone resins (common practice).
var resinBinders = map[record.Resin]record.Binder{
	"dammar": "natural-resin", "mastic": "natural-resin", "copal": "natural-resin",
	"shellac": record.Shellac, "acrylic-resin": "acrylic-resin", "acrylic-dispersion": record.Acrylic,
	"hydrocarbon": "hydrocarbon-resin", "ketone": "ketone-resin", "urea-aldehyde": "ketone-resin",
	"alkyd": record.Alkyd, "wax": record.Wax, "polyurethane": "polyurethane",
}

// BinderOfMedium returns the binder of a paint medium; empty where it is not
// known.
func BinderOfMedium(m record.PaintMedium) record.Binder { return mediumBinders[m] }

// EffectsOn returns what agents do to an aged film of a binder, and from memory
// of which work; false where no table speaks of it.
func EffectsOn(b record.Binder) (Effects, Standing, bool) {
	row, ok := binders[b]
	return row.fails, standing(row.from + " memory"), ok
}

// Fuses answers whether a binder's film fuses from particles, so that below
// some temperature it does not form.
func Fuses(b record.Binder) record.Answer {
	return typical(b, func(r binderRow) record.Answer { return r.fuses })
}

// IsOil answers whether a binder is a drying oil or an alkyd.
func IsOil(b record.Binder) record.Answer {
	return typical(b, func(r binderRow) record.Answer { return Is(r.oil) })
}

func typical(b record.Binder, q func(binderRow) record.Answer) record.Answer {
	if row, ok := binders[b]; ok {
		return q(row)
	}
	return maybe
}

// Binders lists the binders of a layer, and whether those are all. A paint is
// known by its medium and a varnish by its resin too: what is in the mix comes
// on top, and a single part that does not say what holds it is the paint or
// the varnish itself. A cloth has none.
func (m Made) Binders() (bs []record.Binder, all bool) {
	if m.Layer.Cloth != nil {
		return nil, true
	}
	said := m.saidBinder()
	if said != "" {
		bs = append(bs, said)
	}
	silent := 0
	for _, x := range m.Materials {
		if b := binderOf(x); b == "" {
			silent++
		} else if !slices.Contains(bs, b) {
			bs = append(bs, b)
		}
	}
	if said != "" {
		return bs, silent == 0 || m.parts() <= 1
	}
	return bs, m.All && silent == 0 && len(bs) > 0
}

// binderOf is the binder of a material as recorded, or else of its resin.
func binderOf(m *record.Material) record.Binder {
	if m.Binder != "" && m.Binder != record.Unknown {
		return m.Binder
	}
	return resinBinders[m.ResinIs]
}

// parts counts the parts of the mix.
func (m Made) parts() int {
	if m.Layer.Coating == nil {
		return 0
	}
	return len(m.Layer.Coating.Mix)
}

// saidBinder is the binder that the layer itself names.
func (m Made) saidBinder() record.Binder {
	switch {
	case m.Layer.Paint != nil:
		return mediumBinders[m.Layer.Paint.Medium]
	case m.Layer.Varnish != nil:
		return resinBinders[m.Layer.Varnish.ResinIs]
	}
	return ""
}

// Contains answers whether a layer contains one of some binders.
func (m Made) Contains(want ...record.Binder) record.Answer {
	bs, all := m.Binders()
	switch {
	case slices.ContainsFunc(bs, func(b record.Binder) bool { return slices.Contains(want, b) }):
		return yes
	case all:
		return no
	}
	return maybe
}

// IsOil answers whether a layer holds a drying oil or an alkyd.
func (m Made) IsOil() record.Answer { return m.Contains(record.DryingOil, record.Alkyd) }
