package trade_test

import (
	"slices"
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

// Sets of index names that hold something, compiled apart from the table
// itself; "some" are those of which some grades, salts or ages do.
var sets = []struct {
	hazard     trade.Hazard
	sure, some string
}{
	{trade.Lead, "PW 1, PW 2, PY 34, PY 41, PY 46, PO 21, PR 103, PR 104, PR 105, PG 15, PM 4", ""},
	{trade.Cadmium, "PY 35, PY 37, PO 20, PO 23, PR 108, PR 113", ""},
	{trade.Mercury, "PR 106, PR 113, PO 23", ""},
	{trade.Arsenic, "PY 39, PG 21, PG 22", "PV 14"},
	{trade.ChromiumVI, "PY 31, PY 32, PY 33, PY 34, PY 36, PO 21, PR 103, PR 104, PG 15", ""},
	{trade.Cobalt, "PV 14, PV 47, PV 48, PV 49, PB 28, PB 32, PB 35, PB 36, PB 72, PB 74, PY 40, PG 19, PG 26, PG 50, PBk 27, PBk 29", ""},
	{trade.Nickel, "PY 53, PY 150, PY 153, PY 157, PG 10, PR 257, PBk 30", "PG 50"},
	{trade.Antimony, "PW 11, PY 41, PY 53, PY 164, PBr 24, PR 107", "PY 216"},
	{trade.Manganese, "PV 16, PB 33, PBr 8, PBk 14, PBk 26, PY 164, PB 86", "PBr 7, PR 48, PR 57, PBk 28"},
	{trade.Barium, "PW 10, PY 31", "PB 33, PB 17, PR 48, PR 57"},
}

func TestHazardSets(t *testing.T) {
	for _, s := range sets {
		for _, row := range compiled {
			for index := range strings.SplitSeq(row.index, ", ") {
				base, _, _ := strings.Cut(index, ":")
				want := record.No
				if slices.Contains(strings.Split(s.sure, ", "), base) {
					want = record.Yes
				} else if slices.Contains(strings.Split(s.some, ", "), base) {
					want = record.Unknown
				}
				for _, suffix := range []string{"", ":1"} {
					if got := trade.Holds(record.Pigment{Index: base + suffix}, s.hazard); got != want {
						t.Errorf("%s in %s: %s, want %s", s.hazard, base+suffix, got, want)
					}
				}
			}
		}
	}
}

func TestZincSets(t *testing.T) {
	for index := range strings.SplitSeq("PW 4, PG 19", ", ") {
		if got := trade.HoldsZinc(record.Pigment{Index: index}, trade.ZincOxide); got != record.Yes {
			t.Errorf("zinc oxide in %s: %s", index, got)
		}
	}
	for index := range strings.SplitSeq("PW 5, PW 7, PY 35, PY 36, PY 119, PY 216, PB 72, PB 74, PBr 31, PBr 33, PM 6", ", ") {
		p := record.Pigment{Index: index}
		if got := trade.HoldsZinc(p); got != record.Yes {
			t.Errorf("zinc in %s: %s", index, got)
		}
		want := record.No
		if index == "PW 5" {
			want = record.Unknown // may carry a little oxide (dictionaries of polymers and of bookbinding)
		}
		if got := trade.HoldsZinc(p, trade.ZincOxide); got != want {
			t.Errorf("zinc oxide in %s: %s", index, got)
		}
	}
	for index := range strings.SplitSeq("PG 50, PBr 24, PY 53, PBk 12, PM 2", ", ") {
		if got := trade.HoldsZinc(record.Pigment{Index: index}); got != record.Unknown {
			t.Errorf("zinc in %s: %s", index, got)
		}
	}
}

func TestFugitiveSet(t *testing.T) {
	for index := range strings.SplitSeq("PR 57:1, PR 81, PR 83, NR 9, NR 8, PV 1, PV 2, PV 3, PV 39, NR 4, NY 24, PO 13, PB 1, NBr 8", ", ") {
		if got := trade.Fugitive(record.Pigment{Index: index}); got != record.Yes {
			t.Errorf("%s is fugitive: %s", index, got)
		}
	}
}

// Not hazards although they sound so: carbazole violet, ferrocyanide, barium
// sulfate, chromium III.
func TestSoundsWorse(t *testing.T) {
	for _, index := range []string{"PV 23", "PB 27", "PW 21", "PW 22", "PG 17", "PG 18"} {
		if got := trade.HarmfulDust(record.Pigment{Index: index}); got != record.No {
			t.Errorf("%s: harmful %s", index, got)
		}
	}
	for _, index := range []string{"PBr 24", "PY 53", "PY 164", "PB 28"} { // bound in a lattice: named, not warned of
		p := record.Pigment{Index: index}
		if holds, _ := trade.HazardsOf(p); len(holds) == 0 || trade.HarmfulDust(p) != record.No {
			t.Errorf("%s: holds %v, harmful %s", index, holds, trade.HarmfulDust(p))
		}
	}
}

// Names that mislead, row by row (CAMEO, WebExhibits, AAT scope note, shop and
// maker pages; the rest common practice): what the name alone settles, what it
// may be, and what it does not even suggest.
func TestMisleadingNames(t *testing.T) {
	for _, c := range []struct {
		names             string
		yes, may, neither string // hazards
		zinc, oxide       record.Answer
	}{
		{"cadmium red hue|imitation cadmium yellow|cadmium-free red|cadmium free yellow|Kadmiumton|Kadmiumrotton|Kadmiumgelb-Ton|Kadmiumgelb imit.|Kadmiumgelb Farbton|ton de cadmium|rouge ton cadmium|cadmiumfrei|jaune de cadmium imitation|cadmium substitute|substitut de cadmium", "", "", "cadmium lead", "unknown", "unknown"},
		{"lead white hue|lead-free flake|flake white hue|bleifreies Weiß|bleifrei|weiss bleifrei|Bleiweiß-Ersatz|Bleiweißersatz|blanc de plomb sans plomb|blanc d’argent imitation|lead white new|lead white (substitute)", "", "", "lead", "unknown", "unknown"},
		{"zinc white hue|Zinkweiß imit.|ton blanc de zinc", "", "", "lead", "unknown", "unknown"},
		{"emerald green|Emerald Green", "", "arsenic", "lead", "unknown", "unknown"},
		{"vert émeraude|vert emeraude|verde esmeralda|Smaragdgrün", "", "", "arsenic", "unknown", "unknown"},
		{"vert Véronèse", "", "arsenic", "lead", "unknown", "unknown"},
		{"Veronese green", "", "", "arsenic lead", "unknown", "unknown"},
		{"Naples yellow|Neapelgelb|jaune de Naples|Naples yellow light", "", "lead antimony cadmium", "mercury", "unknown", "unknown"},
		{"genuine Naples yellow|Naples yellow (genuine)|Neapelgelb, echt|jaune de Naples véritable", "lead antimony", "", "cadmium", "unknown", "unknown"},
		{"zinc yellow|Zinkgelb", "chromium-vi", "", "lead", "yes", "unknown"},
		{"zinc white|Zinkweiß|blanc de zinc", "", "", "lead chromium-vi", "yes", "yes"},
		{"zinc green|Zinkgrün", "", "cobalt chromium-vi", "lead", "yes", "unknown"},
		{"lithopone|enamel white|Charlton white|Lithopone", "", "", "lead", "yes", "unknown"},
		{"permanent white", "", "", "lead", "unknown", "unknown"},
		{"flake white|Cremnitz|silver white", "", "lead", "cadmium", "unknown", "unknown"},
		{"titanium white|Titanweiß|blanc de titane", "", "", "lead", "unknown", "unknown"},
		{"Chinese white", "", "", "lead", "unknown", "unknown"},
		{"lemon yellow|Zitronengelb|jaune citron", "", "chromium-vi barium lead cadmium nickel antimony", "arsenic", "unknown", "unknown"},
		{"cerulean blue|Coelinblau|bleu céruléum", "", "cobalt", "lead", "unknown", "unknown"},
		{"cobalt green|Kobaltgrün|vert de cobalt", "cobalt", "nickel lead chromium-vi", "arsenic", "unknown", "unknown"},
		{"cobalt violet|Kobaltviolett hell", "cobalt", "arsenic", "lead", "unknown", "unknown"},
		{"manganese blue|Manganblau", "", "manganese", "lead", "unknown", "unknown"},
		{"chrome green", "", "lead chromium-vi", "arsenic", "unknown", "unknown"},
		{"Chromgrün", "lead chromium-vi", "", "arsenic", "unknown", "unknown"},
		{"Chromoxidgrün|chromium oxide green|vert oxyde de chrome", "", "", "lead chromium-vi", "unknown", "unknown"},
		{"chrome yellow hue|Hansa yellow|Hansagelb", "", "", "lead chromium-vi", "unknown", "unknown"},
		{"vermilion|Zinnober|vermillon|cinabre", "", "mercury cadmium", "lead", "unknown", "unknown"},
		{"English red|Venetian red|Indian red|caput mortuum|Englischrot", "", "", "lead mercury cadmium", "unknown", "unknown"},
		{"Indian yellow|Indischgelb", "", "", "lead", "unknown", "unknown"},
		{"sap green|Hooker’s green|olive green", "", "", "lead arsenic", "unknown", "unknown"},
		{"rose madder|madder lake|Krapplack", "", "", "lead mercury", "unknown", "unknown"},
		{"sepia|Van Dyck brown", "", "manganese", "lead", "unknown", "unknown"},
		{"gold|silver|bronze|copper", "", "", "lead cadmium", "unknown", "unknown"},
		{"Mars yellow|Mars red|ferrite|transparent oxide red", "", "", "lead cadmium", "unknown", "unknown"},
		{"red lead|Mennige|Bleimennige", "lead", "", "mercury", "unknown", "unknown"},
		{"minium", "", "lead mercury", "cadmium", "unknown", "unknown"},
		{"cinnabar green|Zinnobergrün|vert de cinabre", "", "lead chromium-vi", "mercury", "unknown", "unknown"},
		{"ultramarine yellow|Ultramaringelb", "chromium-vi", "barium", "lead", "unknown", "unknown"},
		{"house mix no. 3|Malgrau|", "", "", "lead cadmium arsenic mercury", "unknown", "unknown"},
		// Traditional names that the rules must know in three languages.
		{"lead white|white lead|Bleiweiß|BLEIWEISS|Kremserweiß|Kremser Weiß|Cremnitzer Weiß|blanc de plomb|céruse|ceruse|blanc d’argent|blanc d'argent|Bleizinngelb|lead-tin yellow|mine orange", "lead", "", "cadmium", "unknown", "unknown"},
		{"chrome yellow|Chromgelb|jaune de chrome", "lead chromium-vi", "", "cadmium", "unknown", "unknown"},
		{"cadmium red|Cadmiumrot|Kadmiumrot tief|Kadmiumorange|rouge de cadmium|orange de cadmium|cadmium barium yellow", "cadmium", "", "mercury lead", "unknown", "unknown"},
		{"orpiment|realgar|réalgar|Realgar|Auripigment|Königsgelb|Rauschgelb|Schweinfurter Grün|vert de Schweinfurt", "arsenic", "", "lead", "unknown", "unknown"},
	} {
		for name := range strings.SplitSeq(c.names, "|") {
			p := record.Pigment{Name: name}
			holds, may := trade.HazardsOf(p)
			for _, h := range trade.Hazards {
				word := string(h)
				has := func(list string) bool { return slices.Contains(strings.Fields(list), word) }
				switch {
				case has(c.yes) && !contains(holds, h):
					t.Errorf("%q: %s is not known", name, h)
				case has(c.may) && !contains(may, h):
					t.Errorf("%q: %s is not thought possible", name, h)
				case has(c.neither) && (contains(holds, h) || contains(may, h)):
					t.Errorf("%q: %s is suggested", name, h)
				}
				if !has(c.yes) && contains(holds, h) {
					t.Errorf("%q: said to hold %s", name, h)
				}
				if trade.Holds(p, h) == record.No {
					t.Errorf("%q: a name alone rules out %s", name, h)
				}
			}
			if got := trade.HoldsZinc(p); got != c.zinc {
				t.Errorf("%q: zinc %s, want %s", name, got, c.zinc)
			}
			if got := trade.HoldsZinc(p, trade.ZincOxide); got != c.oxide {
				t.Errorf("%q: zinc oxide %s, want %s", name, got, c.oxide)
			}
		}
	}
}

// The index name decides against the name, and stands in the name too.
func TestIndexDecides(t *testing.T) {
	for _, c := range []struct {
		p    record.Pigment
		h    trade.Hazard
		want record.Answer
	}{
		{record.Pigment{Name: "cadmium red", Index: "PR 254"}, trade.Cadmium, record.No},
		{record.Pigment{Name: "brilliant yellow", Index: "py35:1"}, trade.Cadmium, record.Yes},
		{record.Pigment{Name: "cadmium yellow hue", Index: "PY 35"}, trade.Cadmium, record.Yes},
		{record.Pigment{Name: "PW 1"}, trade.Lead, record.Yes},
		{record.Pigment{Name: "flake white PW1"}, trade.Lead, record.Yes},
		{record.Pigment{Name: "white (PW 6)"}, trade.Lead, record.No},
		{record.Pigment{Name: "PW 6 + filler"}, trade.Lead, record.Unknown},
		{record.Pigment{Name: "white", Index: "PW 6 + PW 4"}, trade.Lead, record.No},
		{record.Pigment{Name: "white", Index: "PW 6, PW 1"}, trade.Lead, record.Yes},
		{record.Pigment{Name: "white", Index: "PW 6, others"}, trade.Lead, record.Unknown},
		{record.Pigment{Name: "new yellow", Index: "PY 999"}, trade.Lead, record.Unknown},
		{record.Pigment{Name: "lead-tin yellow", Index: "PY 999"}, trade.Lead, record.Yes}, // an index that no table knows decides nothing
		{record.Pigment{Name: "lead white", Index: "unknown"}, trade.Lead, record.Yes},
		{record.Pigment{Name: "lead white", Index: "n/a"}, trade.Lead, record.Yes},
		{record.Pigment{Name: "lead white + house grey"}, trade.Lead, record.Yes},
	} {
		if got := trade.Holds(c.p, c.h); got != c.want {
			t.Errorf("%s in %+v: %s, want %s", c.h, c.p, got, c.want)
		}
	}
}
