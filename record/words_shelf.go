package record

// The closed words of the shelf and the bench: woods, resins of varnish,
// solvents and tools. What a maker prints on the tin ("odourless mineral
// spirits, type 2") stands beside such a word as free text, and no rule hangs
// on that text.
type (
	// Species is the wood of a board or of its veneers, by its common name.
	Species string
	// Resin is the resin class of a varnish.
	Resin string
	// Solvent is what thins a material or takes it off again.
	Solvent string
	// Tool is what a coat was laid, or cloth cut, with.
	Tool string
)

// Woods.
const (
	Birch      Species = "birch"
	Beech      Species = "beech"
	Oak        Species = "oak"
	Maple      Species = "maple"
	Walnut     Species = "walnut"
	Ash        Species = "ash"
	Cherry     Species = "cherry"
	Poplar     Species = "poplar"
	Lime       Species = "lime"
	Alder      Species = "alder"
	Mahogany   Species = "mahogany"
	Okoume     Species = "okoume"
	Lauan      Species = "lauan"
	Eucalyptus Species = "eucalyptus"
	Spruce     Species = "spruce"
	Pine       Species = "pine"
	Fir        Species = "fir"
	Larch      Species = "larch"
	Cedar      Species = "cedar"
)

// Resins of varnish.
const (
	Dammar           Resin = "dammar"
	Mastic           Resin = "mastic"
	Copal            Resin = "copal"
	ShellacResin     Resin = "shellac"
	AcrylicInSolvent Resin = "acrylic-resin"
	AcrylicInWater   Resin = "acrylic-dispersion"
	Hydrocarbon      Resin = "hydrocarbon"
	Ketone           Resin = "ketone"
	UreaAldehyde     Resin = "urea-aldehyde"
	AlkydResin       Resin = "alkyd"
	WaxResin         Resin = "wax"
	PolyurethaneRs   Resin = "polyurethane"
)

// Solvents.
const (
	Water         Solvent = "water"
	WhiteSpirit   Solvent = "white-spirit"
	LowAromatic   Solvent = "low-aromatic-spirit"
	Turpentine    Solvent = "turpentine"
	SpikeOil      Solvent = "spike-oil"
	CitrusTerpene Solvent = "citrus-terpene"
	Ethanol       Solvent = "ethanol"
	Isopropanol   Solvent = "isopropanol"
	Acetone       Solvent = "acetone"
	Xylene        Solvent = "xylene"
	Toluene       Solvent = "toluene"
	EthylAcetate  Solvent = "ethyl-acetate"
	GlycolEther   Solvent = "glycol-ether"
	LinseedOil    Solvent = "drying-oil"
)

// shelfWords are the lists of this file, in the order of the help.
var shelfWords = map[string][]string{
	"Species": {"birch", "beech", "oak", "maple", "walnut", "ash", "cherry", "poplar", "lime", "alder", "mahogany", "okoume", "lauan", "eucalyptus", "spruce", "pine", "fir", "larch", "cedar", "other"},
	"Resin":   {"dammar", "mastic", "copal", "shellac", "acrylic-resin", "acrylic-dispersion", "hydrocarbon", "ketone", "urea-aldehyde", "alkyd", "wax", "polyurethane", "other"},
	"Solvent": {"water", "white-spirit", "low-aromatic-spirit", "turpentine", "spike-oil", "citrus-terpene", "ethanol", "isopropanol", "acetone", "xylene", "toluene", "ethyl-acetate", "glycol-ether", "drying-oil", "other"},
	"Tool":    {"brush", "foam-brush", "roller", "squeegee", "trowel", "palette-knife", "spray", "pad", "sponge", "cloth", "screen", "pour", "dip", "hand", "knife", "scissors", "rotary-cutter", "saw", "other"},
}
