package measure_test

import (
	"math"
	"testing"
	"time"

	"backleaf/record/measure"
)

func rh(percent float64) measure.Humidity { return measure.Humidity{Percent: percent, Known: true} }

// The stated times are common practice for a water-borne sealer: touch-dry in
// 20 to 30 minutes, cured in 24 to 36 hours, longer in humid air. Where in the
// window a humidity puts it is computed from the documented rule.
func TestCureWindow(t *testing.T) {
	cure := measure.Stated{Early: 24 * time.Hour, Late: 36 * time.Hour}
	for _, c := range []struct {
		name              string
		humidity          measure.Humidity
		notBefore, safeBy time.Duration
	}{
		{"bone dry", rh(0), 24 * time.Hour, 36 * time.Hour},
		{"dry room", rh(40), 24 * time.Hour, 36 * time.Hour},
		{"usual room", rh(50), 28 * time.Hour, 36 * time.Hour},
		{"half way", rh(55), 30 * time.Hour, 36 * time.Hour},
		{"damp room", rh(70), 36 * time.Hour, 36 * time.Hour},
		{"humid", rh(85), 36 * time.Hour, 42 * time.Hour},
		{"saturated", rh(100), 36 * time.Hour, 48 * time.Hour},
		{"not recorded", measure.Humidity{}, 36 * time.Hour, 48 * time.Hour},
		{"not recorded, stray figure", measure.Humidity{Percent: 30}, 36 * time.Hour, 48 * time.Hour},
	} {
		got, err := measure.CureWindow(cure, c.humidity)
		if err != nil || (got.NotBefore-c.notBefore).Abs() > time.Second || (got.SafeBy-c.safeBy).Abs() > time.Second {
			t.Errorf("%s: %v to %v, %v; want %v to %v", c.name, got.NotBefore, got.SafeBy, err, c.notBefore, c.safeBy)
		}
	}
}

func TestTouchDryWindow(t *testing.T) {
	dry := measure.Stated{Early: 20 * time.Minute, Late: 30 * time.Minute}
	for _, c := range []struct {
		name              string
		humidity          measure.Humidity
		warm              bool
		notBefore, safeBy time.Duration
	}{
		{"usual room", rh(55), false, 25 * time.Minute, 30 * time.Minute},
		{"humid", rh(85), false, 30 * time.Minute, 35 * time.Minute},
		{"humid, warm air", rh(85), true, 20 * time.Minute, 30 * time.Minute},
		{"not recorded", measure.Humidity{}, false, 30 * time.Minute, 40 * time.Minute},
	} {
		got, err := measure.TouchDryWindow(dry, c.humidity, c.warm)
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
		drier, err1 := measure.CureWindow(stated, rh(a))
		damper, err2 := measure.CureWindow(stated, rh(b))
		unknown, err3 := measure.CureWindow(stated, measure.Humidity{})
		warm, err4 := measure.TouchDryWindow(stated, rh(b), true)
		if err := firstOf(err1, err2, err3, err4); err != nil {
			t.Fatal(err)
		}
		switch {
		case drier.NotBefore < stated.Early || drier.NotBefore > stated.Late || drier.SafeBy < stated.Late:
			t.Fatalf("%v at %g %%: %v leaves the stated time", stated, a, drier)
		case damper.NotBefore < drier.NotBefore || damper.SafeBy < drier.SafeBy:
			t.Fatalf("%v: %g %% gives %v, %g %% gives %v", stated, a, drier, b, damper)
		case unknown.NotBefore < damper.NotBefore || unknown.SafeBy < damper.SafeBy:
			t.Fatalf("%v: unknown humidity gives %v, better than %v", stated, unknown, damper)
		case warm.NotBefore < stated.Early || warm.NotBefore > warm.SafeBy:
			t.Fatalf("%v: warm air gives %v", stated, warm)
		}
	}
}

func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

func TestWindowRefusals(t *testing.T) {
	good := measure.Stated{Early: time.Hour, Late: 2 * time.Hour}
	for _, stated := range []measure.Stated{
		{}, {Early: 2 * time.Hour, Late: time.Hour}, {Early: -time.Hour, Late: time.Hour}, {Late: math.MaxInt64},
	} {
		if w, err := measure.CureWindow(stated, rh(50)); err == nil || w != (measure.Window{}) {
			t.Errorf("CureWindow(%v) = %v, %v", stated, w, err)
		}
		if _, err := measure.TouchDryWindow(stated, rh(50), true); err == nil {
			t.Errorf("TouchDryWindow(%v) was taken", stated)
		}
	}
	for _, percent := range []float64{-1, 101, math.NaN(), math.Inf(1)} {
		if _, err := measure.CureWindow(good, rh(percent)); err == nil {
			t.Errorf("CureWindow took %g %% RH", percent)
		}
	}
}
