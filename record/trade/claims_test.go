package trade_test

import (
	"testing"

	"backleaf/record"
	"backleaf/record/trade"
)

// Grades are common practice: nothing coarser than 150 on cloth, 180 and 220
// usual; beyond about P600 the last coat is polished; a lead ground never dry.
func TestSandings(t *testing.T) {
	for s, want := range map[trade.Surface][4]int64{
		trade.SurfaceWood: {0, 120, 220, 0}, trade.SurfaceFibreboard: {0, 180, 240, 0}, trade.SurfaceEdges: {0, 150, 220, 0}, trade.SurfaceComposite: {0, 220, 400, 0},
		trade.SurfaceCloth: {150, 180, 220, 0}, trade.SurfaceGround: {0, 220, 320, 0}, trade.SurfaceLastGround: {0, 320, 400, 600}, trade.SurfaceGesso: {0, 180, 600, 0},
		trade.SurfaceOilGround: {0, 320, 400, 0}, trade.SurfaceLeadGround: {0, 320, 400, 0}, trade.SurfaceGloss: {0, 240, 320, 0},
	} {
		got, ok := trade.SandingOf(s)
		if !ok || [4]int64{got.Coarsest, got.From, got.To, got.Finest} != want {
			t.Errorf("%s: %+v, want %v", s, got, want)
		}
		if got.NeverDry != (s == trade.SurfaceLeadGround) {
			t.Errorf("%s: never dry %v", s, got.NeverDry)
		}
	}
}

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
