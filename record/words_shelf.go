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

// names are other names that the trade has for a word of a closed list, a stage, an
// order of panels or a rule, each without blanks.
var names = map[string]string{
	"ground": "primer prime priming primed gesso undercoat", "sealer": "sealant sealing seal", "size": "sizing sized", "adhesive": "glue paste",
	"stain-block": "stain-blocker blocker", "isolation": "isolating", "front": "recto face face-side", "back": "rear reverse verso backside",
	"edges": "side sides rim borders", "cloth": "canvas fabric textile", "thinner": "diluent",
	"linen": "flax", "hardboard": "hdf", "particleboard": "chipboard", "solid-wood": "wood timber", "aluminium-composite": "acm aluminum-composite",
	"animal-glue": "rabbit-skin-glue rabbit-skin hide-glue bone-glue skin-glue gelatine gelatin glue", "cellulose-ether": "methylcellulose methyl-cellulose",
	"gum": "gum-arabic", "drying-oil": "linseed-oil walnut-oil poppy-oil", "plain": "tabby plain-weave canvas-weave", "encaustic": "wax", "egg-tempera": "tempera",
	"satin": "semi-gloss semi-matt eggshell silk", "gloss": "shiny glossy", "matt": "flat dull", "flat": "even straight plane", "battens": "batten bars",
	"strainer": "stretcher subframe", "gift": "give given donation donated", "loan": "lent borrowed lend", "return": "returned back found recovered home",
	"sale": "sell", "theft": "stolen", "loss": "lost missing", "varnish": "varnishing", "retouching": "inpainting retouch", "scalpel": "knife blade scraping",
	"solvent": "swab swabs", "sanding": "sandpaper sand abrasion", "cut-down": "trimmed sawn reduced smaller", "enlarged": "larger extended",
	"crack": "split check", "filling": "filler putty", "dent": "gouge ding", "sound": "good fine ok", "loose": "detached",
	"white-spirit": "mineral-spirits mineral-spirit", "ethanol": "alcohol methylated-spirit meths", "typical": "typical,-common-practice common-practice",
	"knife": "fresh-blade blade", "ground laid": "primed primer prime gesso gessoed prepared ground", "cloth laid": "canvas cloth glued clothed", "sealed": "sized",
	"board": "bare blank raw cut support substrate panel", "varnished": "finished", "made": "date year", "title": "name", "where": "place", "studio": "here home returned",
	"balanced-pull": "flat bow warp warped", "layers-hold": "fat-over-lean dry", "toxic-layers": "lead", "sanded-after-cure": "cured",
}

// called reports that a text is another name for a word.
func called(word, text string) bool { return slices.Contains(strings.Fields(names[word]), text) }

// WordIn looks up what somebody wrote in one closed list: the word itself,
// another name for it, or its last part ("distilled water" is water). It is
// empty where nothing fits; it never guesses.
func WordIn(list, text string) string {
	t := hyphened(text)
	fits := func(s string) string {
		for _, w := range closed[list] {
			if called(w, s) || w == s && s != "other" {
				return w
			}
		}
		return ""
	}
	if w := fits(t); w != "" {
		return w
	}
	return fits(t[strings.LastIndexByte(t, '-')+1:])
}

func hyphened(text string) string { return strings.Join(strings.Fields(strings.ToLower(text)), "-") }
