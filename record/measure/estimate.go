package measure

import (
	"fmt"
	"math"

	"backleaf/record"
)

// FilmStress is the range of stress, in MPa, in a restrained film of the kind.
// [ErrNoFigure] for every other binder: none is guessed.
func FilmStress(film record.Binder) (Range, error) {
	switch film {
	case record.Acrylic:
		return Range{0.1, 1, Source{Memory, "the literature on film formation of soft dispersions, order of magnitude; it relaxes"}}, nil
	case record.AnimalGlue:
		return Range{20, 30, Source{Memory, "Mecklenburg 1982 and 1991, restrained hide glue dried to about 10 to 15 % RH; far lower in a room"}}, nil
	case record.DryingOil:
		// Eε/(1-ν) with E 0.1 to 1 GPa, ε 0.2 to 0.3 %, ν 0.3.
		return Range{0.1e3 * 0.002 / 0.7, 1e3 * 0.003 / 0.7, Source{Computed,
			"the elastic bound: 0.2 to 0.3 % shrinkage (Hough and Michalski 2023) with 0.1 to 1 GPa (from memory of Mecklenburg)"}}, nil
	}
	return Range{}, fmt.Errorf("film stress of %q: %w", string(film), ErrNoFigure)
}

// ClothTension is the range of line tension, in N/m, of one cloth laid wet on
// a board. Nobody seems to have published that; the figure is that of canvas
// on a stretcher.
func ClothTension() Range {
	return Range{100, 300, Source{Memory, "usual tensions of canvas on a stretcher"}}
}

// Pull is one kind of film or cloth on both faces. PerUnit is what one unit of
// it pulls: for films the stress in MPa, with the total dry thickness in µm on
// each face as the amounts; for cloth the line tension in N/m, with the number
// of cloths. Both products are N/m.
//
// Coats of one kind are one Pull: whatever the stress is, it is the same on
// both faces, and equal amounts cancel.
type Pull struct {
	PerUnit     Range
	Front, Back float64
}

// BowEstimate is the range of bow, in µm over the span, that unequal films and
// cloths can cause: [TensionCurvature] and [BowMicrons] with the low and the
// high pull of each kind. Low <= High, with the sign of curvature: positive is
// hollow at the front. Print it as "estimate, upper bound".
//
// Amounts 0 to 20000, pull per unit 0 to 1000, up to 100 kinds.
func BowEstimate(sheet Sheet, spanMicrons float64, pulls []Pull) (Range, error) {
	if len(pulls) > 100 {
		return Range{}, fmt.Errorf("a bow from %d kinds of pull: 100 at most", len(pulls))
	}
	var low, high float64
	for _, p := range pulls {
		if err := first(
			within("pull per unit", p.PerUnit.Low, 0, 1000, ""),
			within("pull per unit", p.PerUnit.High, p.PerUnit.Low, 1000, ""),
			within("amount at the front", p.Front, 0, 20000, ""),
			within("amount at the back", p.Back, 0, 20000, ""),
		); err != nil {
			return Range{}, err
		}
		net := p.Front - p.Back
		low += math.Min(net*p.PerUnit.Low, net*p.PerUnit.High)
		high += math.Max(net*p.PerUnit.Low, net*p.PerUnit.High)
	}
	bow := func(tension float64) (float64, error) {
		k, err := TensionCurvature(sheet, tension, 0)
		if err != nil {
			return 0, err
		}
		return BowMicrons(k, spanMicrons)
	}
	lowBow, err := bow(low)
	if err != nil {
		return Range{}, err
	}
	highBow, err := bow(high)
	if err != nil {
		return Range{}, err
	}
	return Range{lowBow, highBow, Source{Computed, "Stoney's formula, elastic: an upper bound"}}, nil
}

// BowGrade says how much a bow is for its span.
type BowGrade int

// The grades. Common practice, set beside one published case: a conservator
// called 1.5 to 2 mm over 30 in, 0.20 to 0.26 %, very minor.
const (
	BowSlight BowGrade = iota // under 0.2 % of the span
	BowMarked                 // 0.2 to 0.5 %
	BowStrong                 // over 0.5 %
)

// GradeBow grades a bow, of either sign, against the span it was measured or
// estimated over. Bow -2e7 to 2e7 µm, span 1000 to 2e7 µm.
func GradeBow(bowMicrons, spanMicrons float64) (BowGrade, error) {
	if err := first(
		within("bow", bowMicrons, -2e7, 2e7, "µm"),
		checkSpan("span", spanMicrons),
	); err != nil {
		return BowSlight, err
	}
	// Multiplied out, so that a bow of exactly 0.2 or 0.5 % is not lost to rounding.
	switch bow := math.Abs(bowMicrons) * 1000; {
	case bow < 2*spanMicrons:
		return BowSlight, nil
	case bow <= 5*spanMicrons:
		return BowMarked, nil
	}
	return BowStrong, nil
}
