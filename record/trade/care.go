package trade

import (
	"slices"

	"backleaf/record"
)

// Audience is for whom an advice is meant. A museum's or a lender's figure is
// never given to an owner as if it were theirs.
type Audience string

// Audiences.
const (
	Owner       Audience = "owner"
	Museum      Audience = "museum"
	Lender      Audience = "lender"
	Framer      Audience = "framer"
	Conservator Audience = "conservator"
)

// Advice is one thing to tell whoever keeps a panel: a code, with the figures
// that belong to it. A figure that is not part of it is zero.
type Advice struct {
	Code             string
	For              Audience
	Cold, Warm       record.Temperature // not below, not above
	Dry, Damp        record.Percent     // relative humidity: not below, not above
	TempDay, DampDay int64              // most change within 24 hours, °C and % RH
	Lux, UV          int64              // lux, and µW of ultraviolet a lumen
	Gap              record.Length      // between glass and paint
	Rests            Standing
}

// adviceRow is an advice with the trait of a panel that calls for it; the
// figures are texts as the record writes them.
type adviceRow struct {
	trait      string
	code       string
	for_       Audience
	cold, warm string
	dry, damp  string
	tempDay    int64
	dampDay    int64
	lux, uv    int64
	gap        string
	from       string
}

// advices. A trait is what a panel is; "any" fits all.
var advices = []adviceRow{
	{trait: "any", code: "room-of-comfort", for_: Owner, dry: "35 %", damp: "65 %", from: "memory"},
	{trait: "any", code: "never-beyond", for_: Owner, dry: "25 %", damp: "75 %", from: "CCI-RH RH-proposal"},
	{trait: "any", code: "climate-of-museums", for_: Museum, cold: "15 °C", warm: "25 °C", dry: "45 %", damp: "55 %", tempDay: 4, dampDay: 5, from: "WAM-paintings"},
	{trait: "any", code: "climate-of-loans", for_: Lender, cold: "16 °C", warm: "25 °C", dry: "40 %", damp: "60 %", dampDay: 10, from: "AIC-Bizot NEMO-Bizot"},
	{trait: "no-dyes", code: "light", for_: Museum, lux: 200, uv: 75, from: "WAM-paintings"},
	{trait: "dyes", code: "light-of-dyes", for_: Museum, lux: 50, uv: 30, from: "WAM-paintings"},
	{trait: "dyes-open", code: "light-less-if-dyes", for_: Museum, lux: 200, uv: 75, from: "WAM-paintings"},
	{trait: "any", code: "no-sun", for_: Owner, from: "practice"},
	{trait: "any", code: "less-light-not-glass", for_: Owner, from: "CCI-light"},
	{trait: "any", code: "inner-wall", for_: Owner, from: "MITRA-storage practice"},
	{trait: "any", code: "no-water", for_: Owner, from: "CCI-10-1"},
	{trait: "any", code: "damage", for_: Owner, from: "practice"},
	{trait: "any", code: "frame-lets-move", for_: Framer, gap: "2 mm", from: "loan-guide-wood practice"},
	{trait: "brushable", code: "dust-with-brush", for_: Owner, from: "practice"},

	{trait: "oil", code: "oil-dries-on", for_: Owner, from: "memory"},
	{trait: "oil", code: "oil-cold", for_: Owner, from: "Mecklenburg-2"},
	{trait: "alkyd", code: "oil-cold", for_: Owner, from: "Mecklenburg-2"},
	{trait: "oil-on-acrylic", code: "cold-two-layers", for_: Owner, from: "Mecklenburg-2"},
	{trait: "acrylic", code: "acrylic-cold", for_: Owner, cold: "10 °C", from: "MRS-1992 Mecklenburg-2"},
	{trait: "acrylic-paint", code: "acrylic-heat", for_: Owner, warm: "60 °C", from: "acrylic-care-blog"},
	{trait: "acrylic-bare", code: "acrylic-holds-dust", for_: Owner, from: "MCI-acrylic Tate-acrylics"},
	{trait: "acrylic-bare", code: "glass-against-dust", for_: Framer, from: "practice"},
	{trait: "acrylic-varnished", code: "varnish-renewable", for_: Conservator, from: "MITRA-634 maker-isolation"},
	{trait: "tempera", code: "tempera-scratches", for_: Owner, from: "memory"},
	{trait: "tempera", code: "tempera-bloom", for_: Owner, from: "memory"},
	{trait: "gesso", code: "gesso-even-air", for_: Owner, from: "HeritageSci-2022-size"},
	{trait: "tempera-bare", code: "glass-with-spacer", for_: Framer, from: "memory"},
	{trait: "wax", code: "wax-heat", for_: Owner, cold: "5 °C", warm: "40 °C", from: "encaustic-care practice"},
	{trait: "wax", code: "wax-bloom", for_: Owner, from: "encaustic-care"},
	{trait: "wax", code: "wax-edges", for_: Framer, from: "encaustic-care"},
	{trait: "matt-bare", code: "touch-marks", for_: Owner, from: "gallery-letter-2003 WAM-paintings"},
	{trait: "matt-bare", code: "never-varnish", for_: Conservator, from: "gallery-letter-2003"},
	{trait: "matt-bare", code: "mould", for_: Owner, damp: "70 %", from: "practice"},
	{trait: "matt-bare", code: "air-only", for_: Owner, from: "CCI-10-1 practice"},
	{trait: "matt-bare", code: "glass-always", for_: Framer, gap: "5 mm", from: "practice"},
	{trait: "varnished", code: "varnish-is-no-shield", for_: Owner, from: "memory"},

	{trait: "plywood", code: "curve-is-normal", for_: Owner, from: "plywood-association MITRA-plywood-warp MITRA-388-553"},
	{trait: "plywood", code: "look-for-checks", for_: Owner, from: "MITRA-388-553"},
	{trait: "mdf", code: "never-wet", for_: Owner, from: "mdf-moisture"},
	{trait: "mdf", code: "gives-off-acids", for_: Framer, from: "wood-emissions mdf-emissions"},
	{trait: "hardboard", code: "carry-flat", for_: Owner, from: "MITRA-tempered MITRA-hdf-tempera practice"},
	{trait: "hardboard", code: "never-wet", for_: Owner, from: "mdf-moisture"},
	{trait: "solid-wood", code: "must-move", for_: Framer, from: "wood-handbook Getty-1998 loan-guide-wood"},
	{trait: "composite", code: "dents", for_: Owner, from: "memory"},
	{trait: "composite", code: "sun-bows-it", for_: Owner, from: "memory"},
	{trait: "cloth", code: "never-press-blisters", for_: Owner, from: "MITRA-seepage magazine-linen memory"},
	{trait: "cloth-glue", code: "cloth-from-damp", for_: Owner, from: "Padfield-7 MITRA-110 magazine-linen memory"},
	{trait: "cloth-paste", code: "cloth-from-damp", for_: Owner, from: "MITRA-110"},
	{trait: "cloth-pva", code: "cloth-from-heat", for_: Owner, warm: "35 °C", from: "memory"},
	{trait: "cloth-acrylic", code: "cloth-from-heat", for_: Owner, warm: "50 °C", from: "memory"},
}

func (r adviceRow) advice() Advice {
	a := Advice{Code: r.code, For: r.for_, TempDay: r.tempDay, DampDay: r.dampDay, Lux: r.lux, UV: r.uv, Rests: standing(r.from)}
	must(a.Cold.UnmarshalText, r.cold)
	must(a.Warm.UnmarshalText, r.warm)
	must(a.Dry.UnmarshalText, r.dry)
	must(a.Damp.UnmarshalText, r.damp)
	must(a.Gap.UnmarshalText, r.gap)
	return a
}

func must(read func([]byte) error, s string) {
	if s == "" {
		return
	}
	if err := read([]byte(s)); err != nil {
		panic("trade: " + err.Error())
	}
}

// CareOf returns the advice for a panel, by its board and what lies on it, in
// the order of the table, each once. Two that share a code and an audience are
// joined in the stricter figures.
func CareOf(board record.BoardKind, layers []Made) []Advice {
	traits := traitsOf(board, layers)
	var out []Advice
	for _, r := range advices {
		if !traits[r.trait] {
			continue
		}
		a := r.advice()
		i := slices.IndexFunc(out, func(b Advice) bool { return b.Code == a.Code && b.For == a.For })
		if i < 0 {
			out = append(out, a)
		} else if warmer(out[i].Warm, a.Warm) {
			out[i] = a
		}
	}
	return out
}

// warmer reports that the first limit is the higher or missing.
func warmer(a, b record.Temperature) bool {
	x, ok1 := a.Millicelsius()
	y, ok2 := b.Millicelsius()
	return ok2 && (!ok1 || x > y)
}
