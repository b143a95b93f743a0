package measure

import (
	"fmt"

	"backleaf/record"
)

// Stiffness is the modulus of elasticity in bending of a board, for bending
// along the grain of the face and across it, with Poisson's ratio.
// LowConfidence marks a figure that stands in for one nobody sets.
type Stiffness struct {
	AlongMPa, AcrossMPa float64
	Poisson             float64
	LowConfidence       bool
	Source              Source
}

// birchMPa is the modulus of a birch veneer along its grain that reproduces
// the handbook values; across its grain it counts as nothing.
const birchMPa = 17500

// FibreboardStiffness is the stiffness of MDF or hardboard, the same both
// ways, Poisson 0.3 (common practice). Thickness 500 to 100000 µm.
//
// MDF follows EN 622-5 (dry, general purpose) by thickness. That standard sets
// no modulus up to 4 mm; there the next figure stands in, which is on the soft
// side and keeps a bow an upper bound. Hardboard is the middle of the range
// remembered from the Wood Handbook. [ErrNoFigure] for any other board.
func FibreboardStiffness(board record.BoardKind, thicknessMicrons float64) (Stiffness, error) {
	if err := checkBoardThickness(thicknessMicrons); err != nil {
		return Stiffness{}, err
	}
	even := func(mpa float64, low bool, source Source) (Stiffness, error) {
		return Stiffness{mpa, mpa, 0.3, low, source}, nil
	}
	read := Source{Published, "MDF data sheet to EN 622-5"}
	switch {
	case board == record.Hardboard:
		return even(4500, false, Source{Memory, "Wood Handbook table 12-1, mid-range"})
	case board != record.MDF:
		return Stiffness{}, noFigure("stiffness", board)
	case thicknessMicrons <= 4000:
		return even(2700, true, Source{Memory, "EN 622-5, which sets no modulus up to 4 mm: its figure for 4 to 6 mm"})
	case thicknessMicrons <= 6000:
		return even(2700, false, Source{Memory, "EN 622-5"})
	case thicknessMicrons <= 9000:
		return even(2700, false, read)
	case thicknessMicrons <= 12000:
		return even(2500, false, read)
	case thicknessMicrons <= 19000:
		return even(2200, false, read)
	case thicknessMicrons <= 30000:
		return even(2100, false, read)
	case thicknessMicrons <= 45000:
		return even(1900, false, read)
	}
	return Stiffness{}, fmt.Errorf("stiffness of mdf of %.6g µm: %w", thicknessMicrons, ErrNoFigure)
}

// PlywoodStiffness is the stiffness of birch plywood from its veneers, listed
// from one face to the other in micrometres, with the grain crossing at each
// glue line. Along the face grain
//
//	E = 17500/h³ * sum over plies with that grain of 4*(z2³ - z1³)
//
// with z from the middle of the board, and across it 17500 - E. Poisson 0
// (common practice: 0 to 0.1). An odd number of plies from 3 to 49, each 100
// to 10000 µm. Source: lamination theory; veneers of 1.4 mm under
// faces of 1.1 reproduce the means of the Finnish plywood handbook.
func PlywoodStiffness(veneersMicrons []float64) (Stiffness, error) {
	if err := checkPlies(len(veneersMicrons)); err != nil {
		return Stiffness{}, err
	}
	h := 0.0
	for _, t := range veneersMicrons {
		if err := within("veneer thickness", t, 100, 10000, "µm"); err != nil {
			return Stiffness{}, err
		}
		h += t
	}
	// Coordinates as a fraction of the thickness keep the cubes near one.
	sum, z1 := 0.0, -0.5
	for i, t := range veneersMicrons {
		z2 := z1 + t/h
		if i%2 == 0 {
			sum += 4 * (z2*z2*z2 - z1*z1*z1)
		}
		z1 = z2
	}
	along := birchMPa * sum
	return Stiffness{AlongMPa: along, AcrossMPa: birchMPa - along,
		Source: Source{Computed, "lamination of birch veneers of 17 500 N/mm²"}}, nil
}

// EqualVeneers divides a thickness (500 to 100000 µm) evenly between plies,
// for a board whose veneers were not measured.
func EqualVeneers(plies int, thicknessMicrons float64) ([]float64, error) {
	if err := first(checkPlies(plies), checkBoardThickness(thicknessMicrons)); err != nil {
		return nil, err
	}
	veneers := make([]float64, plies)
	for i := range veneers {
		veneers[i] = thicknessMicrons / float64(plies)
	}
	return veneers, nil
}

func checkPlies(plies int) error {
	if plies < 3 || plies > 49 || plies%2 == 0 {
		return fmt.Errorf("plywood of %d plies: the number must be odd, from 3 to 49", plies)
	}
	return nil
}

// birchPlies is the data sheet of birch plywood by thickness as delivered.
var birchPlies = []struct {
	plies                  int
	minMicrons, maxMicrons float64
}{
	{3, 3500, 4100}, {5, 6100, 6900}, {7, 8800, 9500}, {9, 11500, 12500}, {11, 14300, 15300}, {13, 17100, 18100},
}

// BirchPlies is the number of plies of birch plywood with veneers of 1.4 mm
// from its measured thickness. [ErrNoFigure] where the data sheet has no board
// of that thickness: thinner boards are made of thinner veneers, whose number
// has to be counted at the edge. Source: birch plywood data sheet.
func BirchPlies(thicknessMicrons float64) (int, error) {
	if err := checkBoardThickness(thicknessMicrons); err != nil {
		return 0, err
	}
	for _, b := range birchPlies {
		if thicknessMicrons >= b.minMicrons && thicknessMicrons <= b.maxMicrons {
			return b.plies, nil
		}
	}
	return 0, fmt.Errorf("plies of birch plywood of %.6g µm: %w", thicknessMicrons, ErrNoFigure)
}
