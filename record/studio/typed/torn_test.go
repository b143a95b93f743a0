package typed_test

import (
	"strings"
	"testing"

	"backleaf/record"
	"backleaf/record/studio/typed"
)

// Of every lot, material and batch whose name ends in a part that also names a
// panel, the two parts typed as two words are refused wherever that word stands
// among the panels, and taken where the name is whole or the panel comes first.
func TestTorn(t *testing.T) {
	shop := &record.Workshop{}
	shop.Lots = append(shop.Lots, record.Done[record.Lot]{Body: record.Lot{Key: "sealer-1"}}, record.Done[record.Lot]{Body: record.Lot{Key: "ground-1"}}, record.Done[record.Lot]{Body: record.Lot{Key: "birch.ply_3"}})
	shop.Materials = append(shop.Materials, record.Done[record.Material]{Body: record.Material{Key: "linen-2"}})
	roll := record.Roll{Batches: map[record.Key][]record.Number{"may-2": nil}}
	for _, key := range []string{"sealer-1", "ground-1", "birch.ply_3", "linen-2", "may-2"} {
		at := strings.LastIndexAny(key, "-_")
		one, word := key[:at], key[at+1:]
		for _, x := range []struct {
			words string
			torn  bool
		}{
			{"coat 6 --with ONE WORD --on back", true}, {"coat 6 --with=ONE WORD", true}, {"coat 6 --as ONE WORD", true},
			{"coat 6 --with a-1:3,ONE WORD", true}, {"coat batch:ONE WORD", true},
			{"coat WORD 6 --with ONE", false}, {"coat 6 --with " + key + " WORD", false}, {"coat 6 WORD --on back", false}, {"coat 6 --with x WORD", false},
		} {
			words := strings.Fields(strings.NewReplacer("ONE", one, "WORD", word).Replace(x.words))
			r := &typed.Reader{Shop: shop, Roll: roll}
			r.Torn(words, []string{"6", word, "batch:" + one})
			if (r.Err() != nil) != x.torn {
				t.Errorf("%q: %v", words, r.Err())
			}
		}
	}
}
