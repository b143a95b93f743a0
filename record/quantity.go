package record

import (
	"fmt"
	"math"
	"math/big"
	"strings"
)

// Unknown is the text of a value that somebody looked for and could not
// learn. It is not the same as an absent value, which nobody recorded.
const Unknown = "unknown"

// quantity is a measured amount: a decimal or a fraction and a unit, kept in
// the spelling and the unit in which it was measured ("3.2 mm", "8 1/2 in").
// The zero value means "not recorded". Conversion to the base unit is exact
// rational arithmetic, rounded once, half away from zero.
type quantity[D dimension] struct{ text string }

// dimension names what is measured and the units it may be measured in.
type dimension interface {
	name() string
	units() []unit
}

// unit is one accepted spelling; the first unit of equal name wins.
// num/den converts one of it to the base unit of its dimension.
type unit struct {
	name     string
	num, den int64
	also     []string
}

// IsZero reports that nothing was recorded.
func (q quantity[D]) IsZero() bool { return q.text == "" }

// IsUnknown reports that the value was recorded as unknown.
func (q quantity[D]) IsUnknown() bool { return q.text == Unknown }

// String returns the value as it was measured.
func (q quantity[D]) String() string { return q.text }

// MarshalText returns the canonical spelling.
func (q quantity[D]) MarshalText() ([]byte, error) { return []byte(q.text), nil }

// UnmarshalText reads what a person may type; see the Parse functions.
func (q *quantity[D]) UnmarshalText(b []byte) error {
	p, err := parseQuantity[D](string(b))
	if err == nil {
		*q = p
	}
	return err
}

// Number returns the digits without the unit, e.g. "8 1/2".
func (q quantity[D]) Number() string {
	n, _ := splitUnit(q.text)
	return n
}

// Unit returns the unit without the digits, e.g. "in".
func (q quantity[D]) Unit() string {
	_, u := splitUnit(q.text)
	return u
}

// base returns the amount in the base unit, and whether it is known.
func (q quantity[D]) base() (int64, bool) {
	if q.text == "" || q.text == Unknown {
		return 0, false
	}
	n, u := splitUnit(q.text)
	r, err := parseNumber(n)
	if err != nil {
		return 0, false
	}
	un, ok := findUnit[D](u)
	if !ok {
		return 0, false
	}
	return roundRat(r.Mul(r, big.NewRat(un.num, un.den)))
}

func splitUnit(s string) (number, unit string) {
	i := strings.LastIndexAny(s, "0123456789")
	return strings.TrimSpace(s[:i+1]), strings.TrimSpace(s[i+1:])
}

func findUnit[D dimension](name string) (unit, bool) {
	var d D
	for _, u := range d.units() {
		if u.name == name {
			return u, true
		}
		for _, a := range u.also {
			if a == name {
				return u, true
			}
		}
	}
	return unit{}, false
}

func parseQuantity[D dimension](s string) (quantity[D], error) {
	var d D
	s = strings.TrimSpace(s)
	switch {
	case s == "":
		return quantity[D]{}, nil
	case strings.EqualFold(s, Unknown):
		return quantity[D]{Unknown}, nil
	case len(s) > 40:
		return quantity[D]{}, fmt.Errorf("%s is too long: expected something like %s", d.name(), example[D]())
	}
	// A unit may hold a figure of its own: "g/m2", "oz/yd2".
	n, u := s, ""
	if i := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789.,/ -+", r) }); i >= 0 {
		n, u = s[:i], s[i:]
		if strings.HasSuffix(strings.TrimSpace(n), "/") { // "14 /cm"
			n, u = strings.TrimSuffix(strings.TrimSpace(n), "/"), "/"+u
		}
	}
	n, u = strings.TrimSpace(n), strings.TrimSpace(u)
	un, ok := findUnit[D](u)
	if !ok {
		if u == "" {
			return quantity[D]{}, fmt.Errorf("%s %q has no unit: expected something like %s", d.name(), s, example[D]())
		}
		return quantity[D]{}, fmt.Errorf("%s %q: the unit must be one of %s", d.name(), s, unitNames[D]())
	}
	n, err := tidyNumber(n)
	if err != nil {
		return quantity[D]{}, fmt.Errorf("%s %q: %w; expected something like %s", d.name(), s, err, example[D]())
	}
	r, _ := parseNumber(n)
	if r.Sign() < 0 && !signed(d) {
		return quantity[D]{}, fmt.Errorf("%s %q: it cannot be less than nothing", d.name(), s)
	}
	if b, ok := roundRat(r.Mul(r, big.NewRat(un.num, un.den))); !ok || b > maxBase || b < -maxBase {
		return quantity[D]{}, fmt.Errorf("%s %q: it is too large", d.name(), s)
	}
	return quantity[D]{n + " " + un.name}, nil
}

// maxBase keeps every base amount well inside the integers that RFC 8785
// can carry without loss (2^53).
const maxBase = 1 << 46

func signed(d dimension) bool { _, ok := d.(temperatureDim); return ok }

// tidyNumber gives a number its one spelling: a point for the decimal sign,
// one space before a fraction, no plus sign, no leading zeros. Trailing zeros
// after the point are kept: they say how finely it was measured.
func tidyNumber(s string) (string, error) {
	t := strings.Join(strings.Fields(strings.ReplaceAll(s, ",", ".")), " ")
	neg := strings.HasPrefix(t, "-")
	t = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(t, "-"), "+"))
	if i := strings.Index(t, "-"); i > 0 && strings.Contains(t[i:], "/") { // 8-1/2
		t = t[:i] + " " + t[i+1:]
	}
	whole, frac, mixed := strings.Cut(t, " ")
	if !mixed && strings.Contains(t, "/") {
		whole, frac = "", t
	}
	if whole != "" {
		w := strings.TrimLeft(whole, "0")
		if w == "" || w[0] == '.' {
			w = "0" + w
		}
		whole = w
	}
	t = strings.TrimSpace(whole + " " + frac)
	if neg {
		t = "-" + t
	}
	if _, err := parseNumber(t); err != nil {
		return "", err
	}
	return t, nil
}

func parseNumber(s string) (*big.Rat, error) {
	bad := fmt.Errorf("%q is not a number", s)
	neg := strings.HasPrefix(s, "-")
	t := strings.TrimPrefix(s, "-")
	whole, frac, mixed := strings.Cut(t, " ")
	if !mixed && strings.Contains(t, "/") {
		whole, frac = "", t
	}
	r := new(big.Rat)
	if whole != "" {
		if !isDecimal(whole) || (frac != "" && strings.Contains(whole, ".")) {
			return nil, bad
		}
		r.SetString(whole)
	}
	if frac != "" {
		n, d, ok := strings.Cut(frac, "/")
		if !ok || !isDigits(n) || !isDigits(d) || len(d) > 4 || strings.Trim(d, "0") == "" || n[0] == '0' || d[0] == '0' {
			return nil, bad
		}
		f, _ := new(big.Rat).SetString(n + "/" + d)
		if whole != "" && f.Cmp(big.NewRat(1, 1)) >= 0 {
			return nil, bad
		}
		r.Add(r, f)
	} else if whole == "" {
		return nil, bad
	}
	if neg {
		r.Neg(r)
	}
	return r, nil
}

func isDigits(s string) bool {
	return s != "" && len(s) < 16 && strings.Trim(s, "0123456789") == ""
}

func isDecimal(s string) bool {
	w, f, point := strings.Cut(s, ".")
	return isDigits(w) && (!point || isDigits(f))
}

func roundRat(r *big.Rat) (int64, bool) {
	two := big.NewInt(2)
	n := new(big.Int).Mul(new(big.Int).Abs(r.Num()), two)
	n.Add(n, r.Denom())
	n.Quo(n, new(big.Int).Mul(r.Denom(), two))
	if !n.IsInt64() || n.Int64() == math.MaxInt64 {
		return 0, false
	}
	if r.Sign() < 0 {
		return -n.Int64(), true
	}
	return n.Int64(), true
}

func unitNames[D dimension]() string {
	var d D
	var names []string
	for _, u := range d.units() {
		names = append(names, u.name)
	}
	return strings.Join(names, ", ")
}

func example[D dimension]() string {
	var d D
	u := d.units()[0].name
	return fmt.Sprintf("%q", "10 "+u)
}
