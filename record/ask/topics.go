package ask

import "backleaf/record"

// A topic is something that can be asked, with the phrases for it. The words
// of about may stand beside them without asking for anything else.
type topic struct {
	code    record.Code
	phrases []string
	about   []string
	answer  func(*reader) Answer
}

func isGround(l record.Layer) bool     { return isCoat(l) && l.Purpose == record.Ground }
func isAdhesive(l record.Layer) bool   { return isCoat(l) && l.Purpose == record.Adhesive }
func isSealer(l record.Layer) bool     { return isCoat(l) && l.Purpose == record.Sealer }
func isSize(l record.Layer) bool       { return isCoat(l) && l.Purpose == record.Sizing }
func isIsolation(l record.Layer) bool  { return isCoat(l) && l.Purpose == record.Isolation }
func isStainBlock(l record.Layer) bool { return isCoat(l) && l.Purpose == record.StainBlock }
func isBarrier(l record.Layer) bool    { return isCoat(l) && l.Purpose == record.Barrier }
func isVarnish(l record.Layer) bool    { return l.Varnish != nil }
func isPaint(l record.Layer) bool      { return l.Paint != nil }
func isCloth(l record.Layer) bool      { return l.Cloth != nil }
func isCoat(l record.Layer) bool       { return l.Cloth == nil && l.Paint == nil && l.Varnish == nil }

// topics is the thesaurus: the special before the general.
var topics = []topic{
	{"lead-and-toxic-pigments", []string{"lead", "lead white", "flake white", "toxic", "poison", "poisonous", "cadmium", "mercury", "arsenic", "heavy metal", "naples yellow", "vermilion"},
		[]string{"pigment", "paint", "ground", "colour", "color", "contain", "white", "layer"}, (*reader).metals},
	{"zinc", []string{"zinc", "zinc white", "zinc oxide"}, []string{"pigment", "paint", "ground", "white", "oil", "contain"}, (*reader).zinc},
	{"hazards", []string{"hazard", "danger", "dangerous", "harmful", "health", "safety", "safe to sand", "safe to clean", "safe"}, []string{"sand", "clean", "conservator"}, (*reader).hazards},

	{"varnish-removal", []string{"varnish remover", "remove varnish", "removing varnish", "varnish removal", "varnish removable", "varnish removed", "removable", "reversible", "varnish reversible", "varnish solvent",
		"take off varnish", "strip varnish", "dissolve varnish", "solvent", "remover"}, []string{"varnish", "come off", "later", "clean"}, (*reader).removal},
	{"isolation-coat", []string{"isolation coat", "isolation", "isolating layer", "isolating varnish"}, []string{"coat", "layer", "varnish"}, layersOf(isIsolation)},
	{"varnish", []string{"varnish", "varnished", "when varnished", "varnish resin", "surface coating", "final coat", "top coat", "topcoat", "gloss", "sheen", "matt", "finish", "resin"}, []string{"when", "layer", "coat", "date", "lot"}, (*reader).varnish},

	{"back", []string{"back", "back sealed", "back coated", "back coat", "back bare", "reverse", "reverse sealed", "verso", "verso sealed", "rear", "rear side"}, []string{"sealed", "seal", "sealer", "coat", "side", "face", "layer", "bare"}, face(record.Back)},
	{"edges", []string{"edge", "edge sealed", "edge coated", "side sealed", "edge bare"}, []string{"sealed", "seal", "sealer", "coat", "layer", "bare"}, face(record.Edges)},
	{"front", []string{"front", "front sealed", "recto", "front side"}, []string{"sealed", "coat", "side", "layer"}, face(record.Front)},
	{"sealing", []string{"sealed", "sealing", "sealed all round", "all side sealed", "seal"}, []string{"board", "face", "side", "all", "well", "properly"}, (*reader).sealed},

	{"thread-count", []string{"thread count", "thread per cm", "thread per inch", "thread", "sett", "weave count", "count", "weave", "woven"}, []string{"cloth", "linen", "canva", "fabric", "warp", "weft", "cm", "inch", "per"}, (*reader).threads},
	{"weight-of-the-cloth", []string{"cloth weight", "weight cloth", "linen weight", "weight linen", "canvas weight", "fabric weight", "gsm", "mass per area", "heavy cloth", "cloth mass"}, []string{"cloth", "linen", "canva", "fabric"}, (*reader).clothMass},
	{"run-of-the-threads", []string{"warp", "weft", "warp direction", "thread direction", "run thread", "direction cloth", "along grain", "selvedge"}, []string{"cloth", "linen", "run", "way", "thread", "direction"}, (*reader).run},
	{"trimming", []string{"trim", "trimmed", "trimming", "cut flush", "eased"}, []string{"when", "cloth", "linen", "edge", "blade"}, (*reader).trimmed},

	{"cure", []string{"cure", "cured", "curing", "when cured", "hardened", "dry", "dried", "dry time", "drying time", "drying"}, []string{"when", "sealer", "ground", "varnish", "paint", "time", "fully", "long", "coat", "through", "adhesive", "last", "film"}, (*reader).cured},
	{"sanding", []string{"sand", "sanded", "sanding", "grit", "abrasive", "sandpaper", "abraded"}, []string{"when", "ground", "cloth", "between", "coat", "paper", "wet"}, (*reader).sanded},
	{"thinning", []string{"thinned", "thinner", "diluted", "dilution", "thinning"}, []string{"water", "ground", "sealer", "coat"}, (*reader).thinned},
	{"tools", []string{"tool", "brush", "roller", "applied with", "application"}, []string{"ground", "sealer", "coat", "varnish", "apply", "applied"}, (*reader).tools},
	{"amounts", []string{"amount", "quantity", "consumption", "gram", "wet amount"}, []string{"sealer", "ground", "coat", "varnish", "glue", "adhesive"}, (*reader).amounts},
	{"warm-air", []string{"warm air", "hair dryer", "hairdryer", "heat", "heated", "fan"}, []string{"dry", "dried"}, (*reader).warm},

	{"adhesive", []string{"adhesive", "glue", "glued", "glued down", "stuck", "stuck down", "stick", "bonded", "bond", "paste", "mounted", "laid down"}, []string{"cloth", "linen", "canva", "fabric", "board", "plywood", "wood", "support", "hold", "down", "lot", "layer"}, layersOf(isAdhesive)},
	{"stain-block", []string{"stain block", "stain blocker", "support induced discolouration", "discolouration", "discoloration"}, []string{"coat", "layer"}, layersOf(isStainBlock)},
	{"barrier-coat", []string{"barrier", "barrier coat", "vapour barrier", "vapor barrier", "moisture barrier"}, []string{"coat", "back"}, layersOf(isBarrier)},
	{"thickness-of-the-layers", []string{"film thickness", "coat thickness", "layer thickness", "thickness coat", "thickness ground", "ground thick", "thickness varnish", "varnish thick", "dry film", "wet film", "thickness paint", "paint thick", "thick coat", "micron"},
		[]string{"ground", "varnish", "paint", "coat", "layer", "sealer", "film"}, (*reader).films},
	{"sealer", []string{"sealer"}, []string{"board", "lot", "coat", "layer", "when"}, layersOf(isSealer)},
	{"size", []string{"size"}, nil, (*reader).size},
	{"sizing", []string{"sizing", "sized", "size coat", "glue size", "size cloth", "rabbit skin glue", "animal glue", "hide glue"}, []string{"cloth", "linen", "canva", "coat", "layer", "with", "before"}, (*reader).sizing},
	{"ground", []string{"ground", "gesso", "primer", "priming", "primed", "preparation", "when primed", "ground layer", "chalk"}, []string{"coat", "layer", "when", "colour", "white", "lot", "dry"}, layersOf(isGround)},

	{"pigments", []string{"pigment", "colourant", "colour index", "colour", "color", "lightfast", "lightfastness", "palette"}, []string{"paint", "index"}, (*reader).pigments},
	{"underdrawing", []string{"underdrawing", "drawing", "sketch", "charcoal", "pencil", "drawn"}, []string{"under", "paint"}, (*reader).underdrawing},
	{"fat-over-lean", []string{"fat lean", "fat over lean", "oil content", "lean", "fat"}, []string{"layer", "paint"}, (*reader).fat},
	{"paint", []string{"paint", "painted", "medium", "paint medium", "media", "technique", "oil", "acrylic", "oil or acrylic", "tempera", "egg tempera", "alkyd", "encaustic", "gouache", "watercolour", "when painted", "paint layer"}, []string{"layer", "when", "binder"}, (*reader).paint},

	{"formaldehyde", []string{"formaldehyde", "formaldehyde class", "emission", "off gas", "offgas", "off gassing", "outgassing", "e1", "glue emission"}, []string{"board", "class", "plywood", "mdf"}, (*reader).formaldehyde},
	{"grain", []string{"grain", "grain direction", "face grain"}, []string{"board", "run", "way", "direction", "wood", "plywood"}, (*reader).grain},
	{"thickness-of-the-board", []string{"thickness", "thick", "board thickness", "board thick", "depth", "deep"}, []string{"board", "plywood", "support", "wood"}, (*reader).thick},
	{"bracing", []string{"brace", "braced", "bracing", "cradle", "cradled", "batten", "strainer", "stiffener"}, []string{"back", "board"}, (*reader).braced},
	{"board", []string{"board", "support", "substrate", "plywood", "wood", "mdf", "hardboard", "fibreboard", "ply", "plies", "species", "timber"}, []string{"lot"}, (*reader).board},
	{"cloth", []string{"cloth", "linen", "canva", "fabric", "textile", "fibre", "fiber", "cotton", "cloth laid", "when laid"}, []string{"when", "laid", "lot", "wet", "through", "front"}, (*reader).cloth},

	{"date-of-the-work", []string{"date", "when painting made", "year", "dated", "when", "old", "age", "period", "how old"}, []string{"made", "work", "painted"}, (*reader).when},
	{"steps-and-dates", []string{"when cut", "when sealed", "step", "timeline", "time line", "dates", "sequence", "order", "history", "chronology"}, []string{"cut", "sealed", "when"}, (*reader).steps},
	{"dimensions", []string{"dimension", "measurement", "how large", "large", "big", "height", "width", "format"}, nil, (*reader).dimensions},
	{"maker", []string{"who", "who made", "maker", "artist", "author", "studio", "painter", "whom", "who painted"}, []string{"contact", "paint", "painted", "made", "make"}, (*reader).maker},
	{"place", []string{"place", "where made", "place origin", "origin", "country", "place made", "where painted"}, []string{"place", "where"}, (*reader).place},
	{"owner-and-price", []string{"owner", "who own", "own", "buyer", "who bought", "bought", "price", "cost", "value", "sold for", "who sold", "collector"}, []string{"who", "now"}, (*reader).private},
	{"whereabouts", []string{"where", "whereabout", "where now", "location", "sold", "when sold", "loan", "lent", "stolen", "lost"}, []string{"now", "when", "today"}, (*reader).where},
	{"title", []string{"title", "name", "called"}, nil, (*reader).title},
	{"subject", []string{"subject", "depict", "depicted", "show", "motif", "represent"}, nil, (*reader).subject},
	{"signature-and-inscriptions", []string{"signature", "signed", "sign", "inscription", "inscribed", "monogram", "mark", "stamp", "where signed"}, []string{"where", "back"}, (*reader).signed},
	{"frame", []string{"frame", "framed", "framing", "unframed"}, nil, (*reader).framed},
	{"edition", []string{"edition", "unique", "series"}, nil, (*reader).edition},
	{"short-description", []string{"short description", "summary", "description", "describe"}, nil, (*reader).summary},
	{"what-the-maker-wrote", []string{"maker wrote", "wrote", "described", "own words", "meant for"}, []string{"maker"}, (*reader).whole},
	{"layers-taken-off", []string{"taken off", "removed layer", "layer removed", "reduced", "stripped", "scraped", "sanded off"}, []string{"layer", "varnish", "paint", "ground", "cloth"}, (*reader).removed},
	{"earlier-work", []string{"earlier work", "used again", "reused", "painted over", "overpainted", "earlier painting", "pentimento"}, nil, (*reader).usedAgain},
	{"page-of-the-panel", []string{"page", "web page", "published", "shown", "online"}, nil, (*reader).page},
	{"cutting", []string{"cut", "cutting", "sawn", "prepared", "settled", "degreased", "keyed", "bought ready", "rough side", "screen side", "saw"}, []string{"board", "how", "surface"}, (*reader).cutting},
	{"faces-left-bare", []string{"left bare", "bare face", "bare", "uncoated", "unsealed"}, []string{"face", "why"}, (*reader).leftBare},
	{"intention", []string{"intended", "intention", "no cloth", "meant carry cloth", "without cloth"}, nil, (*reader).intended},
	{"laying-of-the-cloth", []string{"laying", "laying cloth", "how cloth laid", "weighted", "oversize", "edge pressed"}, []string{"cloth", "linen"}, (*reader).laying},
	{"data-of-the-products", []string{"data", "data sheet", "stated", "specification", "technical data", "solids"}, []string{"product", "material"}, (*reader).data},
	{"earlier-certificates", []string{"earlier certificate", "certificate history", "issued before", "replaced"}, []string{"certificate"}, (*reader).certificates},
	{"distinguishing-features", []string{"distinguishing feature", "feature", "distinguish", "knot", "dent", "crack", "tell apart", "recognise", "recognize"}, nil, (*reader).features},
	{"number", []string{"number", "inventory number", "accession number", "reference", "inventory"}, nil, (*reader).number},
	{"batch", []string{"batch", "sister panel", "made together", "same batch"}, nil, (*reader).batch},
	{"lots", []string{"lot", "lot number", "tin", "can", "bottle", "bolt", "batch number"}, nil, (*reader).lots},
	{"products", []string{"product", "material", "brand", "ingredient"}, []string{"list", "all"}, (*reader).products},
	{"binders", []string{"binder", "sensitive", "sensitivity", "water sensitive", "solubility", "soluble", "sensitive water", "sensitive alcohol", "cleaning"}, []string{"water", "alcohol", "solvent", "heat", "alkali"}, (*reader).binders},
	{"build-up", []string{"build up", "buildup", "stratigraphy", "layer", "structure", "coat", "cross section", "section", "layer structure", "sandwich", "construction", "made", "how made"}, []string{"all", "number", "order"}, (*reader).buildUp},

	{"bow", []string{"bow", "bowed", "warped", "warping", "warpage", "flat", "flatness", "hollow", "curved", "cupped", "cupping", "twist"}, []string{"measured", "lie", "lies"}, (*reader).bow},
	{"care", []string{"care", "clean", "display", "hang", "hanging", "store", "storage", "light", "lux", "dust", "dusting", "recommended climate", "recommended humidity", "humidity display", "handling", "keep"}, []string{"clean", "where", "best"}, (*reader).care},
	{"air-at-work", []string{"climate", "temperature", "humidity", "relative humidity", "rh", "air", "room climate"}, []string{"when", "workroom", "studio", "room", "coat"}, (*reader).air},
	{"edges-and-adhesion", []string{"lifting", "loose", "adhesion", "delamination", "flaking", "sound", "inspected", "inspection"}, []string{"edge", "cloth"}, (*reader).sound},
	{"condition", []string{"condition", "condition report", "damage", "damaged", "scratch", "state"}, []string{"report", "last"}, (*reader).condition},
	{"treatment", []string{"treatment", "treated", "restored", "restoration", "conserved", "conservation", "repair", "repaired", "retouched", "cleaned", "relined"}, []string{"when", "who", "before", "last"}, (*reader).treatment},
	{"certificate", []string{"certificate", "certified", "authentic", "authenticity"}, []string{"issued", "when"}, (*reader).certificate},
	{"label", []string{"label", "labelled", "label printed"}, []string{"when", "back", "printed"}, (*reader).label},
	{"photographs", []string{"photograph", "photo", "image"}, nil, (*reader).photographs},
	{"corrections", []string{"correction", "corrected", "amended", "changed", "withdrawn", "error", "mistake"}, []string{"record"}, (*reader).corrections},
	{"what-is-not-recorded", []string{"missing", "gap", "unknown", "recorded", "unrecorded", "incomplete"}, []string{"record", "information"}, (*reader).gaps},
	{"notes", []string{"note", "remark", "comment"}, nil, (*reader).notes},
}
