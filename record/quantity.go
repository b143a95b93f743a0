package record

import (
	"cmp"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Unknown is the text of a value that somebody looked for and could not
// learn. It is not the same as an absent value, which nobody recorded.
const Unknown = "unknown"

// quantity is a measured amount: a decimal or a fraction and a unit, kept in
// the spelling and the unit in which it was measured ("3.2 mm", "8 1/2 in").
// The zero value means "not recorded"; unknown is a number without a unit.
// Conversion to the base unit is exact rational arithmetic, rounded once, half
// away from zero.
type quantity[D dimension] struct {
	number, unit string
	inBase       int64 // the amount in the base unit, worked out once
	newer        bool  // number is a whole text that this program cannot read
}

// dimension names what is measured and the units it may be measured in.
type dimension interface {
	name() string
	units() []unit
}

// unit is one unit and its other spellings. An amount in the base unit is
// (amount - zero) * num / den; zero is not 0 only for degrees Fahrenheit.
type unit struct {
	name     string
	num, den int64
	also     []string
	zero     int64
}

// IsZero reports that nothing was recorded.
func (q quantity[D]) IsZero() bool { return q.number == "" }

// IsUnknown reports that the value was recorded as unknown.
func (q quantity[D]) IsUnknown() bool { return q.number == Unknown }

// String returns the value as it was measured.
func (q quantity[D]) String() string {
	if q.unit == "" {
		return q.number
	}
	return q.number + " " + q.unit
}

// MarshalText returns the canonical spelling.
func (q quantity[D]) MarshalText() ([]byte, error) { return []byte(q.String()), nil }

// UnmarshalText reads what a person may type; see the Parse functions.
func (q *quantity[D]) UnmarshalText(b []byte) error {
	p, err := parseQuantity[D](string(b))
	if err == nil {
		*q = p
	}
	return err
}

// UnmarshalJSONFrom reads what stands in an entry. What a later program wrote
// in a unit of its own is kept as it is; see [quantity.Fault].
func (q *quantity[D]) UnmarshalJSONFrom(d *jsontext.Decoder) error {
	s, err := textFrom(d)
	if err == nil && q.UnmarshalText([]byte(s)) != nil {
		*q = quantity[D]{number: s, newer: true}
	}
	return err
}

// Fault says why the text cannot be read as a measured amount; nil if it can.
func (q quantity[D]) Fault() error {
	if !q.newer {
		return nil
	}
	_, err := parseQuantity[D](q.number)
	return err
}

// Number returns the digits without the unit, e.g. "8 1/2".
func (q quantity[D]) Number() string { return q.number }

// Unit returns the unit without the digits, e.g. "in".
func (q quantity[D]) Unit() string { return q.unit }

// Units returns the units such an amount may be in, in their one spelling.
func (quantity[D]) Units() []string {
	var d D
	var names []string
	for _, u := range d.units() {
		names = append(names, u.name)
	}
	return names
}

// base returns the amount in the base unit, and whether it is known.
func (q quantity[D]) base() (int64, bool) { return q.inBase, q.unit != "" }

func (u unit) base(r *big.Rat) (int64, bool) {
	if u.zero != 0 {
		r.Sub(r, new(big.Rat).SetInt64(u.zero))
	}
	n, ok := roundRat(r.Mul(r, big.NewRat(u.num, u.den)))
	return n, ok && n <= maxBase && n >= -maxBase
}

// whole is base for a whole number in its one spelling, as most are.
func (u unit) whole(s string) (n int64, ok bool) {
	if u.zero != 0 || u.den != 1 || len(s) > 6 || s == "" || s[0] == '0' {
		return 0, false
	}
	for _, c := range []byte(s) {
		if c < '0' || c > '9' {
			return 0, false
		}
		n = 10*n + int64(c-'0')
	}
	return n * u.num, n*u.num <= maxBase
}

// splitUnit parts what is typed into figures and unit: the unit begins at the
// first character that no figure has. It may hold a digit itself ("g/m2") or
// begin with a stroke ("14 /cm").
func splitUnit(s string) (number, unit string) {
	i := strings.IndexFunc(s, func(r rune) bool { return !strings.ContainsRune("0123456789.,/ -+", r) })
	if i < 0 {
		return strings.TrimSpace(s), ""
	}
	number, unit = strings.TrimSpace(s[:i]), s[i:]
	if n, ok := strings.CutSuffix(number, "/"); ok {
		number, unit = strings.TrimSpace(n), "/"+unit
	}
	return number, strings.Join(strings.Fields(unit), " ")
}

// typography turns signs that a text program puts in into those of the keyboard.
var typography = strings.NewReplacer("\u2212", "-", "\u2044", "/", "½", " 1/2", "¼", " 1/4", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8", "\u00a0", " ", "\u202f", " ")

// findUnit looks a unit up as it is typed, in capitals, too: no two of one
// dimension differ in them alone.
func findUnit[D dimension](name string) (unit, bool) {
	var d D
	us := d.units()
	same := func(s string) bool { return strings.EqualFold(s, name) }
	i := slices.IndexFunc(us, func(u unit) bool { return same(u.name) || slices.ContainsFunc(u.also, same) })
	if i < 0 {
		return unit{}, false
	}
	return us[i], true
}

func parseQuantity[D dimension](s string) (quantity[D], error) {
	var none quantity[D]
	var d D
	s = strings.TrimSpace(s)
	switch {
	case s == "":
		return none, nil
	case strings.EqualFold(s, Unknown):
		return quantity[D]{number: Unknown}, nil
	case len(s) > 40:
		return none, fmt.Errorf("%s %q is too long: expected something like %s", d.name(), clip(s), example[D]())
	}
	n, u := splitUnit(typography.Replace(s))
	un, ok := findUnit[D](u)
	if !ok {
		if u == "" {
			return none, fmt.Errorf("%q has no unit: add %s", s, cmp.Or(usualUnits[d.name()], unitNames[D]()))
		}
		return none, fmt.Errorf("%s %q: the unit must be %s", d.name(), s, unitNames[D]())
	}
	if base, ok := un.whole(n); ok {
		return quantity[D]{n, un.name, base, false}, nil
	}
	n, r, err := tidyNumber(n)
	if err != nil {
		return none, fmt.Errorf("%s %q: %w; expected something like %s", d.name(), s, err, example[D]())
	}
	if r.Sign() < 0 && !signed(d) {
		return none, fmt.Errorf("%s %q: it cannot be less than nothing", d.name(), s)
	}
	base, ok := un.base(r)
	if !ok {
		return none, fmt.Errorf("%s %q: it is too large", d.name(), s)
	}
	return quantity[D]{n, un.name, base, false}, nil
}

// maxBase keeps every base amount well inside the integers that RFC 8785
// can carry without loss (2^53).
const maxBase = 1 << 46

func signed(d dimension) bool { _, ok := d.(temperatureDim); return ok }

// tidyNumber gives a number its one spelling: a point for the decimal sign,
// one space before a fraction, no plus sign, no leading zeros. Trailing zeros
// after the point are kept: they say how finely it was measured.
func tidyNumber(s string) (string, *big.Rat, error) {
	if whole, three, ok := strings.Cut(s, ","); ok && len(three) == 3 && isDigits(three) && strings.Trim(whole, "0+-") != "" {
		return "", nil, fmt.Errorf("a comma before three figures could mean thousands: write %s%s or %s", whole, three, strings.TrimSuffix(strings.TrimRight(whole+"."+three, "0"), "."))
	}
	t := strings.Join(strings.Fields(strings.ReplaceAll(s, ",", ".")), " ")
	sign := ""
	if t != "" && (t[0] == '-' || t[0] == '+') {
		sign, t = strings.Trim(t[:1], "+"), strings.TrimSpace(t[1:])
	}
	if strings.HasPrefix(t, "-") {
		return "", nil, fmt.Errorf("%q is not a number", clip(s))
	}
	if i := strings.Index(t, "-"); i > 0 && strings.Contains(t[i:], "/") { // 8-1/2
		t = t[:i] + " " + t[i+1:]
	}
	whole, frac, mixed := strings.Cut(t, " ")
	if !mixed && strings.Contains(t, "/") {
		whole, frac = "", t
	}
	if mixed && !strings.Contains(frac, "/") || strings.Trim(whole, "0123456789.") != "" {
		return "", nil, fmt.Errorf("%q is not a number", clip(s))
	}
	if whole != "" {
		whole = strings.TrimLeft(whole, "0")
		if (whole == "" && frac == "") || strings.HasPrefix(whole, ".") {
			whole = "0" + whole
		}
	}
	t = strings.TrimSpace(whole + " " + frac)
	r, err := parseNumber(t)
	if err != nil {
		return "", nil, err
	}
	if sign == "-" && r.Sign() != 0 {
		t = sign + t
		r.Neg(r)
	}
	return t, r, nil
}

// parseNumber reads a number without a sign.
func parseNumber(s string) (*big.Rat, error) {
	bad := func() (*big.Rat, error) { return nil, fmt.Errorf("%q is not a number", clip(s)) }
	whole, frac, mixed := strings.Cut(s, " ")
	if !mixed && strings.Contains(s, "/") {
		whole, frac = "", s
	}
	r := new(big.Rat)
	if whole != "" {
		if !isDecimal(whole) || (frac != "" && strings.Contains(whole, ".")) {
			return bad()
		}
		r.SetString(whole)
	}
	if frac != "" {
		n, d, ok := strings.Cut(frac, "/")
		if !ok || !isDigits(n) || !isDigits(d) || len(d) > 4 || strings.Trim(d, "0") == "" || n[0] == '0' || d[0] == '0' {
			return bad()
		}
		f, _ := new(big.Rat).SetString(n + "/" + d)
		if whole != "" && f.Cmp(big.NewRat(1, 1)) >= 0 {
			return bad()
		}
		r.Add(r, f)
	} else if whole == "" {
		return bad()
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

// roundRat rounds to a whole number, half away from zero.
func roundRat(r *big.Rat) (int64, bool) {
	n, ok := new(big.Int).SetString(r.FloatString(0), 10)
	return n.Int64(), ok && n.IsInt64() && n.Int64() != math.MaxInt64
}

func unitNames[D dimension]() string {
	names := quantity[D]{}.Units()
	last := len(names) - 1
	if last == 0 {
		return names[0]
	}
	return strings.Join(names[:last], ", ") + " or " + names[last]
}

func example[D dimension]() string {
	return fmt.Sprintf("%q", "10 "+quantity[D]{}.Units()[0])
}
