package tell

import (
	"strconv"
	"strings"

	"golang.org/x/text/feature/plural"

	"backleaf/record/paper"
	"backleaf/record/pattern"
)

// NumberFormat is how a language writes numbers. Every printed number goes
// through it.
type NumberFormat struct {
	Decimal   string // between whole and fraction
	Group     string // between groups of three digits
	GroupFrom int    // the least number of digits that is grouped
	Minus     string
	Range     string // between the ends of a range
	Times     string // between the sides of a size
	Unit      string // between figure and unit
	Fraction  string // between the parts of a fraction: "8 1/2"
	Whole     string // between a whole number and its fraction
}

var englishNumbers = NumberFormat{Decimal: ".", Group: paper.ThinSpace, GroupFrom: 5, Minus: "\u2212", Range: "–", Times: paper.NoBreakSpace + "×" + paper.NoBreakSpace,
	Unit: paper.ThinSpace, Fraction: "\u2044", Whole: paper.ThinSpace}

var (
	fraction = pattern.Of(`^(?:(\d+) )?(\d+)/(\d+)$`)
	decimal  = pattern.Of(`^(\d+)(?:\.(\d+))?$`)
	figure   = pattern.Of(`^(-?(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?))(?: (.+))?$`)
)

// Number writes a number of the record, "8 1/2", "-0.35", "12000", in type. It
// keeps every digit.
func (f NumberFormat) Number(number string) string {
	sign, digits := "", number
	if d, ok := strings.CutPrefix(number, "-"); ok {
		sign, digits = f.Minus, d
	}
	if p := fraction().FindStringSubmatch(digits); p != nil {
		if p[1] != "" {
			p[1] += f.Whole
		}
		return sign + p[1] + p[2] + f.Fraction + p[3]
	}
	p := decimal().FindStringSubmatch(digits)
	if p == nil {
		return number
	}
	if p[2] != "" {
		p[2] = f.Decimal + p[2]
	}
	return sign + f.group(p[1]) + p[2]
}

func (f NumberFormat) group(digits string) string {
	if f.GroupFrom == 0 || len(digits) < f.GroupFrom {
		return digits
	}
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + f.Group + digits[i:]
	}
	return digits
}

// Measure writes a number and its unit. Percent and the like are units too.
func (c *Catalogue) Measure(number, unit string) string {
	return c.Number.Number(number) + c.Number.Unit + c.unit(number, unit)
}

// unit is the word for a unit after a number.
func (c *Catalogue) unit(number, unit string) string {
	w, ok := c.lookUp("unit", unit)
	if !ok {
		return unit
	}
	return w.in(c.plural(number))
}

// plurals are the plural categories by their names in the CLDR.
var plurals = map[plural.Form]string{plural.Other: "other", plural.Zero: "zero", plural.One: "one", plural.Two: "two", plural.Few: "few", plural.Many: "many"}

// plural returns the plural category of a number as it is written: in some
// languages "1.0" and "1" differ. A fraction counts as decimals.
func (c *Catalogue) plural(number string) string {
	digits := strings.TrimPrefix(number, "-")
	if p := fraction().FindStringSubmatch(digits); p != nil {
		digits = "0" + p[1] + ".5"
	}
	p := decimal().FindStringSubmatch(digits)
	if p == nil {
		return "other"
	}
	trimmed := strings.TrimRight(p[2], "0")
	return plurals[plural.Cardinal.MatchPlural(c.Tag, operand(p[1]), len(p[2]), len(trimmed), operand(p[2]), operand(trimmed))]
}

// operand reads digits modulo ten million, as the plural rules allow.
func operand(digits string) int {
	n, _ := strconv.Atoi(digits[max(0, len(digits)-7):])
	return n
}
