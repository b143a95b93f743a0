package typed

import (
	"strings"

	"backleaf/record"
	"backleaf/record/pattern"
	"backleaf/record/studio/refuse"
)

// deepest parts a size of three figures of which only the last has a unit.
var deepest = pattern.Of(`^([^a-zA-Z"'″]*[0-9½¼¾⅛⅜⅝⅞]\s*[xX×*][^a-zA-Z"'″]*[0-9½¼¾⅛⅜⅝⅞])\s*([xX×*].*)$`)

// mostSide is the longest side that a figure without a unit could mean, in µm.
const mostSide = 2_500_000

// twoSizes refuses "12x16x3mm" in a studio that measures in inches: the sides
// could be in its unit or in that of the thickness. A side that would be longer
// than any panel is not meant.
func twoSizes(field, typed string, units record.LengthUnit) error {
	m := deepest().FindStringSubmatch(strings.TrimSpace(typed))
	if m == nil || units == "" || units == record.Unknown {
		return nil
	}
	one, err := record.ParseSize(typed)
	other, err2 := record.ParseSize(m[1] + " " + string(units) + " " + m[2])
	if err != nil || err2 != nil || one.Height == other.Height || one.Depth.IsZero() || longest(one) > mostSide || longest(other) > mostSide {
		return nil
	}
	return refuse.Input(field, "two-readings", "%q could be %s or %s", typed, one, other)
}

func longest(s record.Size) int64 {
	h, _ := s.Height.Micrometers()
	w, _ := s.Width.Micrometers()
	return max(h, w)
}

var thousands = pattern.Of(`^\s*([1-9][0-9]{0,2})\.([0-9]{3})\s*(g|mL|ml|mm|µm|um)\s*$`)

// twoWays refuses a figure that is a fraction to some and thousands to others,
// with both readings. In kg, L or cm nobody means thousands.
func twoWays(field, typed string, into any) error {
	switch into.(type) {
	case *record.Amount, *record.Length:
	default:
		return nil
	}
	m := thousands().FindStringSubmatch(typed)
	if m == nil {
		return nil
	}
	part := strings.TrimRight(m[1]+"."+m[2], "0")
	part = strings.TrimSuffix(part, ".")
	return refuse.Input(field, "two-readings", "%q could be %s %s or %s%s %s", typed, part, m[3], m[1], m[2], m[3])
}
