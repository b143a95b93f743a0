package trade_test

import (
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

func care(t *testing.T, board record.BoardKind, layers ...trade.Made) map[string]trade.Advice {
	t.Helper()
	out := map[string]trade.Advice{}
	for _, a := range trade.CareOf(board, layers) {
		if len(a.Rests.Works) == 0 {
			t.Errorf("%s names no source", a.Code)
		}
		for _, w := range a.Rests.Works {
			if w != trade.Memory && w != trade.Practice && w.Title() == "" {
				t.Errorf("%s: no work %q", a.Code, w)
			}
		}
		out[a.Code] = a
	}
	return out
}

func varnish(resin record.Resin) trade.Made {
	v := &record.Varnish{ResinIs: resin}
	return trade.Made{Layer: record.Layer{Seq: 9, Face: record.Front, Varnish: v, Coating: &v.Coating}}
}

// Figures: Western Australian Museum manual (15–25 °C, 45–55 % RH, in 24 hours
// 4 °C and 5 %; 200 lux and 75 µW/lm, 50 lux and 30 for dyes and gum colours),
// international loan practice (16–25 °C, 40–60 %, ±10 %), CCI and a proposed
// standard (never below 25 or above 75 %), artists' sheets on encaustic.
func TestCareFigures(t *testing.T) {
	safe := record.Pigment{Index: "PB 29"}
	got := care(t, record.Plywood, coat(record.Ground, record.Material{Binder: record.Acrylic}), paint("oil", safe))
	for code, want := range map[string][4]string{
		"climate-of-museums": {"15 °C", "25 °C", "45 %", "55 %"}, "climate-of-loans": {"16 °C", "25 °C", "40 %", "60 %"},
		"never-beyond": {"", "", "25 %", "75 %"}, "room-of-comfort": {"", "", "35 %", "65 %"}, "acrylic-cold": {"10 °C", "", "", ""},
	} {
		a, ok := got[code]
		if figures := [4]string{a.Cold.String(), a.Warm.String(), a.Dry.String(), a.Damp.String()}; !ok || figures != want {
			t.Errorf("%s: %v %v, want %v", code, ok, figures, want)
		}
	}
	if a := got["climate-of-museums"]; a.TempDay != 4 || a.DampDay != 5 || a.For != trade.Museum {
		t.Errorf("museum climate: %+v", a)
	}
	if a := got["light"]; a.Lux != 200 || a.UV != 75 {
		t.Errorf("light: %+v", a)
	}
	for _, code := range []string{"oil-dries-on", "oil-cold", "cold-two-layers", "curve-is-normal"} {
		if _, ok := got[code]; !ok {
			t.Errorf("oil on acrylic ground on plywood: no %s", code)
		}
	}
}

func TestCareByBuildUp(t *testing.T) {
	dye := record.Pigment{Index: "PR 83"}
	glued := []trade.Made{coat(record.Adhesive, record.Material{Binder: record.PVA}), {Layer: record.Layer{Seq: 3, Cloth: &record.ClothLaid{}}, All: true}}
	for _, c := range []struct {
		what      string
		board     record.BoardKind
		layers    []trade.Made
		want, not []string
	}{
		{"a board alone", record.MDF, nil, []string{"never-wet", "gives-off-acids"}, []string{"light", "light-of-dyes", "light-less-if-dyes", "oil-cold", "acrylic-cold"}},
		{"oil with a lake", record.Plywood, []trade.Made{paint("oil", dye)}, []string{"light-of-dyes"}, []string{"light", "acrylic-cold"}},
		{"oil, colours unknown", record.Plywood, []trade.Made{paint("oil")}, []string{"light-less-if-dyes"}, []string{"light", "light-of-dyes"}},
		{"watercolour", record.Plywood, []trade.Made{paint("watercolour", record.Pigment{Index: "PB 29"})}, []string{"light-of-dyes", "touch-marks", "never-varnish", "glass-always", "air-only"}, []string{"light", "dust-with-brush"}},
		{"acrylic without varnish", record.MDF, []trade.Made{paint("acrylic")}, []string{"acrylic-holds-dust", "acrylic-heat", "acrylic-cold", "glass-against-dust"}, []string{"varnish-renewable"}},
		{"acrylic with varnish", record.MDF, []trade.Made{paint("acrylic"), varnish("hydrocarbon")}, []string{"varnish-renewable", "varnish-is-no-shield"}, []string{"acrylic-holds-dust", "glass-against-dust"}},
		{"egg tempera on gesso", record.Plywood, []trade.Made{coat(record.Ground, record.Material{Binder: record.AnimalGlue}), paint("egg-tempera")}, []string{"tempera-scratches", "tempera-bloom", "gesso-even-air", "glass-with-spacer"}, []string{"acrylic-cold"}},
		{"encaustic", record.Plywood, []trade.Made{paint("encaustic")}, []string{"wax-heat", "wax-bloom", "wax-edges"}, []string{"oil-cold"}},
		{"solid wood", record.SolidWood, nil, []string{"must-move"}, []string{"curve-is-normal"}},
		{"aluminium", record.AluminiumComp, nil, []string{"dents", "sun-bows-it"}, []string{"never-wet"}},
		{"cloth on PVA", record.Plywood, glued, []string{"never-press-blisters", "cloth-from-heat"}, []string{"cloth-from-damp"}},
	} {
		got := care(t, c.board, c.layers...)
		for _, code := range c.want {
			if _, ok := got[code]; !ok {
				t.Errorf("%s: no %s", c.what, code)
			}
		}
		for _, code := range c.not {
			if _, ok := got[code]; ok {
				t.Errorf("%s: %s", c.what, code)
			}
		}
	}
	if a := care(t, record.Plywood, paint("encaustic"))["wax-heat"]; a.Cold.String() != "5 °C" || a.Warm.String() != "40 °C" {
		t.Errorf("wax: %+v", a)
	}
	if a := care(t, record.Plywood, glued...)["cloth-from-heat"]; a.Warm.String() != "35 °C" {
		t.Errorf("cloth on PVA: warm %s", a.Warm)
	}
}

// No advice is given twice to one reader.
func TestCareOnce(t *testing.T) {
	layers := []trade.Made{coat(record.Adhesive, record.Material{Binder: record.Acrylic}, record.Material{Binder: record.PVA}), {Layer: record.Layer{Seq: 3, Cloth: &record.ClothLaid{}}}, paint("oil"), paint("alkyd")}
	var seen []string
	for _, a := range trade.CareOf(record.Hardboard, layers) {
		key := a.Code + " " + string(a.For)
		if slices.Contains(seen, key) {
			t.Errorf("%s twice", key)
		}
		seen = append(seen, key)
		if a.Code == "cloth-from-heat" && a.Warm.String() != "35 °C" {
			t.Errorf("the stricter of two limits: %s", a.Warm)
		}
	}
}
