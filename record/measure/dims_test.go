package measure_test

import (
	"fmt"
	"math"
	"testing"

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
		}{{4, c.quarter}, {measure.EighthInch, c.eighth}, {measure.SixteenthInch, c.sixteenth}} {
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
		microns, err := measure.ParseLength(cm + " cm")
		if err != nil {
			t.Fatal(err)
		}
		got, err := measure.InchFraction(microns, measure.EighthInch)
		if err != nil || got != inches {
			t.Errorf("%s cm = %s in, %v; want %s (source: computed)", cm, got, err, inches)
		}
		microns, err = measure.ParseLength(inches + " in")
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
		text, err := measure.InchFraction((parts*micronsPerInch+8)/16, measure.SixteenthInch)
		if err != nil {
			t.Fatal(err)
		}
		microns, err := measure.ParseLength(text + " in")
		if err != nil {
			t.Fatal(err)
		}
		again, err := measure.InchFraction(microns, measure.SixteenthInch)
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

func TestParseLength(t *testing.T) {
	for text, want := range map[string]int64{
		"610 mm": 610_000, "610mm": 610_000, "61 cm": 610_000, "0.61 m": 610_000, "40,6 cm": 406_000, " 3.2 mm ": 3200,
		"24 in": 609_600, `24"`: 609_600, "24″": 609_600, "24 inches": 609_600, "1 inch": 25_400, "12.5 in": 317_500,
		"91 3/4 in": 2_330_450, "3/4 in": 19_050, "1/16 in": 1588, "32 5/16\"": 820_738, "250 µm": 250, "250 um": 250, "0 mm": 0,
		"100 m": 100_000_000,
	} {
		if got, err := measure.ParseLength(text); err != nil || got != want {
			t.Errorf("ParseLength(%q) = %d, %v; want %d", text, got, err, want)
		}
	}
	for _, text := range []string{
		"", "mm", "61", "-61 cm", "+61 cm", "1e3 mm", "0x10 mm", "6 1 cm", "1,000.5 mm", ".5 in", "5. in", "61 ft",
		"3/4 cm", "91 4/4 in", "91 3/5 in", "91 3/128 in", "91  3/4 in", "1/0 in", "/4 in", "1.5 3/4 in", "3/ in", "101 m",
		"NaN mm", "1_000 mm", "٦١ cm", "99999999999999999999999999999 mm", "1.00000000000000000000000000000000000000 mm",
	} {
		if got, err := measure.ParseLength(text); err == nil || got != 0 {
			t.Errorf("ParseLength(%q) = %d, %v; want an error", text, got, err)
		}
	}
}

func FuzzParseLength(f *testing.F) {
	for _, seed := range []string{"610 mm", "91 3/4 in", "40,6 cm", `24"`, "1e9 m", "1/0 in", "99999999999 mm", "µm"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		microns, err := measure.ParseLength(text)
		if err != nil {
			if microns != 0 {
				t.Fatalf("%q: %d beside %v", text, microns, err)
			}
			return
		}
		if microns < 0 || microns > 100_000_000 {
			t.Fatalf("%q gave %d µm", text, microns)
		}
		// What was read can be printed and read again without change.
		again, err := measure.ParseLength(fmt.Sprintf("%d µm", microns))
		if err != nil || again != microns {
			t.Fatalf("%q: %d, then %d, %v", text, microns, again, err)
		}
		if _, err := measure.InchFraction(microns, measure.EighthInch); err != nil {
			t.Fatalf("%q: %v", text, err)
		}
	})
}
