package measure

// waterGramsPerML is the density of water at about 21 °C.
const waterGramsPerML = 0.998

func checkDensity(gramsPerML float64) error {
	return within("density", gramsPerML, 0.5, 5, "g/mL")
}

func checkFilm(what string, microns float64) error {
	return within(what, microns, 0.01, 20000, "µm")
}

func checkVolumeSolids(fraction float64) error {
	return within("volume solids", fraction, 0.001, 1, "as a fraction")
}

func checkThinner(fraction float64) error {
	return within("thinner", fraction, 0, 20, "as a fraction of the product's volume")
}

// WetMicrons is the mean wet thickness of a coat from the volume that was laid,
// 0.001 to 1e8 µL, over an area of 1 to 1e9 mm²:
//
//	1000 * volume / area
//
// What stays in the brush and what the board drinks counts as film, so this is
// an upper bound. Source: geometry.
func WetMicrons(microliters, squareMillimetres float64) (float64, error) {
	if err := first(within("volume", microliters, 0.001, 1e8, "µL"), within("area", squareMillimetres, 1, 1e9, "mm²")); err != nil {
		return 0, err
	}
	return 1000 * microliters / squareMillimetres, nil
}

// DryMicrons is the dry thickness left by a wet film:
//
//	wet * VS / (1 + thinner)
//
// volumeSolids is the fraction (0.001 to 1) of the product as sold, thinner
// the volume added per volume of product (0 to 20). Wet 0.01 to 20000 µm.
// Source: coating makers' conversion bulletins.
func DryMicrons(wetMicrons, volumeSolids, thinner float64) (float64, error) {
	if err := first(
		checkFilm("wet thickness", wetMicrons),
		checkVolumeSolids(volumeSolids),
		checkThinner(thinner),
	); err != nil {
		return 0, err
	}
	return wetMicrons * volumeSolids / (1 + thinner), nil
}

// VolumeSolids is the volume fraction of solids of a water-borne product from
// its mass fraction of solids (0.001 to 1) and its density (0.5 to 5 g/mL):
//
//	1 - (1 - mass solids) * density / 0.998
//
// It holds only where water is the one thing that leaves. A pair that cannot
// be (more water than volume) is refused. Source: computed from the masses.
func VolumeSolids(massSolids, densityGramsPerML float64) (float64, error) {
	if err := first(
		within("mass solids", massSolids, 0.001, 1, "as a fraction"),
		checkDensity(densityGramsPerML),
	); err != nil {
		return 0, err
	}
	solids := 1 - (1-massSolids)*densityGramsPerML/waterGramsPerML
	if err := within("mass solids and density do not belong together: volume solids",
		solids, 0.001, 1, "as a fraction"); err != nil {
		return 0, err
	}
	return solids, nil
}
