package tell_test

import (
	"fmt"
	"reflect"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/accept"
	"backleaf/record/paper"
	"backleaf/record/section"
	"backleaf/record/tell"
)

// history is the teller of panel NUMBER after entries, one a line.
func history(t testing.TB, lines ...string) *tell.Teller {
	t.Helper()
	w := workshopOf(t, lines...)
	return tell.New(tell.English(), w, w.Panels[0])
}

func panelOf(t testing.TB, lines ...string) *record.Panel { return workshopOf(t, lines...).Panels[0] }

// workshopOf folds entries, one a line, about panel NUMBER.
func workshopOf(t testing.TB, lines ...string) *record.Workshop {
	t.Helper()
	n, err := record.NewNumber("DM", 2026, 7, "")
	if err != nil {
		t.Fatal(err)
	}
	var es []record.Entry
	for i, l := range append([]string{`"kind":"studio","maker":"Ada Exemple","mark":"DM"`}, lines...) {
		e, err := accept.Parse([]byte(fmt.Sprintf(`{"v":1,"seq":%d,"written":"2031-03-01T10:00:00+02:00",%s}`, i+1, strings.ReplaceAll(l, "NUMBER", string(n)))))
		if err != nil {
			t.Fatalf("%s: %v", l, err)
		}
		es = append(es, e)
	}
	w, err := record.Fold(es)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// ordinary puts ordinary spaces and strokes for those of print.
var ordinary = strings.NewReplacer(paper.ThinSpace, " ", paper.NoBreakSpace, " ", "\u2044", "/")

func TestDimensions(t *testing.T) {
	for _, c := range []struct{ size, want string }{
		// Cataloging Cultural Objects 3.2.1: 198 x 233 x 82 cm (78 x 91 3/4 x 32 1/4 inches).
		{"198 x 233 x 82 cm", "198 × 233 × 82 cm (78 × 91 3/4 × 32 1/4 in)"},
		// The figures of VRA-style examples: 26.6 x 19.1 cm, 10 1/2 x 7 1/2 inches.
		{"26.6 x 19.1 cm x 3 mm", "26.6 × 19.1 cm × 3 mm (10 1/2 × 7 1/2 × 1/8 in)"},
		// Measured in inches: as measured, never converted back.
		{"8 x 10 x 1/8 in", "8 × 10 × 1/8 in (20.3 × 25.4 cm × 3.2 mm)"},
		{"8 1/2 x 11 x 1/4 in", "8 1/2 × 11 × 1/4 in (21.6 × 27.9 cm × 6.4 mm)"},
		// Nothing is rounded to nothing.
		{"30 x 40 cm x 1 mm", "30 × 40 cm × 1 mm (11 3/4 × 15 3/4 × 1/16 in)"},
		// What is not known is said.
		{"30 x 40 cm", "30 × 40 cm (11 3/4 × 15 3/4 in), depth not recorded"},
		{"unknown x unknown", "height and width unknown"},
		{"unknown x unknown x 3 mm", "height and width unknown, 3 mm (1/8 in)"},
		// The spelling says how finely it was measured.
		{"30.0 x 40.0 cm x 3.00 mm", "30.0 × 40.0 cm × 3.00 mm (11 3/4 × 15 3/4 × 1/8 in)"},
	} {
		k := history(t, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"`+c.size+`"`)
		if got := ordinary.Replace(k.Dimensions()); got != c.want {
			t.Errorf("%s:\n got %s\nwant %s", c.size, got, c.want)
		}
	}
}

// A size breaks before its brackets and nowhere else; figures keep their unit.
func TestSizeHoldsTogether(t *testing.T) {
	k := history(t, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"2 x 2 x 1/8 in"`)
	if got := strings.Split(k.Dimensions(), " "); len(got) != 2 || !strings.HasPrefix(got[1], "(") {
		t.Errorf("breaks into %q", got)
	}
}

// One of a thing is said as one; a time of day has minutes, no seconds.
func TestOneAndMinutes(t *testing.T) {
	k := history(t, `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`)
	for text, want := range map[string]string{"1 weeks": "1 week", "2 weeks": "2 weeks", "1.5 weeks": "1.5 weeks", "1 months": "1 month", "1 h": "1 h"} {
		d, err := record.ParseDuration(text)
		if got := ordinary.Replace(k.Quantity(d)); err != nil || got != want {
			t.Errorf("%s: %q, %v", text, got, err)
		}
	}
	for text, want := range map[string]string{"2026-05-02T10:13:33+02:00": "2 May 2026, 10:13", "2026-05-02T00:00:00Z": "2 May 2026, 00:00", "1998~": "about 1998"} {
		at, err := record.ParseWhen(text)
		if got := k.Moment(at); err != nil || got != want {
			t.Errorf("%s: %q, %v", text, got, err)
		}
	}
}

const ply = `"kind":"material","key":"ply","name":"birch plywood","uses":["board"],"board":{"kind":"plywood","species":"birch","thickness":"3 mm"},"basis":"typical, common practice"`
const linen = `"kind":"material","key":"linen","name":"linen","uses":["cloth"],"cloth":{"fibre":"linen","weave":"plain","warp":"18 /cm","weft":"17 /cm"},"basis":"%s"`
const sealer = `"kind":"material","key":"sealer","name":"sealer","uses":["sealer"],"binder":"acrylic-dispersion","solids_by_volume":"42 %%","density":"1.04 g/mL"%s`

// As a cataloguer writes it.
func TestMediumLine(t *testing.T) {
	cut := `"kind":"cut","at":"2026-05","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm","board":"ply"`
	cloth := `"kind":"cloth","panels":["NUMBER"],"faces":["front"],"cloth":"linen"`
	paint := func(m string) string { return `"kind":"paint","panels":["NUMBER"]` + m }
	for _, c := range []struct {
		want  string
		lines []string
	}{
		{"birch plywood", []string{ply, cut}},
		{"linen laid on birch plywood", []string{ply, fmt.Sprintf(linen, "x"), cut, cloth}},
		{"oil on linen laid on birch plywood", []string{ply, fmt.Sprintf(linen, "x"), cut, cloth, paint(`,"medium":"oil"`)}},
		{"acrylic and oil on birch plywood", []string{ply, cut, paint(`,"medium":"acrylic"`), paint(`,"medium":"oil"`), paint(`,"medium":"oil"`)}},
		{"medium not recorded, on birch plywood", []string{ply, cut, paint("")}},
		{"medium not recorded, on birch plywood", []string{ply, cut, paint(`,"medium":"unknown"`)}},
		{"board of a kind not recorded", []string{`"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`}},
		{"oil, gold leaf, on panel", []string{ply, cut, paint(`,"medium":"oil"`), `"kind":"described","panels":["NUMBER"],"medium_line":"oil, gold leaf, on panel"`}},
	} {
		if got := history(t, c.lines...).MediumLine(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

// Values that are typical of a kind are never printed as facts of a panel.
func TestTypicalIsNoFact(t *testing.T) {
	cut := `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm","board":"ply"`
	cloth := `"kind":"cloth","panels":["NUMBER"],"faces":["front"],"cloth":"linen"`
	sheet := history(t, ply, fmt.Sprintf(linen, "weaver's sheet"), cut, cloth).BuildUp()
	typical := history(t, ply, fmt.Sprintf(linen, `typical, common practice","basis_kind":"typical`), cut, cloth).BuildUp()
	if !strings.Contains(sheet[0], "18") || strings.Contains(typical[0], "18") {
		t.Errorf("threads: %q by a sheet, %q by the kind", sheet[0], typical[0])
	}
	// The thickness of a board that was not measured is an estimate.
	bands := history(t, ply, cut).Section().Bands
	if bands[0].Certainty != section.Estimated || bands[0].ThicknessMicrons != 3000 {
		t.Errorf("%+v", bands[0])
	}
}

// A thickness is measured, estimated or not recorded, by how it is known.
func TestThickness(t *testing.T) {
	for _, c := range []struct {
		coat    string
		microns int64
		how     section.Certainty
	}{
		{`,"dry_film":"55 µm"`, 55, section.Measured},
		// 12 g over 0.12 m² at 1.04 g/mL are 96 µm wet, at 42 % 40 µm dry.
		{`,"wet_total":"12 g"`, 40, section.Estimated},
		{`,"wet_film":"100 µm"`, 42, section.Estimated},
		{``, 0, section.Unknown},
		{`,"wet_total":"unknown"`, 0, section.Unknown},
	} {
		k := history(t, ply, fmt.Sprintf(sealer, ""), `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm x 3 mm","board":"ply"`,
			`"kind":"coat","panels":["NUMBER"],"faces":["front"],"mix":[{"parts":1,"material":"sealer"}]`+c.coat)
		b := k.Section().Bands[0]
		if b.ThicknessMicrons != c.microns || b.Certainty != c.how {
			t.Errorf("%s: %d µm, %d; want %d µm, %d", c.coat, b.ThicknessMicrons, b.Certainty, c.microns, c.how)
		}
	}
}

func TestVarnishLine(t *testing.T) {
	cut := `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`
	product := func(more string) string {
		return `"kind":"material","key":"v","name":"V","uses":["varnish"],"binder":"acrylic-resin"` + more
	}
	varnish := func(more string) string {
		return `"kind":"varnish","panels":["NUMBER"],"mix":[{"parts":1,"material":"v"}]` + more
	}
	for _, c := range []struct {
		want  string
		lines []string
	}{
		{"No varnish recorded", []string{cut}},
		{"Acrylic resin varnish, not recorded whether removable", []string{product(""), cut, varnish("")}},
		{"Acrylic resin varnish, removable by a conservator with white spirit", []string{product(""), cut, varnish(`,"removable":"yes","removed_with":"white spirit"`)}},
		{"Acrylic resin varnish, not known whether removable", []string{product(""), cut, varnish(`,"removable":"unknown"`)}},
		{"Acrylic resin varnish, not removable", []string{product(""), cut, varnish(`,"removable":"no"`)}},
		{"Acrylic resin varnish, removable (typical for this kind; test first)",
			[]string{product(`,"removable":"yes","basis":"typical, common practice","basis_kind":"typical"`), cut, varnish("")}},
		{"No varnish today: acrylic resin varnish (taken off, 2031)", []string{product(""), cut, varnish(""), `"kind":"removed","panels":["NUMBER"],"layers":[4],"what":"varnish","extent":"whole","at":"2031"`}},
		{"Dammar varnish, satin, removable", []string{product(""), cut, varnish(`,"resin":"dammar","gloss":"satin","removable":"yes"`)}},
	} {
		if got := history(t, c.lines...).VarnishLine(); got != c.want {
			t.Errorf("got %q, want %q", got, c.want)
		}
	}
}

func TestMessages(t *testing.T) {
	// A recorded text is not searched for places.
	if got := tell.Message("{a} {b}").With("a", "{b}", "b", "x"); got != "{b} x" {
		t.Errorf("got %q", got)
	}
	const c = tell.Message("{n, plural, one {one coat} other {{n} coats}}")
	for n, want := range map[int]string{1: "one coat", 0: "0 coats", 5: "5 coats"} {
		if got := tell.English().Fill(c, record.With("n", n)); got != want {
			t.Errorf("%d: %q", n, got)
		}
	}
	before := tell.English().Lines.T("blank")
	if tell.English().Each(strings.ToUpper).Lines.T("size") != "{measured} ({other})" || tell.English().Lines.T("blank") != before {
		t.Error("Each changes a place, or the catalogue it copies")
	}
}

// Every message of the catalogue says something.
func TestNoMessageIsEmpty(t *testing.T) {
	n := 0
	var walk func(path string, v reflect.Value)
	walk = func(path string, v reflect.Value) {
		switch v.Kind() {
		case reflect.String:
			if strings.HasSuffix(path, ".Short") || strings.HasSuffix(path, ".First") {
				return
			}
			if n++; v.String() == "" {
				t.Errorf("%s is empty", path)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(path+"."+v.Type().Field(i).Name, v.Field(i))
			}
		case reflect.Slice, reflect.Array:
			if v.Len() == 0 {
				t.Errorf("%s is empty", path)
			}
			for i := range v.Len() {
				walk(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
			}
		case reflect.Map:
			for _, k := range v.MapKeys() {
				walk(fmt.Sprintf("%s[%v]", path, k), v.MapIndex(k))
			}
		}
	}
	walk("English", reflect.ValueOf(*tell.English()))
	if n < 400 {
		t.Errorf("only %d messages were looked at", n)
	}
}

// A title in a script that no face at hand has is printed in Latin letters if
// these are on record; where it can be printed they stand beside it.
func TestPrintTitle(t *testing.T) {
	const cut = `"kind":"cut","panels":["NUMBER"],"batch":"b","size":"30 x 40 cm"`
	for _, c := range []struct{ title, latin, want string }{
		{"Low tide", "", "Low tide"}, {"Χαμηλά νερά", "Chamila nera", "Χαμηλά νερά (Chamila nera)"}, {"\U00013000\U00013001", "Two signs", "Two signs"}, {"干潮", "Kanchō", "Kanchō"},
	} {
		latin := ""
		if c.latin != "" {
			latin = `,"title_romanised":"` + c.latin + `"`
		}
		k := history(t, cut, `"kind":"described","panels":["NUMBER"],"title":"`+c.title+`"`+latin)
		if got := k.PrintTitle(); got != c.want {
			t.Errorf("%q: %q, want %q", c.title, got, c.want)
		}
	}
}
