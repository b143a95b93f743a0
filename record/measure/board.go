package measure

import (
	"fmt"

	"backleaf/record"
)

func noFigure(what string, board record.BoardKind) error {
	return fmt.Errorf("%s of %q: %w", what, string(board), ErrNoFigure)
}

// Movement is how far a board grows in its plane, as strain per 1 % of
// relative humidity: the span of the published figures and the value to plan
// with. LowConfidence marks a board for which they are thin or disagree. A
// user with a figure of their own makes a Movement of it.
type Movement struct {
	Low, Likely, High float64 // strain per 1 % RH
	LowConfidence     bool
	Source            Source
}

// MovementOf is the in-plane movement of a board with the change of humidity,
// linear and the same both ways. [ErrNoFigure] for any other board: solid wood
// moves by species and by direction of grain.
func MovementOf(board record.BoardKind) (Movement, error) {
	switch board {
	case record.Plywood:
		// 0.15 % over 30 to 90 % RH for sheathing (from memory of the Wood
		// Handbook, 1999) is 2.5e-5 and gives the upper end.
		return Movement{2.0e-5, 2.0e-5, 2.5e-5, false,
			Source{Published, "the plywood association's figure of 0.02 % per 10 % RH"}}, nil
	case record.MDF:
		// 0.05 % per 1 % MC, +5 % MC from 35 to 85 % RH, is 5e-5; another
		// maker's note gives 0.5 % for the same step, 1e-4.
		return Movement{5e-5, 7e-5, 1e-4, false,
			Source{Published, "board makers' notes, which differ by a factor of two for 35 to 85 % RH"}}, nil
	case record.Hardboard, record.TemperedHardboard:
		return Movement{6.25e-5, 7.5e-5, 1e-4, true,
			Source{Memory, "hardboard figures of 0.25 to 0.4 % for 50 to 90 % RH"}}, nil
	}
	return Movement{}, noFigure("movement", board)
}

// Microns is how much longer (or, negative, shorter) a length gets when the
// air goes from one humidity to another: low, likely and high in micrometres,
// low being the smallest change. Length 1000 to 2e7 µm, humidities 0 to 100 %.
//
//	length * strain per % * (to - from)
func (m Movement) Microns(lengthMicrons, fromRH, toRH float64) (low, likely, high float64, err error) {
	if err := first(
		within("movement per % RH", m.Low, 0, 0.01, ""),
		within("movement per % RH", m.Likely, 0, 0.01, ""),
		within("movement per % RH", m.High, 0, 0.01, ""),
		within("length", lengthMicrons, 1000, 2e7, "µm"),
		within("relative humidity", fromRH, 0, 100, "%"),
		within("relative humidity", toRH, 0, 100, "%"),
	); err != nil {
		return 0, 0, 0, err
	}
	step := lengthMicrons * (toRH - fromRH)
	return step * m.Low, step * m.Likely, step * m.High, nil
}
