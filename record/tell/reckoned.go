package tell

import (
	"math"
	"strconv"

	"backleaf/record"
	"backleaf/record/measure"
)

// For returns the catalogue as it speaks to a studio: where that measures in
// inches, reckoned lengths are told in inches and temperatures in °F. What was
// measured is always told as it was.
func (c *Catalogue) For(s record.Studio) *Catalogue {
	if c.inches == (s.Units == "in") {
		return c
	}
	to := *c
	to.inches = !c.inches
	return &to
}

// inInches gives reckoned lengths in inches, temperatures in °F, and leaves
// other values.
func inInches(texts []string) (out []string) {
	for _, text := range texts {
		if p := figure().FindStringSubmatch(text); p != nil {
			switch x, _ := strconv.ParseFloat(p[1], 64); p[2] {
			case "mm":
				text = inches(x/25.4) + " in"
			case "°C":
				text = strconv.FormatFloat(math.Round((x*9/5+32)*10)/10, 'f', -1, 64) + " °F"
			}
		}
		out = append(out, text)
	}
	return out
}

// inches writes a length from an inch on to the nearest eighth, as sides are
// told, a smaller one in decimals as feeler gauges are marked.
func inches(in float64) string {
	if s, err := measure.InchFraction(int64(math.Round(in*25_400)), measure.EighthInch); err == nil && in >= 1 {
		return s
	}
	step := 1000.0
	switch size := math.Abs(in); {
	case size >= 0.1:
		step = 100
	case size < 0.001:
		step = 10_000
	}
	return strconv.FormatFloat(math.Round(in*step)/step, 'f', -1, 64)
}
