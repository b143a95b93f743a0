package record

// The closed lists of words. Each list but those of a studio's own habits
// also takes "unknown" (recorded as unknown); an absent word means that
// nothing was recorded.

// Answer is yes, no or unknown.
type Answer string

// Answers.
const (
	Yes Answer = "yes"
	No  Answer = "no"
)

// Face is a side of a panel. The edges are a face of their own: that is where
// cloth lets go and where board drinks.
type Face string

// Faces.
const (
	Front Face = "front"
	Back  Face = "back"
	Edges Face = "edges"
)

// Faces lists all faces.
var Faces = []Face{Front, Back, Edges}

// Use is what a material is for.
type Use string

// Binder is what holds a coat together.
type Binder string

// Binders that rules name.
const (
	Acrylic    Binder = "acrylic-dispersion"
	PVA        Binder = "pva-dispersion"
	AnimalGlue Binder = "animal-glue"
	Casein     Binder = "casein"
	Egg        Binder = "egg"
	DryingOil  Binder = "drying-oil"
	Alkyd      Binder = "alkyd"
	Shellac    Binder = "shellac"
	Wax        Binder = "wax"
)

// BoardKind is the kind of support.
type BoardKind string

// Kinds of board.
const (
	Plywood           BoardKind = "plywood"
	MDF               BoardKind = "mdf"
	Hardboard         BoardKind = "hardboard"
	TemperedHardboard BoardKind = "tempered-hardboard"
	SolidWood         BoardKind = "solid-wood"
	Particleboard     BoardKind = "particleboard"
	Honeycomb         BoardKind = "honeycomb"
	AluminiumComp     BoardKind = "aluminium-composite"
)

// PaintMedium is the binder family of a paint layer, as a painter says it.
type PaintMedium string

// Purpose is what a coat is for.
type Purpose string

// Purposes.
const (
	Sizing     Purpose = "size"
	Sealer     Purpose = "sealer"
	Adhesive   Purpose = "adhesive"
	StainBlock Purpose = "stain-block"
	Ground     Purpose = "ground"
	Isolation  Purpose = "isolation"
	Barrier    Purpose = "barrier"
)

// PhotoRole is what a photograph shows.
type PhotoRole string

// PhotoFront is the role of the one picture that papers show.
const PhotoFront PhotoRole = "front"

// closed maps each word type to the words it takes, in the order of the help.
var closed = map[string][]string{
	"Answer":      {"yes", "no"},
	"Face":        {"front", "back", "edges"},
	"Use":         {"board", "cloth", "size", "sealer", "adhesive", "stain-block", "ground", "isolation", "paint", "medium", "varnish", "thinner"},
	"Binder":      {"acrylic-dispersion", "pva-dispersion", "animal-glue", "cellulose-ether", "starch", "casein", "egg", "gum", "drying-oil", "alkyd", "shellac", "wax", "natural-resin", "acrylic-resin", "hydrocarbon-resin", "ketone-resin", "polyurethane", "epoxy", "other"},
	"BoardKind":   {"plywood", "mdf", "hardboard", "tempered-hardboard", "solid-wood", "particleboard", "honeycomb", "aluminium-composite", "other"},
	"PaintMedium": {"oil", "alkyd", "water-mixable-oil", "acrylic", "egg-tempera", "casein", "gouache", "watercolour", "encaustic", "vinyl", "other"},
	"Purpose":     {"size", "sealer", "adhesive", "stain-block", "ground", "isolation", "barrier", "other"},
	"PhotoRole":   {"front", "back", "edge", "weave-detail", "signature", "other"},
	"Grain":       {"height", "width"},
	"Weave":       {"plain", "basket", "twill", "herringbone", "satin", "huckaback", "other"},
	"Fibre":       {"linen", "cotton", "hemp", "jute", "silk", "polyester", "linen-cotton", "other"},
	"ThreadRun":   {"along-grain", "across-grain", "bias"},
	"GritScale":   {"P", "CAMI"},
	"Gloss":       {"matt", "satin", "gloss"},
	"Sound":       {"sound", "lifting", "loose", "damaged"},
	"Toward":      {"front", "back", "flat"},
	"OilContent":  {"lean", "same", "fat"},
	"Film":        {"thin", "thick"},
	"Parting":     {"sale", "gift", "loan", "consignment", "return", "theft", "loss"},
	"Bracing":     {"cradle", "battens", "strainer", "brace"},
	"Fixing":      {"rigid", "sliding"},
	"Moving":      {"along-grain", "across-grain"},
	"LengthUnit":  {"mm", "cm", "in"},
	"Species":     {"birch", "beech", "oak", "maple", "walnut", "ash", "cherry", "poplar", "lime", "alder", "mahogany", "okoume", "lauan", "eucalyptus", "spruce", "pine", "fir", "larch", "cedar", "other"},
	"Resin":       {"dammar", "mastic", "copal", "shellac", "acrylic-resin", "acrylic-dispersion", "hydrocarbon", "ketone", "urea-aldehyde", "alkyd", "wax", "polyurethane", "other"},
	"Solvent":     {"water", "white-spirit", "low-aromatic-spirit", "turpentine", "spike-oil", "citrus-terpene", "ethanol", "isopropanol", "acetone", "xylene", "toluene", "ethyl-acetate", "glycol-ether", "drying-oil", "other"},
	"Tool":        {"brush", "foam-brush", "roller", "squeegee", "trowel", "palette-knife", "spray", "pad", "sponge", "cloth", "screen", "pour", "dip", "hand", "knife", "scissors", "rotary-cutter", "saw", "other"},
	"Basis":       {"typical", "data-sheet", "measured", "other"},
	"Along":       {"height", "width", "diagonal"},
	"Recorded":    {"as-made", "afterwards"},
	"Voice":       {"i", "we"},
	"Extent":      {"whole", "reduced", "in-part"},
	"Means":       {"solvent", "scalpel", "sanding", "water", "heat", "peeling", "other"},
	"Stratum":     {"varnish", "retouching", "paint", "isolation", "ground", "cloth", "sealer", "size", "barrier", "other"},
	"Resizing":    {"cut-down", "enlarged"},
	"Mark":        {"knot", "joint", "repair", "filling", "dent", "crack", "hole", "stain", "other"},
}

// Words returns the words a closed list takes, by the name of its type, for
// help texts and the published schema.
func Words(list string) []string { return closed[list] }

// TakesUnknown reports whether a closed list also takes "unknown".
func TakesUnknown(list string) bool {
	return list != "LengthUnit" && list != "Voice" && list != "Recorded"
}

// The remaining closed lists, each a word of the trade.
type (
	// Grain is the direction of a board's face grain: along height or width.
	Grain string
	// Weave is how a cloth is woven (ISO 3572 terms).
	Weave string
	// Fibre is what a cloth is spun from.
	Fibre string
	// ThreadRun is the run of the warp against the board's face grain.
	ThreadRun string
	// GritScale is the scale of an abrasive: P (ISO 6344) or CAMI.
	GritScale string
	// Gloss is the sheen of a film.
	Gloss string
	// Sound is a finding of an inspection.
	Sound string
	// Toward is the face a bowed panel is hollow to, or flat.
	Toward string
	// OilContent compares a layer with the one below it.
	OilContent string
	// Film says whether a layer is thin or thick.
	Film string
	// Parting is how a panel left or came back.
	Parting string
	// Bracing is what stiffens the back.
	Bracing string
	// Fixing says whether bracing lets the board move.
	Fixing string
	// Moving is the run of bracing against the face grain.
	Moving string
	// LengthUnit is the unit a studio measures in.
	LengthUnit string
	// Along is the direction in which a bow was measured.
	Along string
	// Recorded says whether the making was written down as it happened, so that
	// what is absent was not done, or afterwards, so that it is only not recorded.
	Recorded string
	// Voice is whether a maker speaks as one or as several.
	Voice string
	// Extent is how much of a layer was taken off.
	Extent string
	// Means is how a layer was taken off.
	Means string
	// Stratum is what sort of layer was taken off.
	Stratum string
	// Resizing is how the size of a panel was changed.
	Resizing string
	// Mark is a feature of a board at one place.
	Mark string
)
