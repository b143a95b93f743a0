package trade_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

// Colour Index generic names as labels print them: letters of usage and hue,
// number, and the number after the colon (Colour Index, generic names; the
// spellings are common practice).
func TestIndexSpellings(t *testing.T) {
	for in, want := range map[string]string{
		"PW 1": "PW 1", "PW1": "PW 1", "pw1": "PW 1", "pw 1": "PW 1", "C.I. Pigment White 1": "PW 1", "CI PW1": "PW 1", "C.I. PW 1": "PW 1", "C. I. PW 1": "PW 1",
		"Colour Index PW 1": "PW 1", "Pigment Yellow 35": "PY 35", "PY35:1": "PY 35:1", "PY 35 : 1": "PY 35:1", "pigment yellow 35:1": "PY 35:1",
		"PBk7": "PBk 7", "pbk 7": "PBk 7", "Pigment Black 7": "PBk 7", "PBr7": "PBr 7", "PBR 7": "PBr 7", "PB15:3": "PB 15:3", "PM 2": "PM 2",
		"Natural Red 9": "NR 9", "NBr 8": "NBr 8", "Pigment Metal 4": "PM 4", "PW-6": "PW 6", "PW.6": "PW 6", "P.W. 6": "PW 6", "PW 06": "PW 6", " PG 50 ": "PG 50",
	} {
		got, ok := trade.ParseIndex(in)
		if !ok || got.String() != want {
			t.Errorf("%q is read as %s, %v; want %s", in, got, ok, want)
		}
	}
	for _, in := range []string{"", "35", "77891", "C.I. 77891", "PX 3", "P 6", "PW", "PW 0", "PW 1234", "white", "PW 6 PW 4", "PW 6 and more", "lead white", "Acid Red 52", "XPW 6", "PW 6a"} {
		if got, ok := trade.ParseIndex(in); ok {
			t.Errorf("%q is read as %s", in, got)
		}
	}
}

// Letters and number belong together: the same number under other letters is
// another pigment.
func TestIndexLettersCount(t *testing.T) {
	for _, c := range []struct {
		index   string
		cadmium record.Answer
	}{{"PY 35", record.Yes}, {"PB 35", record.No}, {"PBr 35", record.No}, {"PR 108", record.Yes}, {"PY 108", record.Unknown}, {"35", record.Unknown}} {
		if got := trade.Holds(record.Pigment{Index: c.index}, trade.Cadmium); got != c.cadmium {
			t.Errorf("cadmium in %s: %s, want %s", c.index, got, c.cadmium)
		}
	}
}

func FuzzIndex(f *testing.F) {
	for _, s := range []string{"PW 1", "C.I. Pigment Yellow 35:1", "PW 6 + PW 4", "PBk7", "77891", "PW 6, filler", "c.i.pigment", "ＰＷ 1", "PW\u00a01", "Kadmiumgelbton"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if i, ok := trade.ParseIndex(s); ok {
			again, ok := trade.ParseIndex(i.String())
			if !ok || again != i {
				t.Errorf("%q is %v, which reads as %v, %v", s, i, again, ok)
			}
			if i.Number < 1 || i.Number > 999 || i.Suffix < 0 || i.Suffix > 99 {
				t.Errorf("%q is %v", s, i)
			}
		}
		// A name may warn and never clears; what it surely holds it does not
		// also perhaps hold.
		named := record.Pigment{Name: s}
		holds, may := trade.HazardsOf(named)
		for _, h := range trade.Hazards {
			a := trade.Holds(named, h)
			if a == record.No && !trade.Told(named) {
				t.Errorf("%q rules out %s and is not told", s, h)
			}
			if (a == record.Yes) != contains(holds, h) || contains(holds, h) && contains(may, h) {
				t.Errorf("%q: %s is %s, holds %v, may %v", s, h, a, holds, may)
			}
		}
		// An index name beside it decides: no words of the name matter then.
		if got := trade.Holds(record.Pigment{Name: s, Index: "PR 254"}, trade.Cadmium); got != record.No {
			t.Errorf("PR 254 called %q: cadmium %s", s, got)
		}
		// The case of letters says nothing.
		if len(strings.ToUpper(s)) == len(s) && isASCII(s) {
			if a, b := trade.Holds(named, trade.Lead), trade.Holds(record.Pigment{Name: strings.ToUpper(s)}, trade.Lead); a != b {
				t.Errorf("%q: lead %s, in capitals %s", s, a, b)
			}
		}
	})
}

func isASCII(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return r > 126 }) < 0
}

func contains(hs []trade.Hazard, h trade.Hazard) bool {
	for _, x := range hs {
		if x == h {
			return true
		}
	}
	return false
}
