package tell

import "slices"

// englishWords are the closed lists of the record, each under the name of its
// type, and the lists of the program.
func englishWords() Words {
	return Words{
		"Face": {"front": {Text: "front"}, "back": {Text: "back"}, "edges": {Text: "edges", Plural: true}},
		"Use": table{{"board", "board"}, {"cloth", "cloth"}, {"size", "size"}, {"sealer", "sealer"}, {"adhesive", "adhesive"}, {"stain-block", "stain block"}, {"ground", "ground"},
			{"isolation", "isolation coat"}, {"paint", "paint"}, {"medium", "painting medium"}, {"varnish", "varnish"}, {"thinner", "thinner"}}.words(),
		"Purpose": table{{"size", "size"}, {"sealer", "sealer"}, {"adhesive", "adhesive"}, {"stain-block", "stain block"}, {"ground", "ground"}, {"isolation", "isolation coat"},
			{"barrier", "barrier coat"}, {"other", "coat"}}.words(),
		"Binder": table{{"acrylic-dispersion", "acrylic dispersion"}, {"pva-dispersion", "PVA dispersion"}, {"animal-glue", "animal glue"}, {"cellulose-ether", "cellulose ether"},
			{"starch", "starch paste"}, {"casein", "casein"}, {"egg", "egg"}, {"gum", "gum"}, {"drying-oil", "drying oil"}, {"alkyd", "alkyd"}, {"shellac", "shellac"}, {"wax", "wax"},
			{"natural-resin", "natural resin"}, {"acrylic-resin", "acrylic resin"}, {"hydrocarbon-resin", "hydrocarbon resin"}, {"ketone-resin", "ketone resin"},
			{"polyurethane", "polyurethane"}, {"epoxy", "epoxy resin"}, {"other", "other binder"}}.words(),
		// The form "of" is of a board whose wood is recorded: {species}.
		"BoardKind": {"plywood": {Text: "plywood", Forms: map[string]string{"of": "{species} plywood"}}, "solid-wood": {Text: "wood", Forms: map[string]string{"of": "{species} wood"}},
			"mdf": {Text: "medium-density fibreboard"}, "hardboard": {Text: "hardboard"}, "tempered-hardboard": {Text: "tempered hardboard"}, "particleboard": {Text: "particleboard"},
			"honeycomb": {Text: "honeycomb panel"}, "aluminium-composite": {Text: "aluminium composite panel"}, "other": {Text: "board"}},
		"Fibre": table{{"linen", "linen"}, {"cotton", "cotton"}, {"hemp", "hemp"}, {"jute", "jute"}, {"silk", "silk"}, {"polyester", "polyester"}, {"linen-cotton", "linen and cotton cloth"},
			{"other", "cloth"}}.words(),
		"Weave": table{{"plain", "plain weave"}, {"basket", "basket weave"}, {"twill", "twill"}, {"herringbone", "herringbone twill"}, {"satin", "satin weave"}, {"huckaback", "huckaback"},
			{"other", "other weave"}}.words(),
		"PaintMedium": table{{"oil", "oil"}, {"alkyd", "alkyd"}, {"water-mixable-oil", "water-mixable oil"}, {"acrylic", "acrylic"}, {"egg-tempera", "egg tempera"}, {"casein", "casein"},
			{"gouache", "gouache"}, {"watercolour", "watercolour"}, {"encaustic", "encaustic"}, {"vinyl", "vinyl"}, {"other", "other medium"}}.words(),
		"Stage": table{{"board", "bare board"}, {"sealed", "sealed"}, {"cloth laid", "cloth laid"}, {"ground laid", "ground laid"}, {"painted", "painted"}, {"varnished", "varnished"}}.words(),

		"PhotoRole":  table{{"front", "front"}, {"back", "back"}, {"edge", "edge"}, {"weave-detail", "weave, detail"}, {"signature", "signature"}, {"other", "other view"}}.words(),
		"Gloss":      table{{"matt", "matt"}, {"satin", "satin"}, {"gloss", "gloss"}}.words(),
		"Answer":     table{{"yes", "yes"}, {"no", "no"}}.words(),
		"Grain":      table{{"height", "along the height"}, {"width", "along the width"}}.words(),
		"ThreadRun":  table{{"along-grain", "along the grain"}, {"across-grain", "across the grain"}, {"bias", "on the bias"}}.words(),
		"GritScale":  table{{"P", "P"}, {"CAMI", "CAMI"}}.words(),
		"Sound":      table{{"sound", "sound"}, {"lifting", "lifting"}, {"loose", "loose"}, {"damaged", "damaged"}}.words(),
		"Toward":     table{{"front", "front"}, {"back", "back"}, {"flat", "flat"}}.words(),
		"OilContent": table{{"lean", "leaner"}, {"same", "the same"}, {"fat", "fatter"}}.words(),
		"Film":       table{{"thin", "thin"}, {"thick", "thick"}}.words(),
		"Parting": table{{"sale", "sold"}, {"gift", "given away"}, {"loan", "lent"}, {"consignment", "on consignment"}, {"return", "came back"},
			{"theft", "reported stolen"}, {"loss", "reported lost"}}.words(),
		"Bracing":  table{{"cradle", "cradle"}, {"battens", "battens"}, {"strainer", "strainer"}, {"brace", "brace"}}.words(),
		"Fixing":   table{{"rigid", "fixed rigidly"}, {"sliding", "free to slide"}}.words(),
		"Moving":   table{{"along-grain", "along the grain"}, {"across-grain", "across the grain"}}.words(),
		"Along":    table{{"height", "along the height"}, {"width", "along the width"}, {"diagonal", "along the diagonal"}}.words(),
		"Recorded": table{{"as-made", "recorded as made"}, {"afterwards", "recorded afterwards"}}.words(),
		"Voice":    table{{"i", "I"}, {"we", "we"}}.words(),
		"Extent":   table{{"whole", "wholly"}, {"reduced", "reduced"}, {"in-part", "in part"}}.words(),
		"Means": table{{"solvent", "solvent"}, {"scalpel", "scalpel"}, {"sanding", "sanding"}, {"water", "water"}, {"heat", "heat"}, {"peeling", "peeling"},
			{"other", "other means"}}.words(),
		"Stratum": table{{"varnish", "varnish"}, {"retouching", "retouching"}, {"paint", "paint"}, {"isolation", "isolation coat"}, {"ground", "ground"}, {"cloth", "cloth"}, {"sealer", "sealer"},
			{"size", "size"}, {"barrier", "barrier coat"}, {"other", "layer"}}.words(),
		"Resizing": table{{"cut-down", "cut down"}, {"enlarged", "enlarged"}}.words(),
		"Mark": table{{"knot", "knot"}, {"joint", "joint"}, {"repair", "repair"}, {"filling", "filling"}, {"dent", "dent"}, {"crack", "crack"}, {"hole", "hole"}, {"stain", "stain"},
			{"other", "feature"}}.words(),
		"Species": table{{"birch", "birch"}, {"beech", "beech"}, {"oak", "oak"}, {"maple", "maple"}, {"walnut", "walnut"}, {"ash", "ash"}, {"cherry", "cherry"}, {"poplar", "poplar"}, {"lime", "lime"},
			{"alder", "alder"}, {"mahogany", "mahogany"}, {"okoume", "okoumé"}, {"lauan", "lauan"}, {"eucalyptus", "eucalyptus"}, {"spruce", "spruce"}, {"pine", "pine"}, {"fir", "fir"},
			{"larch", "larch"}, {"cedar", "cedar"}, {"other", "other wood"}}.words(),
		"Resin": table{{"dammar", "dammar"}, {"mastic", "mastic"}, {"copal", "copal"}, {"shellac", "shellac"}, {"acrylic-resin", "acrylic resin"}, {"acrylic-dispersion", "acrylic dispersion"},
			{"hydrocarbon", "hydrocarbon resin"}, {"ketone", "ketone resin"}, {"urea-aldehyde", "urea-aldehyde resin"}, {"alkyd", "alkyd"}, {"wax", "wax"}, {"polyurethane", "polyurethane"},
			{"other", "other resin"}}.words(),
		"Solvent": table{{"water", "water"}, {"white-spirit", "white spirit"}, {"low-aromatic-spirit", "low-aromatic white spirit"}, {"turpentine", "turpentine"}, {"spike-oil", "spike oil"},
			{"citrus-terpene", "citrus terpene"}, {"ethanol", "ethanol"}, {"isopropanol", "isopropanol"}, {"acetone", "acetone"}, {"xylene", "xylene"}, {"toluene", "toluene"},
			{"ethyl-acetate", "ethyl acetate"}, {"glycol-ether", "glycol ether"}, {"drying-oil", "drying oil"}, {"other", "other liquid"}}.words(),
		"Tool": table{{"brush", "brush"}, {"foam-brush", "foam brush"}, {"roller", "roller"}, {"squeegee", "squeegee"}, {"trowel", "trowel"}, {"palette-knife", "palette knife"}, {"spray", "spray"},
			{"pad", "pad"}, {"sponge", "sponge"}, {"cloth", "cloth"}, {"screen", "screen"}, {"pour", "poured"}, {"dip", "dipped"}, {"hand", "by hand"}, {"knife", "knife"}, {"scissors", "scissors"},
			{"rotary-cutter", "rotary cutter"}, {"saw", "saw"}, {"other", "other tool"}}.words(),
		"Basis": table{{"typical", "typical values"}, {"data-sheet", "data sheet"}, {"measured", "measured"}, {"other", "other source"}}.words(),

		"LengthUnit": table{{"mm", "mm"}, {"cm", "cm"}, {"in", "in"}}.words(),

		"Topic": table{{"support", "support"}, {"cloth", "cloth"}, {"size", "size"}, {"sealer", "sealer"}, {"adhesive", "adhesive"}, {"stain-block", "stain block"}, {"ground", "ground"},
			{"isolation", "isolation coat"}, {"barrier", "barrier coat"}, {"other", "coat"}, {"coat", "coat"}, {"paint", "paint"}, {"varnish", "varnish"},
			{"identification", "identification"}, {"thickness", "thickness"}}.words(),
		"code": slices.Concat(englishTrade, table{{"care-air", "Air"}, {"care-light", "Light"}, {"care-wall", "Wall"}, {"care-dust", "Dust and touch"}, {"care-heat", "Cold and heat"}, {"care-board", "Board and cloth"}, {"care-damage", "After damage"},
			{"current", "current"}, {"retired", "retired"}, {"lost", "lost"}, {"unrecorded", "not recorded"}, {"small", "small"}, {"medium", "medium"}, {"large", "large"}, {"cloth", "cloth"}, {"paint", "paint"}, {"varnish", "varnish"}, {"coat", "coat"}, {"board", "board"}, {"adhesion", "adhesion"}, {"edges", "edges"}, {"over-height", "over the height"}, {"over-width", "over the width"}, {"over-diagonal", "over the diagonal"},
			{"along-grain", "along the grain"}, {"across-grain", "across the grain"}, {"over-", "over a line that is not recorded"}, {"grain-along-height", "if the grain runs along the height"}, {"grain-along-width", "if the grain runs along the width"},
			{"plies", "the number of plies"}, {"veneers", "the thickness of the core veneer, which can be measured at the edge"}, {"wood", "the wood"}, {"skins", "the thickness of the skins"}}).words(),
		"Work":     table{{"practice", "common practice"}, {"memory", "from memory of the literature"}}.words(),
		"Outcome":  table{{"falls-short", "falls short"}, {"not-recorded", "not recorded"}, {"holds", "holds"}, {"does-not-apply", "does not apply"}}.words(),
		"Severity": table{{"warning", "warning"}, {"advice", "advice"}, {"information", "information"}}.words(),
		"Task": table{{"seal", "seal"}, {"lay", "lay cloth or ground"}, {"press", "press down"}, {"trim", "trim"}, {"answer", "answer the coat"}, {"sand", "sand"}, {"prime", "prime"}, {"paint", "paint"},
			{"varnish", "varnish"}, {"label", "label"}}.words(),
		"State": table{{"overdue", "overdue"}, {"now", "now"}, {"later", "later"}, {"any-time", "any time"}}.words(),

		"Kind":     englishKinds.words(),
		"Question": englishQuestions(),
		"unit":     englishUnits(),
		"field":    englishFields.words(),
	}
}

// englishUnits are what is printed for the units of the record; the form is a
// plural category.
func englishUnits() map[string]Word {
	return map[string]Word{
		"mm": {Text: "mm"}, "cm": {Text: "cm"}, "m": {Text: "m"}, "in": {Text: "in"}, "ft": {Text: "ft"}, "µm": {Text: "µm"}, "mil": {Text: "mil"},
		"g": {Text: "g"}, "kg": {Text: "kg"}, "mg": {Text: "mg"}, "mL": {Text: "mL"}, "L": {Text: "L"}, "oz": {Text: "oz"}, "lb": {Text: "lb"},
		"US fl oz": {Text: "US fl oz"}, "US qt": {Text: "US qt"}, "US gal": {Text: "US gal"}, "yd": {Text: "yd"}, "m2": {Text: "m²"}, "ft2": {Text: "sq ft"}, "%": {Text: "%"},
		"g/mL": {Text: "g/mL"}, "kg/m3": {Text: "kg/m³"}, "lb/US gal": {Text: "lb/US gal"}, "h": {Text: "h"}, "min": {Text: "min"}, "s": {Text: "s"}, "d": {Text: "d"},
		"°C": {Text: "°C"}, "°F": {Text: "°F"}, "g/m2": {Text: "g/m²"}, "mL/m2": {Text: "mL/m²"}, "oz/yd2": {Text: "oz/yd²"}, "/cm": {Text: "threads/cm"}, "/in": {Text: "threads/in"},
		"ppm": {Text: "ppm"}, "mg/m³": {Text: "mg/m³"}, "mg/100 g": {Text: "mg/100 g"}, "mg/L": {Text: "mg/L"},
		"sheets": {Text: "sheets", Forms: map[string]string{"one": "sheet"}},
		"weeks":  {Text: "weeks", Forms: map[string]string{"one": "week"}},
		"months": {Text: "months", Forms: map[string]string{"one": "month"}},
	}
}

// A table is messages, or words of one form, by their codes. The compiler lays it
// down: a run of the program asks few of them.
type table []struct {
	code string
	Message
}

func (t table) words() map[string]Word {
	out := make(map[string]Word, len(t))
	for _, x := range t {
		out[x.code] = Word{Text: string(x.Message)}
	}
	return out
}
