package measure

import (
	"fmt"

	"backleaf/record"
)

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

// EmissionLimit is one limit: at most Value in Unit by the named Test.
// Chambers differ in load and air change, so limits of two tests are never
// compared by converting units alone.
type EmissionLimit struct {
	Class  EmissionClass
	Value  float64
	Unit   string // ppm, mg/m³, mg/100 g or mg/L
	Test   string
	From   string // date in force where it matters, YYYY-MM-DD
	Source Source

	board record.BoardKind // empty: every wood-based board
	thin  bool             // of MDF: up to 8 mm (ANSI A208.2; from memory also 40 CFR 770)
}

// emissionLimits is the whole table. A limit is law of a place and a date: add
// a row, do not change one.
var emissionLimits = []EmissionLimit{
	{TSCATitleVI, 0.05, "ppm", "ASTM E1333 chamber", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}, record.Plywood, false},
	{TSCATitleVI, 0.09, "ppm", "ASTM E1333 chamber", "", Source{Published, "a laboratory's press release on the US rule, 2017"}, record.Particleboard, false},
	{TSCATitleVI, 0.11, "ppm", "ASTM E1333 chamber", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}, record.MDF, false},
	{TSCATitleVI, 0.13, "ppm", "ASTM E1333 chamber", "", Source{Published, "a laboratory's press release on the US rule, 2017"}, record.MDF, true},
	{ULEF, 0.05, "ppm", "ASTM E1333 chamber, 90 % of tests at most 0.04", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}, record.Plywood, false},
	{ULEF, 0.06, "ppm", "ASTM E1333 chamber, 90 % of tests at most 0.04", "", Source{Published, "Public Law 111-199, 124 Stat. 1363"}, "", false},
	{E1, 0.124, "mg/m³", "EN 717-1 chamber", "", Source{Published, "a comparison table of formaldehyde classes"}, "", false},
	{E2Perforator, 30, "mg/100 g", "perforator", "", Source{Published, "board makers' specifications"}, "", false},
	{REACH77, 0.062, "mg/m³", "chamber", "2026-08-06", Source{Memory, "Regulation (EU) 2023/1464"}, "", false},
	{FourStar, 0.3, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}, "", false},
	{ThreeStar, 0.5, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}, "", false},
	{TwoStar, 1.5, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}, "", false},
	{OneStar, 5.0, "mg/L", "desiccator, mean", "", Source{Published, "a note on the F-star classes"}, "", false},
}

const thinMDFMicrons = 8000

// EmissionLimitOf is the limit of a class for a board of a thickness, 0 where
// that is not known: MDF then counts as thick, whose limit is the lower.
// [ErrNoFigure] if the table has none; a class it does not know is no pass, and
// hardboard falls outside the US limits (from memory).
func EmissionLimitOf(class EmissionClass, board record.BoardKind, thicknessMicrons float64) (EmissionLimit, error) {
	thin := board == record.MDF && thicknessMicrons > 0 && thicknessMicrons <= thinMDFMicrons
	for _, l := range emissionLimits {
		if l.Class == class && (l.board == "" || l.board == board && l.thin == thin) {
			return l, nil
		}
	}
	return EmissionLimit{}, noFigure(fmt.Sprintf("formaldehyde limit of class %q", string(class)), board)
}
