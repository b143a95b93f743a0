package trade

import "slices"

// Hazard is what in a pigment can harm whoever sands, scrapes, heats or burns
// the film. Looking at a dry film, hanging it and dusting it with a soft brush
// set nothing free (from memory).
type Hazard string

// Hazards.
const (
	Lead       Hazard = "lead"
	Cadmium    Hazard = "cadmium"
	Mercury    Hazard = "mercury"
	Arsenic    Hazard = "arsenic"
	ChromiumVI Hazard = "chromium-vi"
	Barium     Hazard = "barium" // compounds that acid dissolves; barium sulfate is none
	Antimony   Hazard = "antimony"
	Cobalt     Hazard = "cobalt"
	Nickel     Hazard = "nickel"
	Manganese  Hazard = "manganese"
)

// Hazards lists all hazards, the gravest first.
var Hazards = []Hazard{Lead, Cadmium, Mercury, Arsenic, ChromiumVI, Barium, Antimony, Cobalt, Nickel, Manganese}

// grave are the hazards of which a label warns. Cobalt, nickel and manganese,
// and whatever is locked in a spinel or rutile lattice, are named and not
// warned of (from memory).
var grave = Hazards[:7]

func (h Hazard) grave() bool { return slices.Contains(grave, h) }
