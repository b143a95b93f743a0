package tell_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record/trade"
)

// The advice is by what the panel is, and a temperature stands in both scales,
// the studio's first. What no owner can keep, a museum's 200 lux or a lender's
// climate, stands on no label.
func TestCare(t *testing.T) {
	const cut = `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm","board":"b"`
	const inches = `"kind":"studio","maker":"Ada Exemple","mark":"DM","units":"in"`
	board := func(kind string) string {
		return `"kind":"material","key":"b","name":"B","uses":["board"],"board":{"kind":"` + kind + `"}`
	}
	for _, c := range []struct {
		name  string
		lines []string
		has   []string
		not   []string
	}{
		{"fibreboard", []string{board("mdf"), cut}, []string{"35–65 % relative humidity", "no sun", "never wet"}, []string{"cloth", "brittle"}},
		{"encaustic", []string{board("plywood"), cut, `"kind":"paint","panels":["NUMBER"],"medium":"encaustic"`}, []string{"wax: 5 °C (41 °F) to 40 °C (104 °F)"}, []string{"never wet"}},
		{"in inches", []string{inches, board("plywood"), cut, `"kind":"paint","panels":["NUMBER"],"medium":"encaustic"`}, []string{"wax: 41 °F (5 °C) to 104 °F (40 °C)"}, nil},
		{"solid wood", []string{board("solid-wood"), cut}, []string{"free to move"}, nil},
		{"oil", []string{board("plywood"), cut, `"kind":"paint","panels":["NUMBER"],"medium":"oil"`}, []string{"no frost"}, []string{"wax"}},
	} {
		k := history(t, c.lines...)
		line := ordinary.Replace(k.CareLine())
		for _, want := range c.has {
			if !strings.Contains(line, want) {
				t.Errorf("%s: %q is not in %q", c.name, want, line)
			}
		}
		for _, not := range append(c.not, "lux", "40 % to 60 %", "40–60") {
			if strings.Contains(line, not) {
				t.Errorf("%s: %q is in %q", c.name, not, line)
			}
		}
		if all := k.Care(trade.Owner); len(all) < 7 || slices.Contains(all, "") {
			t.Errorf("%s: %q", c.name, all)
		}
	}
}
