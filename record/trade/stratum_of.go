package trade

import (
	"iter"
	"maps"
	"slices"

	"backleaf/record"
)

// StrataOf returns what a layer may be, judged by its purpose, binders, medium
// and resin. A mix of a drying oil with egg, casein, glue or gum is an emulsion;
// any other mix is judged as each of its parts.
func (m Made) StrataOf() Strata {
	l := m.Layer
	bs, all := m.Binders()
	switch {
	case l.Cloth != nil:
		return clothStrata(m)
	case !all:
		return each(l, maps.Keys(binders), Emulsion, OtherStratum)
	case emulsion(bs):
		return Strata{Emulsion}
	}
	return each(l, slices.Values(bs))
}

// each is what a layer may be if it may be of each of some binders.
func each(l record.Layer, bs iter.Seq[record.Binder], more ...Stratum) Strata {
	out := Strata(more)
	for b := range bs {
		out = append(out, byUse(l, b)...)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// emulsions are the water-borne binders that make an emulsion with oil.
var emulsions = []record.Binder{record.Egg, record.Casein, record.AnimalGlue, "gum"}

func emulsion(bs []record.Binder) bool {
	oil, other := false, len(bs) > 1
	for _, b := range bs {
		oil = oil || b == record.DryingOil
		other = other && (b == record.DryingOil || slices.Contains(emulsions, b))
	}
	return oil && other
}

// useRow is what a binder makes as clear coat, ground, paint and varnish, in
// the letters of short.
type useRow struct{ coat, ground, paint, varnish string }

// uses: a clear coat is a size, sealer, adhesive, stain block, isolation or
// barrier.
var uses = map[record.Binder]useRow{
	record.Acrylic:      {"AM", "AG", "AP", "AV"},
	record.PVA:          {"PV", "PV", "PV", "PV"},
	record.AnimalGlue:   {"GS", "GG", "GD", "GS"},
	record.Casein:       {"CA", "CA", "CA", "CA"},
	record.Egg:          {"ET", "ET", "ET", "ET"},
	"gum":               {"GU", "GU", "GU", "GU"},
	record.DryingOil:    {"OP", "OG", "OP", "OP"},
	record.Alkyd:        {"AK", "AK", "AK", "AK"},
	record.Shellac:      {"SH", "SH", "SH", "SH"},
	record.Wax:          {"WX", "WX", "WX", "WX"},
	"natural-resin":     {"NR", "NR", "NR", "NR"},
	"acrylic-resin":     {"AR", "AR", "AR", "AR"},
	"hydrocarbon-resin": {"HC", "HC", "HC", "HC"},
	"ketone-resin":      {"KR", "KR", "KR", "KR"},
	"polyurethane":      {"PU", "PU", "PU", "PU"},
	"epoxy":             {"EP", "EP", "EP", "EP"},
}

// byUse is a layer of one binder.
func byUse(l record.Layer, b record.Binder) Strata {
	row, ok := uses[b]
	if !ok {
		return Strata{OtherStratum}
	}
	switch {
	case l.Paint != nil:
		return strataOf(row.paint)
	case l.Varnish != nil:
		return strataOf(row.varnish)
	case l.Purpose == record.Ground:
		return strataOf(row.ground)
	case l.Purpose.Closes() == yes:
		return strataOf(row.coat)
	}
	return strataOf(row.coat + " " + row.ground)
}

// boardStrata are boards as supports. Particleboard, honeycomb and other boards
// are not spoken of.
var boardStrata = map[record.BoardKind]Stratum{
	record.Plywood: BareWood, record.SolidWood: BareWood, record.MDF: BareMDF, record.Hardboard: BareHardboard,
	record.TemperedHardboard: BareHardboard, record.AluminiumComp: BareComposite,
	record.Particleboard: OtherStratum, record.Honeycomb: OtherStratum, "other": OtherStratum,
}

// BoardStrata returns what a board is as a support.
func BoardStrata(k record.BoardKind) Strata {
	if s, ok := boardStrata[k]; ok {
		return Strata{s}
	}
	return Strata{BareWood, BareMDF, BareHardboard, BareComposite, OtherStratum}
}

// fibreStrata are raw cloths by fibre.
var fibreStrata = map[record.Fibre]Strata{
	"linen": {RawLinen}, "hemp": {RawLinen}, "jute": {RawLinen}, "cotton": {RawCotton}, "linen-cotton": {RawLinen, RawCotton},
	"silk": {OtherStratum}, "polyester": {OtherStratum}, "other": {OtherStratum},
}

// SizingOpen reports of a cloth of known fibre that nobody recorded whether it
// came sized or primed.
func (m Made) SizingOpen() bool {
	return len(m.Materials) == 1 && fibreStrata[m.Materials[0].Cloth.Fibre] != nil && m.Materials[0].Cloth.Sized != yes && m.Materials[0].Cloth.Sized != no
}

// clothStrata is what a cloth shows to the next layer. One that came sized or
// primed shows what it came with, and nobody says what that is.
func clothStrata(m Made) Strata {
	var c record.Cloth
	if len(m.Materials) == 1 {
		c = m.Materials[0].Cloth
	}
	raw, ok := fibreStrata[c.Fibre]
	if !ok {
		raw = Strata{RawLinen, RawCotton, OtherStratum}
	}
	coated := Strata{OilPrimedLinen, AcrylicPrimed, AcrylicMedium, GlueSize, Vinyl, OtherStratum}
	switch c.Sized {
	case no:
		return raw
	case yes:
		return coated
	}
	out := slices.Concat(raw, coated)
	slices.Sort(out)
	return slices.Compact(out)
}

// Shows returns what a cloth laid into an adhesive shows to the next layer: the
// adhesive where it was wetted through from above, the cloth where it was not.
func Shows(cloth, adhesive Made) Strata {
	if cloth.Layer.Cloth == nil {
		return cloth.StrataOf()
	}
	switch cloth.Layer.Cloth.WetThrough {
	case yes:
		return adhesive.StrataOf()
	case no:
		return cloth.StrataOf()
	}
	out := slices.Concat(cloth.StrataOf(), adhesive.StrataOf())
	slices.Sort(out)
	return slices.Compact(out)
}
