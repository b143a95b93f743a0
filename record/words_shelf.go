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
