package measure_test

import (
	"errors"
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/measure"
)

func TestMovement(t *testing.T) {
	likely := func(board record.BoardKind, length, from, to float64) (float64, error) {
		m, err := measure.MovementOf(board)
		if err != nil {
			return 0, err
		}
		_, v, _, err := m.Microns(length, from, to)
		return v, err
	}
	high := func(board record.BoardKind, length, from, to float64) (float64, error) {
		m, err := measure.MovementOf(board)
		if err != nil {
			return 0, err
		}
		_, _, v, err := m.Microns(length, from, to)
		return v, err
	}
	low := func(board record.BoardKind, length, from, to float64) (float64, error) {
		m, err := measure.MovementOf(board)
		if err != nil {
			return 0, err
		}
		v, _, _, err := m.Microns(length, from, to)
		return v, err
	}
	// One metre each time, so that 1000 µm is 0.1 %.
	run(t,
		val(likely(record.Plywood, 1e6, 40, 50)).is("plywood, 10 % RH", 200, 1e-6, "plywood association's figure, 0.02 % per 10 % RH"),
		val(likely(record.Plywood, 1e6, 30, 90)).is("plywood, 30 to 90 %", 1200, 1e-6, "computed from the association's figure"),
		val(high(record.Plywood, 1e6, 30, 90)).is("plywood, 30 to 90 %", 1500, 1e-6, "from memory of Wood Handbook (1999), plywood sheathing: 0.15 %"),
		val(low(record.MDF, 1e6, 35, 85)).is("MDF, 35 to 85 %", 2500, 1e-6, "MDF maker's note on moisture: 0.05 % per 1 % MC, 5 % MC"),
		val(high(record.MDF, 1e6, 35, 85)).is("MDF, 35 to 85 %", 5000, 1e-6, "questions and answers on MDF stability: 0.5 %"),
		val(low(record.Hardboard, 1e6, 50, 90)).is("hardboard, 50 to 90 %", 2500, 1e-6, "from memory, 0.25 to 0.4 %"),
		val(likely(record.Hardboard, 1e6, 50, 90)).is("hardboard, 50 to 90 %", 3000, 1e-6, "from memory, plan with 0.3 %"),
		val(high(record.Hardboard, 1e6, 50, 90)).is("hardboard, 50 to 90 %", 4000, 1e-6, "from memory of ANSI A135.6 siding limits, 0.36 to 0.40 %"),
		val(likely(record.Plywood, 1e6, 50, 40)).is("plywood, drier", -200, 1e-6, "same both ways"),
	)
	for _, board := range []record.BoardKind{record.Plywood, record.MDF, record.Hardboard} {
		m, err := measure.MovementOf(board)
		if err != nil || m.Low > m.Likely || m.Likely > m.High || m.Source.Text == "" {
			t.Errorf("%s: %+v, %v", board, m, err)
		}
		if m.LowConfidence != (board == record.Hardboard) {
			t.Errorf("%s: low confidence is %v", board, m.LowConfidence)
		}
	}
	if _, err := measure.MovementOf("oak"); !errors.Is(err, measure.ErrNoFigure) {
		t.Errorf("MovementOf(oak): %v", err)
	}
	plain := measure.Movement{Likely: 1e-4}
	refuse(t, "Movement length", func(v float64) (float64, error) { _, m, _, err := plain.Microns(v, 40, 50); return m, err }, 0, -1)
	refuse(t, "Movement RH", func(v float64) (float64, error) { _, m, _, err := plain.Microns(1e6, v, 50); return m, err }, -1, 101)
	refuse(t, "Movement strain", func(v float64) (float64, error) {
		_, m, _, err := measure.Movement{Likely: v}.Microns(1e6, 40, 50)
		return m, err
	}, -1, 1)
}

func TestBoardFinite(t *testing.T) {
	r := fixed()
	for range 2000 {
		low, likely, high, err := measure.Movement{Low: 1e-5, Likely: 5e-5, High: 1e-4}.Microns(logBetween(r, 1000, 2e7), between(r, 0, 100), between(r, 0, 100))
		finite(t, "Movement", likely, err)
		if math.Abs(low) > math.Abs(likely) || math.Abs(likely) > math.Abs(high) {
			t.Fatalf("movement %g, %g, %g out of order", low, likely, high)
		}
	}
}
