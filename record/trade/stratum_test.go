package trade_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

func TestStrata(t *testing.T) {
	of := func(b record.Binder) record.Material { return record.Material{Binder: b} }
	resin := func(r record.Resin) trade.Made {
		v := &record.Varnish{ResinIs: r}
		return trade.Made{Layer: record.Layer{Varnish: v, Coating: &v.Coating}}
	}
	cloth := func(fibre record.Fibre, sized record.Answer) trade.Made {
		return trade.Made{Layer: record.Layer{Cloth: &record.ClothLaid{}}, Materials: []*record.Material{{Cloth: record.Cloth{Fibre: fibre, Sized: sized}}}, All: true}
	}
	for _, c := range []struct {
		what string
		made trade.Made
		want trade.Strata // in any order
	}{
		{"acrylic ground", coat(record.Ground, of(record.Acrylic)), trade.Strata{trade.AcrylicGround}},
		{"acrylic sealer", coat(record.Sealer, of(record.Acrylic)), trade.Strata{trade.AcrylicMedium}},
		{"acrylic, purpose not recorded", coat("", of(record.Acrylic)), trade.Strata{trade.AcrylicMedium, trade.AcrylicGround}},
		{"glue size", coat(record.Sizing, of(record.AnimalGlue)), trade.Strata{trade.GlueSize}},
		{"gesso", coat(record.Ground, of(record.AnimalGlue)), trade.Strata{trade.Gesso}},
		{"two acrylics", coat(record.Ground, of(record.Acrylic), of(record.Acrylic)), trade.Strata{trade.AcrylicGround}},
		{"acrylic and PVA", coat(record.Sealer, of(record.Acrylic), of(record.PVA)), trade.Strata{trade.AcrylicMedium, trade.Vinyl}},
		{"egg and oil", coat(record.Ground, of(record.Egg), of(record.DryingOil)), trade.Strata{trade.Emulsion}},
		{"oil", paint("oil"), trade.Strata{trade.OilPaint}},
		{"water-mixable oil", paint("water-mixable-oil"), trade.Strata{trade.OilPaint}},
		{"gouache", paint("gouache"), trade.Strata{trade.GumColour}},
		{"dammar", resin("dammar"), trade.Strata{trade.NaturalResin}},
		{"water-borne varnish", resin("acrylic-dispersion"), trade.Strata{trade.AcrylicVarnish}},
		{"raw linen", cloth("linen", record.No), trade.Strata{trade.RawLinen}},
		{"union cloth", cloth("linen-cotton", record.No), trade.Strata{trade.RawLinen, trade.RawCotton}},
	} {
		got := c.made.StrataOf()
		slices.Sort(got)
		slices.Sort(c.want)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
	// What is not recorded leaves all open that could be.
	for what, c := range map[string]struct {
		made trade.Made
		has  trade.Strata
	}{
		"coat of a binder nobody wrote down":  {coat(record.Ground, record.Material{}), trade.Strata{trade.AcrylicGround, trade.Gesso, trade.OilGround, trade.OtherStratum}},
		"paint of a medium nobody wrote down": {paint(""), trade.Strata{trade.OilPaint, trade.AcrylicPaint, trade.EggTempera, trade.Emulsion, trade.OtherStratum}},
		"varnish of an unknown resin":         {resin(""), trade.Strata{trade.NaturalResin, trade.AcrylicVarnish, trade.OtherStratum}},
		"cloth of which nothing is known":     {cloth("", ""), trade.Strata{trade.RawLinen, trade.RawCotton, trade.OilPrimedLinen, trade.OtherStratum}},
	} {
		for _, s := range c.has {
			if got := c.made.StrataOf(); !got.Has(s) {
				t.Errorf("%s: %v lacks %s", what, got, s)
			}
		}
	}
	if got := trade.BoardStrata(""); len(got) < 4 {
		t.Errorf("a board of no recorded kind: %v", got)
	}
}

// A cloth wetted through shows its adhesive: oil on it lies on no raw fibre.
func TestShows(t *testing.T) {
	glue := coat(record.Adhesive, record.Material{Binder: record.Acrylic})
	for wet, want := range map[record.Answer]record.Answer{record.Yes: record.Unknown, record.No: record.No, record.Unknown: record.Unknown} {
		cloth := trade.Made{Layer: record.Layer{Cloth: &record.ClothLaid{WetThrough: wet}}, Materials: []*record.Material{{Cloth: record.Cloth{Fibre: "linen", Sized: record.No}}}, All: true}
		if got := trade.Over(paint("oil").StrataOf(), trade.Shows(cloth, glue), func(trade.Condition) record.Answer { return record.Unknown }).Holds; got != want {
			t.Errorf("oil on linen, wetted through %s: %s, want %s", wet, got, want)
		}
	}
}

// Forgetting the purpose, the medium, the resin or a binder of a layer leaves
// open all that it was.
func TestForgettingLeavesOpen(t *testing.T) {
	rnd := rand.New(rand.NewPCG(17, 5))
	pick := func(list string) string { ws := append(record.Words(list), ""); return ws[rnd.IntN(len(ws))] }
	for range 5000 {
		var m trade.Made
		var ms []record.Material
		for range rnd.IntN(3) {
			ms = append(ms, record.Material{Binder: record.Binder(pick("Binder"))})
		}
		var forget func()
		switch rnd.IntN(3) {
		case 0:
			m = coat(record.Purpose(pick("Purpose")), ms...)
			forget = func() { m.Layer.Purpose = "" }
		case 1:
			m = paint(record.PaintMedium(pick("PaintMedium")))
			forget = func() { m.Layer.Paint.Medium = "" }
		default:
			m = varnish([]record.Resin{"dammar", "acrylic-resin", "acrylic-dispersion", "wax", ""}[rnd.IntN(5)])
			forget = func() { m.Layer.Varnish.ResinIs = "" }
		}
		m.Materials, m.All = coat("", ms...).Materials, true
		m.Layer.Coating.Mix = make([]record.Part, len(ms))
		before := m.StrataOf()
		mix := trade.Made{Layer: record.Layer{Coating: m.Layer.Coating}, Materials: m.Materials, All: true}
		of, known := mix.Binders()
		if bs, _ := m.Binders(); known && len(bs) > len(of) {
			continue // products that contradict the medium: to forget either is no vagueness
		}
		if i := rnd.IntN(3); i < len(ms) {
			m.Materials[i].Binder = ""
		} else {
			forget()
		}
		after := m.StrataOf()
		for _, s := range before {
			if !after.Has(s) {
				t.Fatalf("%v becomes %v, which lacks %s", before, after, s)
			}
		}
	}
}
