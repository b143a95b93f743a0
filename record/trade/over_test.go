package trade

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"backleaf/record"
)

// grid is the same knowledge written down a second time, as a grid: S sound, C
// with conditions, X advised against, a point where nothing is said. Compiled
// from the works that the rows name; rows lie over columns.
const gridColumns = "AG AM AP PV OG OP AK ET EO CA GS GG GD GU WX SH RV PU EP WD MD HB AL LI CO LO LA"

var grid = map[string]string{
	"AG": "SSSCXXCXXCXCXXXCXCCCCCCSSXS",
	"AP": "SSSCXXXXXCXCXXXCXCCCCCCSSXS",
	"AV": "..C..XXCCX..XXX............",
	"PV": "CCCCXXX..CC.XXX.X..SSSCSSSS",
	"OG": "SC.SSCCCCCSCX.XCXCCCCCCXXSS",
	"OP": "CXCCSCSCCCCCXCXCXCCCCCCXXSC",
	"AK": "CCCCSXSCCCCCXCXCXCCSSSCXXSC",
	"ET": "XXXXXXXSCSCS.CXXX..CCCXXXXX",
	"EO": "CXXXCCCCSCCS..XXX..CCCCXXCX",
	"CA": "CXCXXXXCCSCSCCXXX..CCCXXXXC",
	"GS": "XXXXXXX...SS.......SCCXSSXX",
	"GG": "XXXXXXX..CSS..XCXXXCCCCCCXX",
	"GD": "CX.XXXXC.CSS..X.X..CCCXCCX.",
	"GU": "CXCXXXXC.CCCCSXXX..C..X..XC",
	"WX": "XXXXXXXC.CCSCCSCXXXSCCXXXXX",
	"SH": "CCXCCXXCXCSCCCCSX..SSSCCCCC",
	"NR": "CCX.CCCCCX.CXXX.C..........",
	"AR": "CCC.CCCCCX.CXXXCC..........",
	"HC": "CCC.CCCCCX.CXXX.C..........",
	"KR": "CCC.CCCCCX.CXXX.C..........",
	"PU": "X.X.XXXXXX.XXXXXXSSSSSSXX..",
	"EP": "X.X.XXXXXX.XXXX.XSSSSCSCC..",
}

func TestRowsAgreeWithGrid(t *testing.T) {
	letters := map[Verdict]byte{Sound: 'S', Conditions: 'C', Against: 'X', "": '.'}
	spoken := 0
	for over, row := range grid {
		for i, on := range strings.Fields(gridColumns) {
			for _, lower := range strataOf(on) {
				j := Over(strataOf(over), Strata{lower}, open)
				if got := letters[j.Verdict]; got != row[i] {
					t.Errorf("%s over %s (%s): %c, the grid says %c", over, on, lower, got, row[i])
				}
			}
			if row[i] != '.' {
				spoken++
			}
		}
	}
	if spoken != 465 {
		t.Errorf("the grid speaks of %d pairs, want 465", spoken)
	}
}

// Pairs with their conditions and what the works say of them.
func TestPairs(t *testing.T) {
	known := func(list string) Facts {
		f := map[Condition]record.Answer{}
		for _, s := range strings.Fields(list) {
			name, not := strings.CutPrefix(s, "!")
			f[Condition(name)] = Is(!not)
		}
		return func(c Condition) record.Answer { return f[c] }
	}
	for _, c := range []struct {
		over, on, facts string
		want            record.Answer
		source          string
	}{
		{"AG", "AM", "", yes, "a paint maker’s notes on plywood"},
		{"AG", "LI", "", yes, "Kay 1983; a paint maker’s notes"},
		{"AG", "WD", "", yes, "a paint maker’s notes; MITRA, rigid supports"},
		{"AG", "LA", "", yes, "Kay 1983; MITRA QID 310"},
		{"AG", "LO", "", no, "Kay 1983; US Navy manual 14262"},
		{"AG", "GS", "", no, "Kay 1983: not to be sized with glue"},
		{"AP", "OP", "", no, "US Navy manual 14262"},
		{"AP", "OG", "", no, "US Navy manual 14262"},
		{"AP", "NR", "", no, "a paint maker’s note on paint over varnish"},
		{"AP", "AR", "", no, "a paint maker’s note on paint over varnish"},
		{"AG", "AL", "keyed degreased", yes, "a paint maker’s note on aluminium composite"},
		{"AG", "AL", "!keyed degreased", no, "the same"},
		{"AG", "AL", "degreased", maybe, "the same"},
		{"AP", "GG", "rigid", yes, "Kay 1983"},
		{"AP", "GG", "", maybe, "Kay 1983"},
		{"AG", "SH", "!tooth", no, "MITRA, sealing hardboard with shellac"},
		{"AV", "OP", "", no, "a paint maker’s sheet on isolation coats"},
		{"AV", "GU", "", no, "letter of a national gallery, 2003"},
		{"PV", "WD", "", yes, "MITRA, adhesives and sizes"},
		{"PV", "OP", "", no, "from memory"},
		{"OG", "GS", "", yes, "Padfield 7; MITRA, adhesives and sizes"},
		{"OG", "AG", "", yes, "MITRA QID 351"},
		{"OG", "PV", "", yes, "MITRA, oil on PVA size"},
		{"OP", "LI", "", no, "Padfield 7; MITRA, adhesives and sizes"},
		{"OP", "CO", "", no, "Padfield 7; MITRA, adhesives and sizes"},
		{"OP", "WD", "!sealed-first", no, "MITRA, oil penetration into wood"},
		{"OP", "WD", "", maybe, "MITRA, oil penetration into wood"},
		{"OP", "AG", "tooth waited", yes, "MITRA QID 351, QID 54"},
		{"OP", "AG", "tooth !waited", no, "MITRA QID 351"},
		{"OP", "AG", "!tooth waited", no, "MITRA QID 54"},
		{"OP", "AG", "tooth", maybe, "MITRA QID 351"},
		{"OP", "AM", "!tooth", no, "MITRA QID 54"},
		{"OP", "AM", "", maybe, "MITRA QID 54: a thin matt size coat is conditional"},
		{"OP", "AM", "tooth thin-below", yes, "MITRA QID 54"},
		{"OP", "OG", "", yes, "MITRA QID 351"},
		{"OP", "OP", "fat-over-lean", yes, "MITRA, oil on acrylic gesso"},
		{"OP", "OP", "!fat-over-lean", no, "MITRA, oil on acrylic gesso"},
		{"OP", "AK", "", yes, "MITRA, oil on acrylic gesso"},
		{"AK", "OP", "", maybe, "MITRA: unless the oil is firm and lean"},
		{"AK", "OP", "!lean-below", no, "MITRA"},
		{"OP", "GG", "isolated", yes, "MITRA, cutting the absorbency of gesso"},
		{"OP", "GG", "!isolated", no, "MITRA, cutting the absorbency of gesso"},
		{"OP", "WX", "", no, "from memory"},
		{"AK", "WD", "", yes, "MITRA, oil penetration into wood; QID 431"},
		{"ET", "GG", "", yes, "MITRA QID 711"},
		{"ET", "AG", "", no, "MITRA QID 213"},
		{"ET", "AM", "", no, "MITRA, glue migration on aluminium composite"},
		{"ET", "LI", "", no, "MITRA QID 213"},
		{"EO", "GG", "", yes, "MITRA QID 711"},
		{"CA", "OG", "", no, "MITRA QID 415"},
		{"CA", "AK", "", no, "MITRA QID 415"},
		{"CA", "AG", "tooth rigid thin-above", yes, "MITRA QID 415"},
		{"CA", "GG", "", yes, "Kay 1983"},
		{"GS", "WD", "", yes, "MITRA, adhesives and sizes"},
		{"GS", "AM", "", no, "from memory"},
		{"GG", "AG", "", no, "MITRA, glue migration (the principle)"},
		{"GG", "AM", "", no, "MITRA, glue migration (the principle)"},
		{"GG", "GS", "", yes, "from memory"},
		{"GU", "AM", "", no, "from memory"},
		{"WX", "AG", "", no, "teachers’ and suppliers’ pages on grounds for encaustic"},
		{"WX", "AP", "", no, "teachers’ and suppliers’ pages on grounds for encaustic"},
		{"WX", "WD", "", yes, "teachers’ and suppliers’ pages on grounds for encaustic"},
		{"WX", "GG", "", yes, "teachers’ and suppliers’ pages on grounds for encaustic"},
		{"SH", "WD", "", yes, "MITRA QID 431"},
		{"SH", "OP", "", no, "MITRA, what not to use as a varnish"},
		{"NR", "OP", "waited", yes, "a note on waiting before varnishing"},
		{"NR", "OP", "!waited", no, "a note on waiting before varnishing"},
		{"NR", "AP", "waited", no, "from memory"},
		{"HC", "AP", "waited", yes, "MITRA QID 634"},
		{"NR", "GU", "", no, "letter of a national gallery, 2003"},
		{"NR", "WX", "", no, "encaustic artists’ care sheets"},
		{"PU", "WD", "", yes, "common practice"},
		{"PU", "OP", "", no, "MITRA, what not to use as a varnish"},
		{"EP", "AP", "", no, "from memory"},
		{"AP", "PU", "keyed", yes, "common practice"},
		{"AV", "AG", "", "", "not spoken of"},
	} {
		if got := Over(strataOf(c.over), strataOf(c.on), known(c.facts)); got.Holds != c.want {
			t.Errorf("%s over %s with %q: %q, want %q (%s)", c.over, c.on, c.facts, got.Holds, c.want, c.source)
		}
	}
}

// Making what is known vaguer, by forgetting a condition or by leaving open
// what a layer is, never turns an answer into another but unknown.
func TestVaguerIsNeverWorse(t *testing.T) {
	rnd := rand.New(rand.NewPCG(16, 3))
	some := func() Strata {
		var s Strata
		for range 1 + rnd.IntN(3) {
			s = append(s, AllStrata[rnd.IntN(len(AllStrata))])
		}
		return s
	}
	conditions := []Condition{Tooth, ThinBelow, ThinAbove, LeanBelow, Waited, Keyed, Degreased, Untempered, SealedFirst, GroundBetween, Isolated, FatOverLean, Rigid}
	for range 20000 {
		upper, lower, facts := some(), some(), map[Condition]record.Answer{}
		known := func(c Condition) record.Answer { return facts[c] }
		for _, c := range conditions {
			facts[c] = []record.Answer{yes, no, maybe}[rnd.IntN(3)]
		}
		before := Over(upper, lower, known)
		switch rnd.IntN(3) {
		case 0:
			upper = append(upper, AllStrata[rnd.IntN(len(AllStrata))])
		case 1:
			lower = append(lower, AllStrata[rnd.IntN(len(AllStrata))])
		default:
			delete(facts, conditions[rnd.IntN(len(conditions))])
		}
		after := Over(upper, lower, known)
		if after.Holds != before.Holds && after.Holds != maybe {
			t.Fatalf("%v over %v: %q becomes %q", upper, lower, before.Holds, after.Holds)
		}
	}
}

// Each code stands in a row, each work in the table of works, and none of them
// idles; a wait that a row asks for is known.
func TestRowsAreWhole(t *testing.T) {
	conditions := []Condition{Tooth, ThinBelow, ThinAbove, LeanBelow, Waited, Keyed, Degreased, Untempered, SealedFirst, GroundBetween, Isolated, FatOverLean, Rigid}
	met := map[Condition]bool{}
	for pair, row := range pairs() {
		for _, c := range codes[Condition](row.when) {
			if met[c] = true; !slices.Contains(conditions, c) {
				t.Errorf("%v: unknown condition %q", pair, c)
			}
			if w, ok := WaitFor(pair[0], pair[1], maybe); c == Waited && (!ok || w.Least.IsZero()) {
				t.Errorf("%v: asks for a wait that no row tells", pair)
			}
		}
		if row.verdict == Sound && row.when != "" {
			t.Errorf("%v: sound, with conditions", pair)
		}
	}
	for _, c := range conditions {
		if !met[c] {
			t.Errorf("no row asks for %q", c)
		}
	}
}

// open answers no condition.
func open(Condition) record.Answer { return maybe }
