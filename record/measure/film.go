package measure

// MicronsPerMil is exact: a mil is a thousandth of an inch of 25.4 mm.
const MicronsPerMil = 25.4

// waterGramsPerML is the density of water at about 21 °C.
const waterGramsPerML = 0.998

// squareFeetMilsPerGallon is what one US gallon (231 in³) covers one mil thick:
// 231/144/0.001 = 1604.1667 ft². Paint bulletins print it as 1604.
const squareFeetMilsPerGallon = 231.0 / 144 / 0.001

func checkArea(areaSquareMetres float64) error {
	return within("area", areaSquareMetres, 1e-4, 1000, "m²")
}

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

// WetMicrons is the mean wet thickness of a coat from what was used of it:
//
//	mass / (density * area)
//
// since one g/m² of a liquid of 1 g/mL stands 1 µm high. Mass 0.001 to 100000
// g, density 0.5 to 5 g/mL, area 0.0001 to 1000 m². What stays in the brush
// and what the board drinks counts as film, so this is an upper bound.
// Source: definition of density.
func WetMicrons(massGrams, densityGramsPerML, areaSquareMetres float64) (float64, error) {
	if err := first(
		within("mass", massGrams, 0.001, 1e5, "g"),
		checkDensity(densityGramsPerML),
		checkArea(areaSquareMetres),
	); err != nil {
		return 0, err
	}
	return massGrams / (densityGramsPerML * areaSquareMetres), nil
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

// WetMicronsFor is the wet thickness to lay for a wanted dry one, the inverse
// of [DryMicrons] with the same ranges and source:
//
//	dry * (1 + thinner) / VS
func WetMicronsFor(dryMicrons, volumeSolids, thinner float64) (float64, error) {
	if err := first(
		checkFilm("dry thickness", dryMicrons),
		checkVolumeSolids(volumeSolids),
		checkThinner(thinner),
	); err != nil {
		return 0, err
	}
	return dryMicrons * (1 + thinner) / volumeSolids, nil
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

// SquareMetresPerLitre is the spreading rate for a dry thickness in
// micrometres, without loss:
//
//	1000 * VS / dry
//
// Ranges as in [DryMicrons]. Source: coating makers' spreading rate notes.
func SquareMetresPerLitre(volumeSolids, dryMicrons float64) (float64, error) {
	if err := first(
		checkVolumeSolids(volumeSolids),
		checkFilm("dry thickness", dryMicrons),
	); err != nil {
		return 0, err
	}
	return 1000 * volumeSolids / dryMicrons, nil
}

// SquareFeetPerGallon is the spreading rate in US measure for a dry thickness
// in mils (0.0005 to 800), without loss:
//
//	1604.1667 * VS / dry
//
// Source: coating makers' spreading rate notes, which print 1604.
func SquareFeetPerGallon(volumeSolids, dryMils float64) (float64, error) {
	if err := first(
		checkVolumeSolids(volumeSolids),
		within("dry thickness", dryMils, 0.0005, 800, "mil"),
	); err != nil {
		return 0, err
	}
	return squareFeetMilsPerGallon * volumeSolids / dryMils, nil
}

// WaterGramsPerSquareMetre is the water that a wet film gives off or up:
//
//	wet * water fraction by volume * 0.998
//
// Wet 0.01 to 20000 µm, water 0 to 1. Source: density of water at 21 °C.
func WaterGramsPerSquareMetre(wetMicrons, waterByVolume float64) (float64, error) {
	if err := first(
		checkFilm("wet thickness", wetMicrons),
		within("water", waterByVolume, 0, 1, "as a fraction of volume"),
	); err != nil {
		return 0, err
	}
	return wetMicrons * waterByVolume * waterGramsPerML, nil
}
