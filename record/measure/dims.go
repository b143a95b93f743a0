package measure

import (
	"errors"
	"fmt"
	"math/big"
	"strconv"
	"strings"
)

// Denominators of the inch in print. Common practice: eighths for works,
// sixteenths where a frame has to fit.
const (
	EighthInch    = 8
	SixteenthInch = 16
)

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

// lengthUnits in micrometres, longest suffix first where one ends another.
var lengthUnits = []struct {
	suffix  string
	microns int64
	inch    bool
}{
	{"mm", 1_000, false}, {"cm", 10_000, false}, {"µm", 1, false}, {"μm", 1, false}, {"um", 1, false}, {"m", 1_000_000, false},
	{"inches", micronsPerInch, true}, {"inch", micronsPerInch, true}, {"in", micronsPerInch, true}, {`"`, micronsPerInch, true}, {"″", micronsPerInch, true},
}

var errLength = errors.New(`a length is a number and a unit, such as "610 mm", "61 cm", "24 in" or "91 3/4 in"`)

// ParseLength reads a length with its unit (mm, cm, m, µm, in, inch, inches, "
// or ″) into whole micrometres, half up. Inches may carry a fraction with a
// denominator of 2 to 64. A decimal comma is taken for a decimal point; signs,
// exponents and digit grouping are refused, and so is anything over 100 m.
func ParseLength(text string) (int64, error) {
	// No length needs more, and the cap keeps the arithmetic small.
	if len(text) > 40 {
		return 0, fmt.Errorf("cannot read a length of %d bytes: %w", len(text), errLength)
	}
	number := strings.TrimSpace(text)
	for _, unit := range lengthUnits {
		head, found := strings.CutSuffix(number, unit.suffix)
		if !found {
			continue
		}
		value, ok := parseNumber(strings.TrimRight(head, " "), unit.inch)
		if !ok {
			break
		}
		value.Mul(value, new(big.Rat).SetInt64(unit.microns))
		value.Add(value, big.NewRat(1, 2))
		microns := new(big.Int).Quo(value.Num(), value.Denom())
		if !microns.IsInt64() || microns.Int64() > longestMicrons {
			return 0, fmt.Errorf("cannot take %q: longer than 100 m", text)
		}
		return microns.Int64(), nil
	}
	return 0, fmt.Errorf("cannot read %q: %w", text, errLength)
}

// parseNumber reads "61", "40.6" or, for inches, "3/4" and "91 3/4".
func parseNumber(s string, fraction bool) (*big.Rat, bool) {
	if !strings.Contains(s, "/") {
		return parseDecimal(s)
	}
	if !fraction {
		return nil, false
	}
	whole := new(big.Rat)
	if head, tail, spaced := strings.Cut(s, " "); spaced {
		n, ok := parseDigits(head)
		if !ok {
			return nil, false
		}
		whole, s = new(big.Rat).SetInt(n), tail
	}
	over, under, _ := strings.Cut(s, "/")
	num, ok1 := parseDigits(over)
	den, ok2 := parseDigits(under)
	if !ok1 || !ok2 || !den.IsInt64() || den.Int64() > 64 || den.Int64() < 2 || den.Int64()&(den.Int64()-1) != 0 || num.Cmp(den) >= 0 {
		return nil, false
	}
	return whole.Add(whole, new(big.Rat).SetFrac(num, den)), true
}

func parseDecimal(s string) (*big.Rat, bool) {
	whole, part, pointed := strings.Cut(strings.Replace(s, ",", ".", 1), ".")
	digits, ok := parseDigits(whole + part)
	if !ok || whole == "" || (pointed && part == "") {
		return nil, false
	}
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(part))), nil)
	return new(big.Rat).SetFrac(digits, scale), true
}

func parseDigits(s string) (*big.Int, bool) {
	for _, c := range []byte(s) {
		if c < '0' || c > '9' {
			return nil, false
		}
	}
	return new(big.Int).SetString(s, 10)
}
