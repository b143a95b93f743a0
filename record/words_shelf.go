package record

import (
	"slices"
	"strings"
)

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
	// Basis is where the values of a material come from.
	Basis string
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

// sayings are ways in which people say a word of a closed list.
var sayings = map[string]map[string]string{
	"Solvent": {"mineral-spirits": "white-spirit", "alcohol": "ethanol", "methylated-spirit": "ethanol", "linseed-oil": "drying-oil"},
	"Basis":   {"typical,-common-practice": "typical", "common-practice": "typical"},
	"Tool":    {"fresh-blade": "knife", "blade": "knife"},
}

// WordIn looks up what somebody wrote in one closed list: the word itself, a
// saying for it, or its last part ("distilled water" is water). It is empty
// where nothing fits; it never guesses.
func WordIn(list, text string) string {
	t := strings.Join(strings.Fields(strings.ToLower(text)), "-")
	fits := func(s string) string {
		if w, ok := sayings[list][s]; ok {
			return w
		}
		if s != "other" && slices.Contains(closed[list], s) {
			return s
		}
		return ""
	}
	if w := fits(t); w != "" {
		return w
	}
	return fits(t[strings.LastIndexByte(t, '-')+1:])
}
