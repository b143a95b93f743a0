package measure_test

import (
	"math"
	"testing"
	"time"

	"backleaf/record/measure"
)

// The stated times are common practice for a water-borne sealer: touch-dry in
// 20 to 30 minutes, cured in 24 to 36 hours, longer in humid air. Where in the
// window a humidity puts it is computed from the documented rule.
func TestDryingWindow(t *testing.T) {
	cure := measure.Stated{Early: 24 * time.Hour, Late: 36 * time.Hour}
	touch := measure.Stated{Early: 20 * time.Minute, Late: 30 * time.Minute}
	for _, c := range []struct {
		name              string
		stated            measure.Stated
		rh                float64
		warm              bool
		notBefore, safeBy time.Duration
	}{
		{"bone dry", cure, 0, false, 24 * time.Hour, 36 * time.Hour},
		{"dry room", cure, 40, false, 24 * time.Hour, 36 * time.Hour},
		{"usual room", cure, 50, false, 28 * time.Hour, 36 * time.Hour},
		{"half way", cure, 55, false, 30 * time.Hour, 36 * time.Hour},
		{"damp room", cure, 70, false, 36 * time.Hour, 36 * time.Hour},
		{"humid", cure, 85, false, 36 * time.Hour, 42 * time.Hour},
		{"saturated", cure, 100, false, 36 * time.Hour, 48 * time.Hour},
		{"touch-dry, usual room", touch, 55, false, 25 * time.Minute, 30 * time.Minute},
		{"touch-dry, humid", touch, 85, false, 30 * time.Minute, 35 * time.Minute},
		{"touch-dry, humid, warm air", touch, 85, true, 20 * time.Minute, 30 * time.Minute},
		{"touch-dry, saturated", touch, 100, false, 30 * time.Minute, 40 * time.Minute},
	} {
		got, err := measure.DryingWindow(c.stated, c.rh, c.warm)
		if err != nil || (got.NotBefore-c.notBefore).Abs() > time.Second || (got.SafeBy-c.safeBy).Abs() > time.Second {
			t.Errorf("%s: %v to %v, %v; want %v to %v", c.name, got.NotBefore, got.SafeBy, err, c.notBefore, c.safeBy)
		}
	}
}

func TestWindowProperties(t *testing.T) {
	r := fixed()
	for range 3000 {
		early := time.Duration(r.Int63n(int64(400 * 24 * time.Hour)))
		stated := measure.Stated{Early: early, Late: early + 1 + time.Duration(r.Int63n(int64(400*24*time.Hour)))}
		a := between(r, 0, 100)
		b := between(r, a, 100)
		drier, err1 := measure.DryingWindow(stated, a, false)
		damper, err2 := measure.DryingWindow(stated, b, false)
		warm, err3 := measure.DryingWindow(stated, b, true)
		switch {
		case err1 != nil || err2 != nil || err3 != nil:
			t.Fatal(err1, err2, err3)
		case drier.NotBefore < stated.Early || drier.NotBefore > stated.Late || drier.SafeBy < stated.Late:
			t.Fatalf("%v at %g %%: %v leaves the stated time", stated, a, drier)
		case damper.NotBefore < drier.NotBefore || damper.SafeBy < drier.SafeBy:
			t.Fatalf("%v: %g %% gives %v, %g %% gives %v", stated, a, drier, b, damper)
		case warm.NotBefore < stated.Early || warm.NotBefore > warm.SafeBy:
			t.Fatalf("%v: warm air gives %v", stated, warm)
		}
	}
}

func TestWindowRefusals(t *testing.T) {
	for _, stated := range []measure.Stated{
		{}, {Early: 2 * time.Hour, Late: time.Hour}, {Early: -time.Hour, Late: time.Hour}, {Late: math.MaxInt64},
	} {
		for _, warm := range []bool{false, true} {
			if w, err := measure.DryingWindow(stated, 50, warm); err == nil || w != (measure.Window{}) {
				t.Errorf("DryingWindow(%v) = %v, %v", stated, w, err)
			}
		}
	}
	for _, percent := range []float64{-1, 101, math.NaN(), math.Inf(1)} {
		if _, err := measure.DryingWindow(measure.Stated{Early: time.Hour, Late: 2 * time.Hour}, percent, false); err == nil {
			t.Errorf("DryingWindow took %g %% RH", percent)
		}
	}
}
