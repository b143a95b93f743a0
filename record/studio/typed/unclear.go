package typed

import (
	"regexp"
	"strings"

	"backleaf/record"
	"backleaf/record/studio/refuse"
)

var thousands = regexp.MustCompile(`^\s*([1-9][0-9]{0,2})\.([0-9]{3})\s*(g|mL|ml|mm|µm|um)\s*$`)

// twoWays refuses a figure that is a fraction to some and thousands to others,
// with both readings. In kg, L or cm nobody means thousands.
func twoWays(field, typed string, into any) error {
	switch into.(type) {
	case *record.Amount, *record.Length:
	default:
		return nil
	}
	m := thousands.FindStringSubmatch(typed)
	if m == nil {
		return nil
	}
	part := strings.TrimRight(m[1]+"."+m[2], "0")
	part = strings.TrimSuffix(part, ".")
	return refuse.Input(field, "two-readings", "%q could be %s %s or %s%s %s", typed, part, m[3], m[1], m[2], m[3])
}
