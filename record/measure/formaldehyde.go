package measure

import "fmt"

// EmissionClass is a formaldehyde class as printed on a board.
type EmissionClass string

// The classes with a limit that the table knows. E2 is
// given by the perforator test.
const (
	TSCATitleVI  EmissionClass = "TSCA Title VI" // the same limits as California phase 2
	ULEF         EmissionClass = "ULEF"          // exempt from part of the US testing
	E1           EmissionClass = "E1"
	E2Perforator EmissionClass = "E2 (perforator)"
	REACH77      EmissionClass = "REACH Annex XVII entry 77"
	FourStar     EmissionClass = "F****"
	ThreeStar    EmissionClass = "F***"
	TwoStar      EmissionClass = "F**"
	OneStar      EmissionClass = "F*"
)

// Product is the kind of board in the sense of the US limits.
type Product string

// The products that have a US limit. Hardboard is none of them.
const (
	HardwoodPlywood Product = "hardwood plywood"
	Particleboard   Product = "particleboard"
	MediumDensity   Product = "mdf"
	ThinMDF         Product = "thin mdf"
)

// ProductOf is the US product kind of a board of the given thickness (500 to
// 100000 µm): MDF counts as thin up to 8 mm (ANSI A208.2; from memory also 40
// CFR 770). [ErrNoFigure] for hardboard, which falls outside (from memory), and
// for any other board.
func ProductOf(board Board, thicknessMicrons float64) (Product, error) {
	if err := checkBoardThickness(thicknessMicrons); err != nil {
		return "", err
	}
	switch {
	case board == Plywood:
		return HardwoodPlywood, nil
	case board == MDF && thicknessMicrons <= 8000:
		return ThinMDF, nil
	case board == MDF:
		return MediumDensity, nil
	}
	return "", noFigure("formaldehyde limit", board)
}

// EmissionLimit is one limit: at most Value in Unit by the named Test.
// Chambers differ in load and air change, so limits of two tests are never
// compared by converting units alone.
type EmissionLimit struct {
	Class   EmissionClass
	Product Product // empty: every wood-based board
	Value   float64
	Unit    string // ppm, mg/m³, mg/100 g or mg/L
	Test    string
	From    string // date in force where it matters, YYYY-MM-DD
	Source  Source
}

// emissionLimits is the whole table. A limit is law of a place and a date: add
// a row, do not change one.
var emissionLimits = []EmissionLimit{
	{TSCATitleVI, HardwoodPlywood, 0.05, "ppm", "ASTM E1333 chamber", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}},
	{TSCATitleVI, Particleboard, 0.09, "ppm", "ASTM E1333 chamber", "", Source{Published, "a laboratory's press release on the US rule, 2017"}},
	{TSCATitleVI, MediumDensity, 0.11, "ppm", "ASTM E1333 chamber", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}},
	{TSCATitleVI, ThinMDF, 0.13, "ppm", "ASTM E1333 chamber", "", Source{Published, "a laboratory's press release on the US rule, 2017"}},
	{ULEF, HardwoodPlywood, 0.05, "ppm", "ASTM E1333 chamber, 90 % of tests at most 0.04", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}},
	{ULEF, "", 0.06, "ppm", "ASTM E1333 chamber, 90 % of tests at most 0.04", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}},
	{E1, "", 0.124, "mg/m³", "EN 717-1 chamber", "", Source{Published, "a comparison table of formaldehyde classes"}},
	{E2Perforator, "", 30, "mg/100 g", "perforator", "", Source{Published, "board makers' specifications"}},
	{REACH77, "", 0.062, "mg/m³", "chamber", "2026-08-06", Source{Memory, "Regulation (EU) 2023/1464"}},
	{FourStar, "", 0.3, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}},
	{ThreeStar, "", 0.5, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}},
	{TwoStar, "", 1.5, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}},
	{OneStar, "", 5.0, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}},
}

// EmissionLimitOf is the limit of a class for a product. [ErrNoFigure] if the
// table has none; a class it does not know is no pass.
func EmissionLimitOf(class EmissionClass, product Product) (EmissionLimit, error) {
	for _, l := range emissionLimits {
		if l.Class == class && (l.Product == product || l.Product == "") {
			return l, nil
		}
	}
	return EmissionLimit{}, fmt.Errorf("formaldehyde limit of class %q for %q: %w", string(class), string(product), ErrNoFigure)
}
