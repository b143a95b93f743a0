package measure

import (
	"fmt"
	"math"
	"strconv"
)

// EighthInch is the denominator of the inch in the print of works (common
// practice); finer ones where it would say too little.
const EighthInch = 8

// micronsPerInch is exact.
const micronsPerInch = 25400

// longestMicrons is 100 m: beyond it a unit was mistaken.
const longestMicrons = 100_000_000

func checkMicrons(microns int64) error {
	if microns < 0 || microns > longestMicrons {
		return fmt.Errorf("a length of %d µm is outside 0 to %d", microns, longestMicrons)
	}
	return nil
}

// InchFraction prints a length as whole inches and a reduced fraction, such as
// "91 3/4", "24" or "1/8", without a unit. The denominator is 1, 2, 4, 8, 16,
// 32 or 64; length 0 to 100 m. It rounds half up on
//
//	µm/25400 * denominator
//
// It gives the second figure beside a metric one. A length that was measured
// in inches is printed as measured, never converted back. Source: Cataloging
// Cultural Objects 3.2.1 for inches as whole numbers and fractions.
func InchFraction(microns int64, denominator int) (string, error) {
	if err := checkMicrons(microns); err != nil {
		return "", err
	}
	if denominator < 1 || denominator > 64 || denominator&(denominator-1) != 0 {
		return "", fmt.Errorf("an inch in parts of %d: the denominator must be 1, 2, 4, 8, 16, 32 or 64", denominator)
	}
	den := int64(denominator)
	parts := (2*microns*den + micronsPerInch) / (2 * micronsPerInch)
	whole, num := parts/den, parts%den
	for num != 0 && num%2 == 0 {
		num, den = num/2, den/2
	}
	switch {
	case num == 0:
		return strconv.FormatInt(whole, 10), nil
	case whole == 0:
		return fmt.Sprintf("%d/%d", num, den), nil
	}
	return fmt.Sprintf("%d %d/%d", whole, num, den), nil
}

// Centimetres prints a length in centimetres as a whole number or with one
// decimal, half up, such as "61" or "40.6", without a unit. Length 0 to 100 m.
// Source: Cataloging Cultural Objects 3.2.1; one decimal as in the museum
// cataloguing guides.
func Centimetres(microns int64) (string, error) { return tenths(microns, 10_000) }

// Millimetres prints a length in millimetres likewise, for thicknesses.
func Millimetres(microns int64) (string, error) { return tenths(microns, 1_000) }

// Fahrenheit writes a temperature in thousandths of a degree Celsius as whole
// degrees Fahrenheit (ISO 80000-5: t/°F = 9/5 t/°C + 32).
func Fahrenheit(millicelsius int64) string {
	return strconv.FormatFloat(math.Round(float64(millicelsius)*9/5000+32), 'f', -1, 64)
}

func tenths(microns, unit int64) (string, error) {
	if err := checkMicrons(microns); err != nil {
		return "", err
	}
	n := (microns*10 + unit/2) / unit
	if n%10 == 0 {
		return strconv.FormatInt(n/10, 10), nil
	}
	return fmt.Sprintf("%d.%d", n/10, n%10), nil
}
