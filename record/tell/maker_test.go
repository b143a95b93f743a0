package tell_test

import "testing"

// The maker of a panel is who made it then: a studio that changes its name or
// its place later changes nothing.
func TestMakerIsThatOfThen(t *testing.T) {
	const cut = `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`
	const later = `"kind":"studio","maker":"Exemple & Daughters","mark":"DM","place":"Cēsis, Latvia"`
	k := history(t, cut, later, `"kind":"paint","panels":["NUMBER"],"studio_as":[3]`)
	if k.Maker() != "Ada Exemple" || k.MakerPlace() != "" || k.Painter() != "Exemple & Daughters" {
		t.Errorf("made by %q in %q, painted by %q", k.Maker(), k.MakerPlace(), k.Painter())
	}
}

// The days of making are one span in words.
func TestMadeBetween(t *testing.T) {
	for _, c := range []struct{ cut, coat, words string }{
		{`"2025-05-02T14:00:00+02:00"`, `"2025-05-04T10:00:00+02:00"`, "2–4 May 2025"},
		{`"2025-05-02"`, `"2025-05-02T10:00:00+02:00"`, "2 May 2025"},
		{`"1998~"`, `"2001"`, "between about 1998 and 2001"},
		{`"unknown"`, `"unknown"`, "date not recorded"},
	} {
		k := history(t, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm","at":`+c.cut, `"kind":"coat","panels":["NUMBER"],"faces":["back"],"at":`+c.coat)
		if k.MadeBetween() != c.words {
			t.Errorf("%s to %s: %q", c.cut, c.coat, k.MadeBetween())
		}
	}
}
