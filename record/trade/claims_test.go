package trade_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

// What stains an acrylic film: a paint maker's notes on discolouration.
func TestStains(t *testing.T) {
	if got := trade.Stains(trade.BoardStrata(record.AluminiumComp)); got != record.No {
		t.Errorf("aluminium composite stains: %s", got)
	}
	if got := trade.Stains(trade.BoardStrata("")); got != record.Unknown {
		t.Errorf("a board of no kind stains: %s", got)
	}
}

// The closed lists and the tables know the same words.
func TestListsAreWhole(t *testing.T) {
	for _, b := range record.Words("Binder") {
		if _, _, ok := trade.EffectsOn(record.Binder(b)); !ok && b != "other" {
			t.Errorf("binder %s: no effects", b)
		}
	}
	for _, m := range record.Words("PaintMedium") {
		if trade.BinderOfMedium(record.PaintMedium(m)) == "" && m != "other" {
			t.Errorf("medium %s: no binder", m)
		}
	}
	for _, p := range record.Words("Purpose") {
		if record.Purpose(p).Closes() == record.Unknown && p != "other" {
			t.Errorf("purpose %s: not known whether it closes", p)
		}
	}
	for _, k := range record.Words("BoardKind") {
		if trade.IsWooden(record.BoardKind(k)) == record.Unknown && k != "other" && k != "honeycomb" {
			t.Errorf("board %s: not known whether of wood", k)
		}
	}
	for _, list := range []string{"Binder", "PaintMedium", "Purpose", "BoardKind", "Species", "Resin", "Solvent"} {
		if len(record.Words(list)) < 5 {
			t.Errorf("the list %s has %d words", list, len(record.Words(list)))
		}
	}
	for _, r := range record.Words("Resin") {
		if bs, all := varnish(record.Resin(r)).Binders(); !all && r != "other" {
			t.Errorf("resin %s: binders %v", r, bs)
		}
	}
	for _, s := range record.Words("Solvent") {
		if trade.IsWater(record.Solvent(s)) == record.Unknown && s != "other" {
			t.Errorf("solvent %s: not known whether water", s)
		}
	}
}
