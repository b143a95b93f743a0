package trade

import "backleaf/record"

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
