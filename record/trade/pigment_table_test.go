package trade_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

// The pigments by Colour Index name: what harms, zinc and behaviour in light,
// in the words in which it was compiled from CAMEO, ColourLex, Gettens and
// Stout (1942), WebExhibits, pigment handbooks and makers' and suppliers'
// pages, the greater part from memory of the literature.
var compiled = []struct{ index, hazard, zinc, light string }{
	{"PW 1", "lead", "no, but tubes named flake white often add PW 4", "excellent"},
	{"PW 2", "lead", "no", "excellent"},
	{"PW 4", "none known (leaded grades: lead)", "yes", "excellent; speeds fading of some dyes"},
	{"PW 5", "none known", "yes (sulfide; often some oxide)", "older grades greyed in light"},
	{"PW 6", "none known (dust)", "no, but oil tubes often add PW 4", "excellent"},
	{"PW 7", "none known", "yes (sulfide)", "fair to good"},
	{"PW 10", "barium soluble (in acid, stomach)", "no", "excellent"},
	{"PW 11", "antimony", "no", "excellent"},
	{"PW 18", "none known", "no", "excellent"},
	{"PW 19", "none known (dust)", "no", "excellent"},
	{"PW 20", "none known (dust)", "no", "excellent"},
	{"PW 21, PW 22", "none known (insoluble barium)", "no", "excellent"},
	{"PW 25", "none known", "no", "excellent"},
	{"PW 26", "none known (dust; fibre-free only)", "no", "excellent"},
	{"PY 1", "none known", "no", "fair to poor in tints"},
	{"PY 3", "none known", "no", "fair to good"},
	{"PY 31", "chromium VI, barium soluble in acid", "no", "fairly good; greens"},
	{"PY 32", "chromium VI", "no", "greens, darkens"},
	{"PY 33", "chromium VI", "no", "greens"},
	{"PY 34", "lead, chromium VI", "no", "darkens, pale grades most"},
	{"PY 35", "cadmium", "yes (sulfide, in the lattice)", "excellent dry; pale fades with damp"},
	{"PY 36", "chromium VI (carcinogen)", "yes (chromate)", "greens, browns"},
	{"PY 37", "cadmium", "no", "excellent dry"},
	{"PY 39", "arsenic", "no", "light-sensitive, more than the 1942 book says"},
	{"PY 40", "cobalt", "no", "disputed; browns"},
	{"PY 41", "lead, antimony", "no", "excellent"},
	{"PY 42", "none known", "no", "excellent"},
	{"PY 43", "none known", "no", "excellent"},
	{"PY 46", "lead", "no", "turns"},
	{"PY 53", "nickel, antimony (bound)", "no (modifiers may include zinc)", "excellent"},
	{"PY 65", "none known", "no", "good"},
	{"PY 73", "none known", "no", "good"},
	{"PY 74", "none known", "no", "good to fair by grade"},
	{"PY 83", "none known (heat above 200 °C splits)", "no", "good"},
	{"PY 97", "none known", "no", "good"},
	{"PY 110", "none known", "no", "excellent"},
	{"PY 119", "none known", "yes (bound in spinel)", "excellent"},
	{"PY 128", "none known", "no", "good"},
	{"PY 129", "none known (copper)", "no", "good to fair"},
	{"PY 138", "none known", "no", "good"},
	{"PY 139", "none known", "no", "good to fair"},
	{"PY 150", "nickel", "no", "good"},
	{"PY 151", "none known", "no", "excellent"},
	{"PY 153", "nickel", "no", "good"},
	{"PY 154", "none known", "no", "excellent"},
	{"PY 157", "nickel (barium bound)", "no", "excellent"},
	{"PY 159", "none known", "no", "excellent"},
	{"PY 164", "manganese, antimony (bound)", "no", "excellent"},
	{"PY 184", "none of the list (vanadium: dust harmful)", "no", "excellent"},
	{"PY 216", "antimony in some grades", "yes (bound)", "excellent"},
	{"NY 24", "none of the list (purgative, toxic)", "no", "poor"},
	{"PO 5", "none known", "no", "fair"},
	{"PO 13, PO 34", "none known", "no", "poor / fair"},
	{"PO 20", "cadmium", "no", "excellent dry"},
	{"PO 21", "lead, chromium VI", "no", "darkens"},
	{"PO 23", "cadmium, mercury", "no", "good"},
	{"PO 36, PO 62", "none known", "no", "good to excellent"},
	{"PO 43", "none known", "no", "excellent"},
	{"PO 48, PO 49", "none known", "no", "good to excellent"},
	{"PO 71, PO 73", "none known", "no", "excellent"},
	{"PO 75, PR 265", "none known", "no", "good; damp and acid spoil it"},
	{"PR 3", "none known", "no", "fair, poor in tints"},
	{"PR 5, PR 9, PR 112, PR 170, PR 188", "none known", "no", "fair to good by number: name the number"},
	{"PR 48, PR 57:1", "manganese or barium in some salts", "no", "poor"},
	{"PR 81", "none known", "no", "poor (fugitive)"},
	{"PR 83", "none known", "no", "poor in tints"},
	{"NR 9, NR 8", "none known", "no", "poor to fair"},
	{"NR 4", "none of the list (allergy)", "no", "poor"},
	{"PR 101", "none known", "no", "excellent"},
	{"PR 102", "none known", "no", "excellent"},
	{"PR 103", "lead, chromium VI", "no", "darkens"},
	{"PR 104", "lead, chromium VI", "no", "like chrome yellow; coated grades better"},
	{"PR 105", "lead", "no", "blackens in water media and lime"},
	{"PR 106", "mercury", "no", "can turn grey-black in light, with chloride"},
	{"PR 107", "antimony", "no", "fair"},
	{"PR 108", "cadmium, selenium", "no", "excellent dry"},
	{"PR 113", "cadmium, mercury", "no", "good"},
	{"PR 122, PR 202, PR 209", "none known", "no", "good to excellent"},
	{"PR 144, PR 166, PR 242", "none known", "no", "good to excellent"},
	{"PR 149, PR 178, PR 179, PR 224", "none known", "no", "excellent (224: alkali)"},
	{"PR 177", "none known", "no", "good"},
	{"PR 206, PR 207", "none known", "no", "excellent"},
	{"PR 233", "none known (bound chromium III)", "no", "excellent"},
	{"PR 254, PR 255, PR 264", "none known", "no", "excellent"},
	{"PR 257", "nickel", "no", "good"},
	{"PR 259", "none known", "no", "excellent"},
	{"PV 14", "cobalt (arsenic in old)", "no", "excellent"},
	{"PV 15", "none known", "no", "excellent"},
	{"PV 16", "manganese", "no", "excellent"},
	{"PV 19", "none known", "no", "good to excellent"},
	{"PV 23, PV 37", "none known", "no", "fair to good, poor in tints (23)"},
	{"PV 1, PV 2, PV 3, PV 39", "none known", "no", "poor (fugitive)"},
	{"PV 29", "none known", "no", "excellent"},
	{"PV 47, PV 48", "cobalt", "no", "excellent"},
	{"PV 49", "cobalt", "no", "excellent"},
	{"PB 1", "none known", "no", "poor"},
	{"PB 15", "none known (copper)", "no", "excellent"},
	{"PB 16", "none known", "no", "excellent"},
	{"PB 17", "barium salt in some", "no", "fair"},
	{"PB 27", "none known (do not heat)", "no", "good; fades in tints with white"},
	{"PB 28", "cobalt (bound)", "no (some grades modified with zinc)", "excellent"},
	{"PB 29", "none known", "no", "excellent"},
	{"PB 30", "none of the list (copper)", "no", "excellent"},
	{"PB 31", "none of the list (copper)", "no", "excellent"},
	{"PB 32", "cobalt", "no", "greys in oil"},
	{"PB 33", "manganese (barium)", "no", "excellent"},
	{"PB 34", "none of the list (copper)", "no", "unknown"},
	{"PB 35", "cobalt", "no (a 'hue' may hold zinc)", "excellent"},
	{"PB 36", "cobalt (chromium III bound)", "no (zinc in some grades)", "excellent"},
	{"PB 60", "none known", "no", "excellent"},
	{"PB 66, NB 1", "none known", "no", "fair to poor"},
	{"PB 72", "cobalt (bound)", "yes (bound)", "excellent (seller prints I)"},
	{"PB 74", "cobalt (bound)", "yes (bound)", "excellent"},
	{"PB 86", "manganese (bound)", "no", "excellent"},
	{"PG 7", "none known (copper)", "no", "excellent"},
	{"PG 8", "none known", "no", "fair"},
	{"PG 10", "nickel", "no", "good"},
	{"PG 15", "lead, chromium VI", "no", "fair"},
	{"PG 17", "none known (chromium III)", "no", "excellent"},
	{"PG 18", "none known (chromium III; borate traces)", "no", "excellent"},
	{"PG 19", "cobalt", "yes (solid solution, mostly zinc oxide)", "excellent"},
	{"PG 20", "none of the list (copper)", "no", "browns in oil"},
	{"PG 21", "arsenic (copper)", "no", "good"},
	{"PG 22", "arsenic (copper)", "no", "fair"},
	{"PG 23", "none known", "no", "excellent"},
	{"PG 24", "none known", "no", "good"},
	{"PG 26", "cobalt (chromium III bound)", "no", "excellent"},
	{"PG 36", "none known (copper)", "no", "excellent"},
	{"PG 39", "none of the list (copper)", "no", "excellent"},
	{"PG 50", "cobalt, nickel in teal grades", "may (many grades hold zinc)", "excellent"},
	{"PBr 6", "none known", "no", "excellent"},
	{"PBr 7", "none known (siena); manganese (umber)", "no", "excellent"},
	{"PBr 8", "manganese", "no", "excellent"},
	{"NBr 8", "none known", "no", "poor"},
	{"PBr 11", "none known", "no", "excellent"},
	{"PBr 24", "antimony, chromium III (bound)", "may (permitted modifiers include zinc oxide)", "excellent"},
	{"PBr 25", "none known", "no", "good"},
	{"PBr 29", "none known (chromium III)", "no", "excellent"},
	{"PBr 31", "none known", "yes (bound)", "excellent"},
	{"PBr 33", "none known (chromium III)", "yes (bound)", "excellent"},
	{"PBr 35", "none known (chromium III)", "no", "excellent"},
	{"PBk 6, PBk 7", "none of the list (tar traces in poor grades)", "no", "excellent"},
	{"PBk 8", "none known", "no", "excellent"},
	{"PBk 9", "none known", "no", "excellent"},
	{"PBk 10", "none known", "no", "excellent"},
	{"PBk 11", "none known", "no", "excellent"},
	{"PBk 12", "none known", "no (modifiers may include zinc)", "excellent"},
	{"PBk 14", "manganese", "no", "excellent"},
	{"PBk 26", "manganese (bound)", "no", "excellent"},
	{"PBk 27, PBk 29", "cobalt (bound)", "no", "excellent"},
	{"PBk 28", "none known (chromium III, copper; manganese in some)", "no", "excellent"},
	{"PBk 30", "nickel", "no", "excellent"},
	{"PM 1", "none known (dust burns)", "no", "good, dulls"},
	{"PM 2", "none of the list (copper)", "yes in brass-coloured grades", "tarnishes"},
	{"PM 3", "none known", "no", "excellent"},
	{"PM 4", "lead", "no", "dulls"},
	{"PM 6", "none known (dust burns)", "yes (metal)", "dulls"},
}

var hazardWords = []struct {
	word   string
	hazard trade.Hazard
}{{"lead", trade.Lead}, {"cadmium", trade.Cadmium}, {"mercury", trade.Mercury}, {"arsenic", trade.Arsenic}, {"chromium VI", trade.ChromiumVI},
	{"cobalt", trade.Cobalt}, {"nickel", trade.Nickel}, {"antimony", trade.Antimony}, {"manganese", trade.Manganese}, {"barium", trade.Barium}}

// doubtful are the words of the table that say "some do": old or leaded or teal
// grades, some salts, umber and not sienna.
var doubtful = map[string]string{"PV 14": "arsenic", "PR 48": "manganese barium", "PR 57:1": "manganese barium", "PB 17": "barium", "PB 33": "barium", "PG 50": "nickel",
	"PBr 7": "manganese", "PBk 28": "manganese", "PY 216": "antimony"}

// harmless are words that sound like a hazard and are none: barium sulfate, and
// barium bound in a titanate; leaded zinc white has a name of its own.
var harmless = map[string]string{"PW 21": "barium", "PW 22": "barium", "PY 157": "barium", "PW 4": "lead"}

func TestCompiledPigments(t *testing.T) {
	n := 0
	for _, row := range compiled {
		for index := range strings.SplitSeq(row.index, ", ") {
			n++
			p := record.Pigment{Name: "as sold", Index: index}
			if !trade.Told(p) {
				t.Errorf("%s is not known", index)
				continue
			}
			for _, w := range hazardWords {
				want := record.No
				switch {
				case strings.Contains(doubtful[index], w.word):
					want = record.Unknown
				case strings.Contains(row.hazard, w.word) && harmless[index] != w.word:
					want = record.Yes
				}
				if got := trade.Holds(p, w.hazard); got != want {
					t.Errorf("%s: %s %s, want %s (%s)", index, w.hazard, got, want, row.hazard)
				}
			}
			zinc := record.Answer("no")
			switch {
			case strings.HasPrefix(row.zinc, "may"), strings.Contains(row.zinc, "grades"), strings.Contains(row.zinc, "may include"):
				zinc = record.Unknown
			case strings.HasPrefix(row.zinc, "yes"):
				zinc = record.Yes
			}
			if got := trade.HoldsZinc(p); got != zinc {
				t.Errorf("%s: zinc %s, want %s (%s)", index, got, zinc, row.zinc)
			}
			if strings.HasPrefix(row.light, "excellent") && trade.Fugitive(p) != record.No {
				t.Errorf("%s: fugitive %s though light is %s", index, trade.Fugitive(p), row.light)
			}
			if strings.HasPrefix(row.light, "poor") && trade.Fugitive(p) != record.Yes {
				t.Errorf("%s: fugitive %s though light is %s", index, trade.Fugitive(p), row.light)
			}
		}
	}
	if n != 187 {
		t.Errorf("%d index names", n)
	}
}
