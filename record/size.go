package record

import (
	"fmt"
	"strings"

	"github.com/go-json-experiment/json/jsontext"
)

// Size is height × width × depth as measured, in that order. Depth may be
// absent (not recorded) or unknown. The text form repeats a unit only where
// it changes: "8 x 10 x 1/8 in", "30 x 40 cm x 3.2 mm".
type Size struct {
	Height, Width, Depth Length
	newer                string // the whole text, where this program cannot read it
}

// times holds the signs that may stand between the figures of a size.
var times = strings.NewReplacer("X", "x", "×", "x", "*", "x")

// ParseSize reads what a person types: "8 x 10 x 1/8 in", "300x400x4mm",
// "30 × 40 cm × 3 mm". A figure without a unit takes the next unit to its
// right.
func ParseSize(s string) (Size, error) {
	if strings.TrimSpace(s) == "" {
		return Size{}, nil
	}
	bad := func(why string) (Size, error) {
		return Size{}, fmt.Errorf("size %q: %s; expected height x width x depth, for example \"30 x 40 cm x 3 mm\" or \"8 x 10 x 1/8 in\"", clip(s), why)
	}
	if len(s) > 100 {
		return bad("it is too long")
	}
	parts := strings.Split(times.Replace(typography.Replace(s)), "x")
	if len(parts) < 2 || len(parts) > 3 {
		return bad("it needs two or three figures")
	}
	var dims [3]Length
	unit := ""
	for i := len(parts) - 1; i >= 0; i-- {
		p := strings.TrimSpace(parts[i])
		if p == "" {
			return bad("a figure is missing")
		}
		if !strings.EqualFold(p, Unknown) {
			if _, u := splitUnit(p); u != "" {
				unit = u
			} else if unit == "" {
				return bad("it has no unit")
			} else {
				p += " " + unit
			}
		}
		l, err := ParseLength(p)
		if err != nil {
			return bad(err.Error())
		}
		if um, ok := l.Micrometers(); ok && um == 0 {
			return bad("a side of nothing")
		}
		dims[i] = l
	}
	if dims[0].IsUnknown() != dims[1].IsUnknown() {
		return bad("height and width are both known or both unknown")
	}
	return Size{Height: dims[0], Width: dims[1], Depth: dims[2]}, nil
}

// IsZero reports that no size was recorded.
func (s Size) IsZero() bool { return s == Size{} }

// String returns the canonical text.
func (s Size) String() string {
	if s.IsZero() || s.newer != "" {
		return s.newer
	}
	dims := []Length{s.Height, s.Width}
	if !s.Depth.IsZero() {
		dims = append(dims, s.Depth)
	}
	var b strings.Builder
	for i, d := range dims {
		if i > 0 {
			b.WriteString(" x ")
		}
		if i+1 < len(dims) && !d.IsUnknown() && dims[i+1].Unit() == d.Unit() {
			b.WriteString(d.Number())
		} else {
			b.WriteString(d.String())
		}
	}
	return b.String()
}

// MarshalText returns the canonical text.
func (s Size) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText is [ParseSize].
func (s *Size) UnmarshalText(b []byte) (err error) { *s, err = ParseSize(string(b)); return err }

// UnmarshalJSONFrom reads what stands in an entry. What this program cannot
// read is kept as it is; see [Size.Fault].
func (s *Size) UnmarshalJSONFrom(d *jsontext.Decoder) error {
	text, err := textFrom(d)
	if err == nil && s.UnmarshalText([]byte(text)) != nil {
		*s = Size{newer: text}
	}
	return err
}

// Fault says why the text cannot be read as a size; nil if it can.
func (s Size) Fault() error {
	if s.newer == "" {
		return nil
	}
	_, err := ParseSize(s.newer)
	return err
}

// AreaSquareMillimeters returns the area of the front, rounded, and whether
// both sides are known.
func (s Size) AreaSquareMillimeters() (int64, bool) {
	h, ok := s.Height.Micrometers()
	w, ok2 := s.Width.Micrometers()
	if !ok || !ok2 {
		return 0, false
	}
	return int64(float64(h)*float64(w)/1e6 + 0.5), true
}

// EdgeSquareMillimeters returns the area of the four edges together, and
// whether all three figures are known.
func (s Size) EdgeSquareMillimeters() (int64, bool) {
	h, ok := s.Height.Micrometers()
	w, ok2 := s.Width.Micrometers()
	d, ok3 := s.Depth.Micrometers()
	if !ok || !ok2 || !ok3 {
		return 0, false
	}
	return int64(2*float64(h+w)*float64(d)/1e6 + 0.5), true
}
