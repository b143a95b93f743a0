package tell_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/tell"
)

// What is reckoned is told in the units of the studio (1 in = 25.4 mm exactly,
// ISO 80000-3; t/°F = 9/5 t/°C + 32, ISO 80000-5), what was measured as it was.
func TestReckonedInUnitsOfStudio(t *testing.T) {
	metric, inches := tell.English().For(record.Studio{Units: "cm"}), tell.English().For(record.Studio{Units: "in"})
	depth, _ := record.ParseLength("3 mm")
	for _, x := range []struct {
		value      any
		metric, in string
	}{
		{record.Figure("254 mm"), "254 mm", "10 in"},
		{record.Figure("318 mm"), "318 mm", "12 1⁄2 in"},
		{record.Figure("25.4 mm"), "25.4 mm", "1 in"},
		{record.Figure("3.5 mm"), "3.5 mm", "0.14 in"},
		{record.Figure("0.1 mm"), "0.1 mm", "0.004 in"},
		{record.Figure("0.01 mm"), "0.01 mm", "0.0004 in"},
		{record.Figure("-2.1 mm"), "−2.1 mm", "−0.083 in"},
		{record.Figure("20 °C"), "20 °C", "68 °F"},
		{record.Figure("10.4 °C"), "10.4 °C", "50.7 °F"},
		{record.Figure("330 g/m2"), "330 g/m²", "330 g/m²"},
		{[]record.Figure{"0.06 mm", "2.1 mm"}, "0.06–2.1 mm", "0.002–0.083 in"},
		{depth, "3 mm", "3 mm"},
	} {
		plain := strings.NewReplacer("\u202f", " ")
		say := func(c *tell.Catalogue) string { return plain.Replace(c.Fill("{x:range}", record.With("x", x.value))) }
		if m, in := say(metric), say(inches); m != x.metric || in != x.in {
			t.Errorf("%v is told as %q and %q, not %q and %q", x.value, m, in, x.metric, x.in)
		}
	}
}
