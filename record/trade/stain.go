package trade

import "backleaf/record"

// Need is how much a step is called for.
type Need string

// Needs.
const (
	Advised  Need = "advised"
	Optional Need = "optional"
	Needless Need = "needless"
	SizeIt   Need = "size-instead" // a size does what is wanted
)

// StainBlock says whether a stain block is called for below the ground under a
// paint. What comes through from the support is seen in pale or clear acrylic,
// and a ground alone does not stop it; pale answers whether the face is to stay
// pale, clear or glazed.
func StainBlock(paint Stratum, pale record.Answer) (Need, Standing) {
	switch paint {
	case AcrylicPaint, AcrylicMedium, AcrylicVarnish, Vinyl:
		if pale == yes {
			return Advised, standing("maker-discolouration panel-maker maker-plywood")
		}
		return Optional, standing("maker-plywood")
	case OilPaint, Alkyd:
		return Needless, standing("maker-plywood MITRA-wood-oil")
	case EggTempera, Emulsion, Casein, Distemper, GumColour:
		return SizeIt, standing("memory")
	}
	return Optional, standing("maker-plywood")
}

// stains are supports that give stains off into a wet acrylic film.
var stains = map[Stratum]record.Answer{
	BareWood: yes, BareMDF: yes, BareHardboard: yes, RawLinen: yes, RawCotton: yes, BareComposite: no,
}

// Stains answers whether a support, by what it may be, gives off stains.
func Stains(support Strata) record.Answer {
	var as []record.Answer
	for _, s := range support {
		a, ok := stains[s]
		if !ok {
			a = maybe
		}
		as = append(as, a)
	}
	return agreed(as)
}
