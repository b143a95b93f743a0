package measure_test

import (
	"errors"
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/measure"
)

func p(grit int) measure.Abrasive    { return measure.Abrasive{Scale: measure.ScaleP, Grit: grit} }
func cami(grit int) measure.Abrasive { return measure.Abrasive{Scale: measure.ScaleCAMI, Grit: grit} }

func TestGritMicrons(t *testing.T) {
	const (
		chart  = "finishing supplier's chart of CAMI, P and micron grades"
		page   = "units reference page on sandpaper grades"
		memory = "from memory of ISO 6344"
		tables = "from memory of CAMI grade tables"
	)
	for _, c := range []struct {
		grade        measure.Abrasive
		microns, tol float64
		source       string
	}{
		{p(100), 162, 0, chart}, {p(100), 162, 0, page}, {p(120), 125, 0, chart}, {p(120), 125, 0, page}, {p(150), 100, 0, chart},
		{p(180), 82, 0, chart}, {p(220), 68, 0, chart}, {p(240), 60, 0, chart}, {p(280), 52, 0, chart}, {p(320), 46, 0, chart},
		{p(360), 40, 0, chart}, {p(400), 35, 0, chart},
		// The chart prints whole micrometres, the standard tenths.
		{p(240), 58.5, 1.6, memory}, {p(280), 52.2, 0.5, memory}, {p(320), 46.2, 0.5, memory}, {p(360), 40.5, 0.5, memory}, {p(400), 35.0, 0.5, memory},
		{cami(100), 141, 0, page}, {cami(120), 116, 0, chart}, {cami(150), 93, 0, chart}, {cami(180), 82, 0, chart}, {cami(220), 68, 0, chart},
		{cami(240), 52, 0, chart}, {cami(280), 42, 0, chart}, {cami(320), 35, 0, chart}, {cami(360), 28, 0, chart}, {cami(400), 22, 0, chart},
		// Other tables differ a little.
		{cami(150), 92, 1, tables}, {cami(180), 78, 4, tables}, {cami(220), 66, 2, tables}, {cami(240), 53, 1, tables},
		{cami(280), 44, 2, tables}, {cami(320), 36, 1, tables}, {cami(400), 23, 1, tables},
	} {
		got, err := measure.GritMicrons(c.grade)
		if err != nil || math.Abs(got-c.microns) > c.tol {
			t.Errorf("%v: %g, %v; want %g within %g (source: %s)", c.grade, got, err, c.microns, c.tol, c.source)
		}
	}
	// "CAMI 400 is about P800", says the same chart.
	a, err1 := measure.GritMicrons(cami(400))
	b, err2 := measure.GritMicrons(p(800))
	if err1 != nil || err2 != nil || math.Abs(a-b) > 1 {
		t.Errorf("CAMI 400 is %g, P800 %g (source: %s)", a, b, chart)
	}
	for _, bad := range []measure.Abrasive{{}, p(0), p(151), {Scale: "JIS", Grit: 150}} {
		if got, err := measure.GritMicrons(bad); !errors.Is(err, measure.ErrNoFigure) || got != 0 {
			t.Errorf("GritMicrons(%v) = %g, %v", bad, got, err)
		}
	}
}

// Along each scale a higher number is a finer grade, in the table as well.
func TestGritsDescend(t *testing.T) {
	for _, scale := range []record.GritScale{measure.ScaleP, measure.ScaleCAMI} {
		last, seen := math.Inf(1), 0
		for grit := 1; grit <= 2000; grit++ {
			size, err := measure.GritMicrons(measure.Abrasive{Scale: scale, Grit: grit})
			if err != nil {
				continue
			}
			seen++
			if size >= last {
				t.Errorf("%s %d: %g µm is not below %g", scale, grit, size, last)
			}
			last = size
		}
		if seen < 15 {
			t.Errorf("%s: only %d grades", scale, seen)
		}
	}
}

func TestCoarserThan(t *testing.T) {
	for _, c := range []struct {
		a, b measure.Abrasive
		want bool
	}{
		{p(120), p(150), true}, {p(150), p(150), false}, {p(180), p(150), false}, {p(36), p(150), true}, {p(151), p(150), false},
		{cami(120), p(150), true}, {cami(150), p(150), false}, {p(150), cami(150), true}, {p(320), cami(320), true},
		{cami(320), p(400), false}, {p(400), cami(320), false},
	} {
		if got, err := measure.CoarserThan(c.a, c.b); err != nil || got != c.want {
			t.Errorf("CoarserThan(%v, %v) = %v, %v", c.a, c.b, got, err)
		}
	}
	if _, err := measure.CoarserThan(cami(151), p(150)); !errors.Is(err, measure.ErrNoFigure) {
		t.Errorf("a grade outside the table, across scales: %v", err)
	}
	for _, bad := range []measure.Abrasive{{Scale: "", Grit: 150}, {Scale: "JIS", Grit: 150}, p(0), p(-80), p(20000)} {
		if got, err := measure.CoarserThan(bad, p(150)); err == nil || got {
			t.Errorf("CoarserThan(%v, P150) = %v, %v", bad, got, err)
		}
	}
}
