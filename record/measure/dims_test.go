package measure_test

import (
	"fmt"
	"math"
	"testing"

	"backleaf/record"
	"backleaf/record/measure"
)

const (
	cco      = "Cataloging Cultural Objects 3.2.1, example"
	examples = "published measurement examples for visual resources"
	rounding = "computed, half up"
)

func TestInchFraction(t *testing.T) {
	for _, c := range []struct {
		microns                      int64
		quarter, eighth, sixteenth   string
		published, source            string
		measuredInInchesInTheExample bool
	}{
		{1_980_000, "78", "78", "77 15/16", "78", cco, false},
		{2_330_000, "91 3/4", "91 3/4", "91 3/4", "91 3/4", cco, false},
		{820_000, "32 1/4", "32 1/4", "32 5/16", "32 1/4", cco, false},
		{266_000, "10 1/2", "10 1/2", "10 1/2", "10 1/2", examples, false},
		{191_000, "7 1/2", "7 1/2", "7 1/2", "7 1/2", examples, false},
		{170_000, "6 3/4", "6 3/4", "6 11/16", "6 3/4", examples, false},
		{130_000, "5", "5 1/8", "5 1/8", "5 1/8", examples, false},
		{273_000, "10 3/4", "10 3/4", "10 3/4", "10 3/4", examples, false},
		// Published as 7 7/8, which no rounding of 19.8 cm gives: the work was
		// measured in inches, which is why a measured figure is kept.
		{198_000, "7 3/4", "7 3/4", "7 13/16", "7 7/8", examples, true},
	} {
		for _, d := range []struct {
			den  int
			want string
		}{{4, c.quarter}, {measure.EighthInch, c.eighth}, {16, c.sixteenth}} {
			if got, err := measure.InchFraction(c.microns, d.den); err != nil || got != d.want {
				t.Errorf("%d µm to 1/%d: %q, %v; want %q (source: %s)", c.microns, d.den, got, err, d.want, rounding)
			}
		}
		got, err := measure.InchFraction(c.microns, measure.EighthInch)
		if err != nil || (got == c.published) == c.measuredInInchesInTheExample {
			t.Errorf("%d µm: %q, %v against the published %q (source: %s)", c.microns, got, err, c.published, c.source)
		}
	}
	for _, c := range []struct {
		microns int64
		den     int
		want    string
	}{
		{0, 8, "0"}, {500, 8, "0"}, {3175, 8, "1/8"}, {12700, 16, "1/2"}, {25400, 8, "1"},
		{1587, 8, "0"}, {1588, 8, "1/8"}, {23813, 8, "1"}, // half an eighth is 1587.5
		{12700, 1, "1"}, {12699, 1, "0"}, {609_600, 64, "24"}, {100_000_000, 8, "3937"},
	} {
		if got, err := measure.InchFraction(c.microns, c.den); err != nil || got != c.want {
			t.Errorf("InchFraction(%d, %d) = %q, %v; want %q", c.microns, c.den, got, err, c.want)
		}
	}
	for _, c := range []struct {
		microns int64
		den     int
	}{{-1, 8}, {math.MaxInt64, 8}, {1000, 0}, {1000, -8}, {1000, 3}, {1000, 10}, {1000, 128}} {
		if got, err := measure.InchFraction(c.microns, c.den); err == nil || got != "" {
			t.Errorf("InchFraction(%d, %d) = %q, %v", c.microns, c.den, got, err)
		}
	}
}

// Sizes that are sold in both units come out as the other's round figure.
func TestRoundTrips(t *testing.T) {
	for cm, inches := range map[string]string{"61": "24", "50.8": "20", "40.6": "16", "30.5": "12"} {
		microns, err := micrometers(cm + " cm")
		if err != nil {
			t.Fatal(err)
		}
		got, err := measure.InchFraction(microns, measure.EighthInch)
		if err != nil || got != inches {
			t.Errorf("%s cm = %s in, %v; want %s (source: computed)", cm, got, err, inches)
		}
		microns, err = micrometers(inches + " in")
		if err != nil {
			t.Fatal(err)
		}
		if got, err = measure.Centimetres(microns); err != nil || got != cm {
			t.Errorf("%s in = %s cm, %v; want %s (source: computed)", inches, got, err, cm)
		}
	}
}

// Every sixteenth of an inch up to ten feet survives reading and printing.
func TestSixteenthsRoundTrip(t *testing.T) {
	for parts := range int64(120 * 16) {
		text, err := measure.InchFraction((parts*micronsPerInch+8)/16, 16)
		if err != nil {
			t.Fatal(err)
		}
		microns, err := micrometers(text + " in")
		if err != nil {
			t.Fatal(err)
		}
		again, err := measure.InchFraction(microns, 16)
		if err != nil || again != text {
			t.Fatalf("%d sixteenths: %q, then %q, %v", parts, text, again, err)
		}
	}
}

const micronsPerInch = 25400

func TestMetric(t *testing.T) {
	for _, c := range []struct {
		microns int64
		cm, mm  string
	}{
		{610_000, "61", "610"}, {406_400, "40.6", "406.4"}, {3_200, "0.3", "3.2"}, {0, "0", "0"},
		{49, "0", "0"}, {50, "0", "0.1"}, {499, "0", "0.5"}, {500, "0.1", "0.5"}, {6_350, "0.6", "6.4"}, {99_950_000, "9995", "99950"},
	} {
		cm, err1 := measure.Centimetres(c.microns)
		mm, err2 := measure.Millimetres(c.microns)
		if err1 != nil || err2 != nil || cm != c.cm || mm != c.mm {
			t.Errorf("%d µm: %q cm, %q mm, %v, %v; want %q, %q", c.microns, cm, mm, err1, err2, c.cm, c.mm)
		}
	}
	for _, microns := range []int64{-1, math.MaxInt64, math.MinInt64} {
		if got, err := measure.Centimetres(microns); err == nil || got != "" {
			t.Errorf("Centimetres(%d) = %q, %v", microns, got, err)
		}
		if got, err := measure.Millimetres(microns); err == nil || got != "" {
			t.Errorf("Millimetres(%d) = %q, %v", microns, got, err)
		}
	}
}

// micrometers reads a length as a person types it.
func micrometers(text string) (int64, error) {
	l, err := record.ParseLength(text)
	if err != nil {
		return 0, err
	}
	um, known := l.Micrometers()
	if !known {
		return 0, fmt.Errorf("%q is not a known length", text)
	}
	return um, nil
}

// The fixed points of the scales (ISO 80000-5: 0 °C is 32 °F, 100 °C 212 °F; equal
// at −40), and figures of care in both scales as a museum manual prints them:
// 15–25 °C, 59–77 °F (Western Australian Museum).
func TestFahrenheit(t *testing.T) {
	for milli, want := range map[int64]string{0: "32", 100_000: "212", -40_000: "-40", 15_000: "59", 25_000: "77", 50_000: "122", 4_500: "40"} {
		if got := measure.Fahrenheit(milli); got != want {
			t.Errorf("%d m°C: %s °F, want %s", milli, got, want)
		}
	}
}
