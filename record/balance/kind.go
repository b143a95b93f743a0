package balance

import (
	"backleaf/record"
	"backleaf/record/measure"
)

// Kind is what a layer is made of, as far as its pull goes: the binder, glue
// ground and cloth being kinds of their own. Layers of one kind pull equally
// hard, however hard that is, and so answer each other by thickness. A kind
// that [Kind.Known] denies may be any text, such as the key of a material with
// no binder on record: equal texts still answer each other.
type Kind string

// The kinds that are no binder.
const (
	GlueGround Kind = "glue-ground" // chalk or gypsum in glue
	Cloth      Kind = "cloth"
)

// KindOf is the kind of a coat from its binder and what it is for.
func KindOf(b record.Binder, p record.Purpose) Kind {
	if b == record.AnimalGlue && p == record.Ground {
		return GlueGround
	}
	return Kind(b)
}

// Strongest is the kind that a mix counts as: of its parts the one that can
// pull hardest, or a part of which nothing is known.
func Strongest(parts ...Kind) Kind {
	var most Kind
	for i, k := range parts {
		if !k.Known() {
			return k
		}
		if i == 0 || films[k].room.High > films[most].room.High {
			most = k
		}
	}
	return most
}

// Known reports whether the tables have figures for a film of the kind.
func (k Kind) Known() bool { _, ok := films[k]; return ok }

func filmOf(k Kind) film {
	if f, ok := films[k]; ok {
		return f
	}
	return anyFilm
}

// film is one line of the table of films.
type film struct {
	room, dry  Range // MPa in a film that cannot give; dry is 20 % RH and less
	modulusMPa Range // counted in the stiffness of the whole
	source     measure.Source
	vapour     Range // µ, vapour resistance factor of a whole film
	matt       Range // the same of a matt, much pigmented film, where it differs
}

// Vapour resistance factors: paint films of published resistance taken as 70
// µm in two coats (own reading), from the Danish SBi-anvisning 178 (1993) and
// a paint maker's perm ratings; linseed paint after Semjakin and others,
// Agronomy Research; shellac from an encyclopedia of biopolymers. PVA, egg, wax
// and picture varnishes are common practice, as is the group of binders that
// hinder no vapour.
var (
	open    = Range{50, 1000}
	varnish = Range{5000, 30000}
	tight   = Range{143000, 357000}
)

// films holds the stress of restrained films at 45 to 55 % RH and 18 to 23 °C,
// and in dry air (acrylics below 10 °C as well). Moduli are zero at the low end
// for all but glue, which keeps the bow high; they are from the literature on
// canvas and sizing, or from memory.
var films = map[Kind]film{
	Kind(record.Acrylic): {Range{0, 1}, Range{0.5, 3}, Range{0, 300},
		published("Whitmore and others, J. Am. Inst. Conservation 38 (1999), abstract, for none at all in artists' dispersions; the upper ends from memory of soft dispersions"),
		Range{5000, 12000}, Range{1500, 4000}},
	Kind(record.PVA): {Range{0, 3}, Range{1, 6}, Range{},
		practice("harder than acrylics, in part plasticised"), Range{1000, 5000}, Range{}},
	Kind(record.AnimalGlue): {Range{5, 20}, Range{20, 40}, Range{2000, 4000},
		published("a paper on drying gelatin coatings (IS&T, 1996), abstract, 10 to 40 MPa; less in damp air, and 20 to 30 at 10 to 15 % RH from memory of Mecklenburg"), open, Range{}},
	GlueGround: {Range{0.5, 5}, Range{2, 8}, Range{1000, 4000},
		measure.Source{Basis: measure.Computed, Text: "2 GPa (Heritage Science 2022, abstract) at a yield strain of 0.0025 (Mecklenburg and others, Getty 1998)"}, open, Range{}},
	Kind(record.Casein):     {Range{2, 15}, Range{5, 20}, Range{}, practice("by kinship with glue"), open, Range{}},
	Kind("starch"):          {Range{2, 15}, Range{5, 20}, Range{}, practice("by kinship with glue"), open, Range{}},
	Kind("gum"):             {Range{2, 15}, Range{5, 20}, Range{}, practice("by kinship with glue"), open, Range{}},
	Kind("cellulose-ether"): {Range{1, 10}, Range{3, 15}, Range{}, practice("by kinship with glue, weaker"), open, Range{}},
	Kind(record.Egg): {Range{0.1, 4}, Range{0.5, 6}, Range{},
		measure.Source{Basis: measure.Computed, Text: "0.03 to 0.97 GPa (preprint on egg tempera, 2025, abstract) and 0.0001 per 1 % RH (Heritage Science 2024, abstract) over 30 % RH"},
		Range{1000, 10000}, Range{}},
	Kind(record.DryingOil): {Range{0, 4.3}, Range{0.3, 6}, Range{0, 1000},
		measure.Source{Basis: measure.Computed, Text: "the elastic figure: 0.2 to 0.3 % shrinkage (Hough and Michalski 2023) with 0.1 to 1 GPa (from memory of Mecklenburg)"},
		Range{8000, 50000}, Range{}},
	Kind(record.Alkyd): {Range{0.3, 3}, Range{1, 5}, Range{0, 1000},
		practice("much stiffer than acrylic at 50 % RH (Erlebacher and others 1992, abstract)"), Range{43000, 88000}, Range{2500, 5000}},
	Kind(record.Shellac): {Range{1, 6}, Range{1, 8}, Range{0, 2000},
		practice("glassy film from solution; upper end as for marine coatings (Polymer Eng. Sci. 39, 1999, abstract)"), Range{17000, 24000}, Range{}},
	Kind(record.Wax):          {Range{0, 0.2}, Range{0, 0.2}, Range{}, practice("soft"), Range{100000, 400000}, Range{}},
	Kind("natural-resin"):     {Range{0.5, 5}, Range{0.5, 6}, Range{}, practice("glassy film from solution"), varnish, Range{}},
	Kind("acrylic-resin"):     {Range{0.5, 5}, Range{0.5, 6}, Range{}, practice("glassy film from solution"), varnish, Range{}},
	Kind("hydrocarbon-resin"): {Range{0.5, 5}, Range{0.5, 6}, Range{}, practice("glassy film from solution"), varnish, Range{}},
	Kind("ketone-resin"):      {Range{0.5, 5}, Range{0.5, 6}, Range{}, practice("glassy film from solution"), varnish, Range{}},
	Kind("polyurethane"): {Range{1, 6}, Range{1, 8}, Range{},
		published("residual stresses in marine coatings, Polymer Eng. Sci. 39 (1999), abstract, for the upper end; the rest is common practice"), tight, Range{}},
	Kind("epoxy"): {Range{0.5, 6}, Range{0.5, 6}, Range{},
		published("residual stresses in marine coatings, Polymer Eng. Sci. 39 (1999), abstract, for the upper end; the rest is common practice"), tight, Range{}},
}

// anyFilm stands for a binder that is not recorded; it covers the table.
var anyFilm = film{Range{0, 20}, Range{0, 40}, Range{}, practice("no binder recorded: what any may pull"), Range{50, 400000}, Range{}}

func published(text string) measure.Source {
	return measure.Source{Basis: measure.Published, Text: text}
}

func practice(text string) measure.Source {
	return measure.Source{Basis: measure.Practice, Text: text}
}
