package trade

import (
	"strings"
)

// Stratum is what a layer, or the support under the first, is when the question
// is what holds on what.
type Stratum string

// Strata lists what a layer may be; several where the record does not tell
// which.
type Strata []Stratum

// The strata.
const (
	AcrylicGround    Stratum = "acrylic-ground"    // matt, filled
	AcrylicMedium    Stratum = "acrylic-medium"    // clear: size, medium, gel
	AcrylicPaint     Stratum = "acrylic-paint"     //
	AcrylicVarnish   Stratum = "acrylic-varnish"   // water-borne
	Vinyl            Stratum = "vinyl"             // PVA dispersion as size, glue or paint
	OilGround        Stratum = "oil-ground"        //
	OilPaint         Stratum = "oil-paint"         // water-mixable oil too
	Alkyd            Stratum = "alkyd"             // ground, paint or medium
	EggTempera       Stratum = "egg-tempera"       //
	Emulsion         Stratum = "egg-oil"           // egg-oil and other oil emulsions
	Casein           Stratum = "casein"            //
	GlueSize         Stratum = "glue-size"         // animal glue
	Gesso            Stratum = "glue-gesso"        // glue and chalk
	Distemper        Stratum = "glue-distemper"    //
	GumColour        Stratum = "gum-colour"        // watercolour, gouache
	Wax              Stratum = "wax"               // encaustic too
	Shellac          Stratum = "shellac"           //
	NaturalResin     Stratum = "natural-resin"     // dammar, mastic
	AcrylicResin     Stratum = "acrylic-resin"     // in solvent
	HydrocarbonResin Stratum = "hydrocarbon-resin" //
	KetoneResin      Stratum = "ketone-resin"      //
	Polyurethane     Stratum = "polyurethane"      //
	Epoxy            Stratum = "epoxy"             //
	BareWood         Stratum = "bare-wood"         // plywood too
	BareMDF          Stratum = "bare-mdf"          //
	BareHardboard    Stratum = "bare-hardboard"    //
	BareComposite    Stratum = "bare-composite"    // coated face of aluminium composite
	RawLinen         Stratum = "raw-linen"         // and other bast fibres
	RawCotton        Stratum = "raw-cotton"        //
	OilPrimedLinen   Stratum = "oil-primed-linen"  //
	AcrylicPrimed    Stratum = "acrylic-primed"    // linen
	OtherStratum     Stratum = "other"             // something of which the tables do not speak
)

// short are the letters by which the tables name strata; RV is any resin
// varnish.
var short = map[string]Strata{
	"AG": {AcrylicGround}, "AM": {AcrylicMedium}, "AP": {AcrylicPaint}, "AV": {AcrylicVarnish}, "PV": {Vinyl},
	"OG": {OilGround}, "OP": {OilPaint}, "AK": {Alkyd}, "ET": {EggTempera}, "EO": {Emulsion}, "CA": {Casein},
	"GS": {GlueSize}, "GG": {Gesso}, "GD": {Distemper}, "GU": {GumColour}, "WX": {Wax}, "SH": {Shellac},
	"NR": {NaturalResin}, "AR": {AcrylicResin}, "HC": {HydrocarbonResin}, "KR": {KetoneResin}, "RV": {NaturalResin, AcrylicResin, HydrocarbonResin, KetoneResin},
	"PU": {Polyurethane}, "EP": {Epoxy}, "WD": {BareWood}, "MD": {BareMDF}, "HB": {BareHardboard}, "AL": {BareComposite},
	"LI": {RawLinen}, "CO": {RawCotton}, "LO": {OilPrimedLinen}, "LA": {AcrylicPrimed},
}

// strataOf expands letters.
func strataOf(letters string) Strata {
	var out Strata
	for s := range strings.FieldsSeq(letters) {
		out = append(out, short[s]...)
	}
	return out
}
